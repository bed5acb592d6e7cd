/** Which runners and collectors of the shown header the playing run has waves for, and in which pipe; nothing while none plays. */
import { remembered } from '../../../../shared/remember';
import { fieldOf, type WaveField } from '../../../pulse/forecast/waveField';
import type { PathPipe } from '../../../pulse/path/types';
import type { PipePicture } from '../../../pulse/report';
import type { Quantity } from '../../pulse/quantities';
import { type Spread, spreadOf } from '../waves/roll';
import type { WaveRun } from '../waves/runs';
import { useMotion } from './state';

export type PipeWaves = { readonly pipe: PathPipe; readonly picture: PipePicture };
export type Waved = {
  readonly field: WaveField;
  readonly spread: Spread;
  /** By `runner/…` or `merge/…`. */
  readonly pipes: ReadonlyMap<string, PipeWaves>;
};

const fieldFor = remembered((run: WaveRun): Pick<Waved, 'field' | 'pipes'> | null => {
  const { waves } = run.answer;
  if (!waves) return null;
  const field = fieldOf(waves);
  const pipes = new Map<string, PipeWaves>();
  for (const pipe of run.path.pipes) {
    const picture = field.pipes.get(pipe.id);
    if (!picture || !pipe.part) continue;
    const key = 'runner' in pipe.part ? `runner/${pipe.part.runner}` : `merge/${pipe.part.merge}`;
    if (!pipes.has(key)) pipes.set(key, { pipe, picture });
  }
  return { field, pipes };
});

const known = remembered((_: WaveRun) => new Map<Quantity, Waved | null>());

/** Once for a run and a quantity: every tube and the bar ask it. */
export function wavedOf(run: WaveRun, quantity: Quantity): Waved | null {
  const kept = known(run);
  const found = kept.get(quantity);
  if (found !== undefined) return found;
  const on = fieldFor(run);
  const ids = run.path.pipes.map(({ id }) => id);
  const spread = on && spreadOf(run.answer.waves!, ids, quantity);
  const waved = on && spread && { ...on, spread };
  kept.set(quantity, waved);
  return waved;
}

export function useWaved(): Waved | null {
  const run = useMotion((s) => s.run);
  const quantity = useMotion((s) => s.quantity);
  return run && wavedOf(run, quantity);
}
