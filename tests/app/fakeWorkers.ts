/** Workers that do nothing but remember: what they were asked, whether they were ended; a test answers for them. */
import type { Request } from '../../src/app/workers/messages';

type Fake = { onmessage: Worker['onmessage']; onerror: Worker['onerror']; ended: boolean };

/** What the kernel's worker is asked for one kind of job. */
export type JobRequest<Job extends Request['job']> = Extract<Request, { job: Job }>;

/** @typeParam Asked what such workers are asked */
export function fakeWorkers<Asked>() {
  const asked: Asked[] = [];
  const workers: Fake[] = [];
  const make = (): Worker => {
    const worker = {
      onmessage: null,
      onerror: null,
      ended: false,
      postMessage: (request: Asked) => asked.push(request),
      terminate: () => {
        worker.ended = true;
      },
    };
    workers.push(worker);
    return worker as unknown as Worker;
  };
  /** The newest answers. */
  const reply = (data: unknown) => workers.at(-1)!.onmessage!.call(null as never, { data } as MessageEvent);
  return { asked, workers, make, reply };
}
