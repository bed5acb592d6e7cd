/** A further thread of a search: takes rounds until none is left or time is up, and tells what it finds. */
import type { MessagePort } from 'node:worker_threads';
import { router } from '../../../geometry';
import { isOver, type Job, now, type Told, takeRound } from './job';

export function serveRounds(job: Job, port: MessagePort): void {
  const tell = (told: Told): void => port.postMessage(told);
  try {
    const { round } = router(job.design, job.meshes, job.options);
    const stopped = (): boolean => isOver(job);
    for (let n = takeRound(job); n !== null && !stopped(); n = takeRound(job)) {
      const at = n;
      const result = round(n, (layout) => tell({ kind: 'found', round: at, at: now(), layout }), stopped);
      tell({ kind: 'round', round: n, result, whole: !stopped() });
    }
  } catch (error) {
    tell({ kind: 'fault', message: error instanceof Error ? error.message : String(error) });
  }
  port.close();
}
