/** Workers that do nothing but remember: what they were asked, whether they were ended; a test answers for them. */
import type { Request } from '../../src/app/workers/messages';

type Fake = { onmessage: Worker['onmessage']; onerror: Worker['onerror']; ended: boolean };

export function fakeWorkers<Job extends Request['job']>() {
  const asked: Extract<Request, { job: Job }>[] = [];
  const workers: Fake[] = [];
  const make = (): Worker => {
    const worker = {
      onmessage: null,
      onerror: null,
      ended: false,
      postMessage: (r: Request) => asked.push(r as Extract<Request, { job: Job }>),
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
