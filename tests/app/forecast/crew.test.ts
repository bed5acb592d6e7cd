/** As many workers as cores, the next job to the next free one; what is urgent goes first, what is stopped ends, one failure ends nothing. */
import { beforeEach, describe, expect, it } from 'vitest';
import { type Crew, createCrew } from '../../../src/app/forecast/team/crew';
import { followOne } from '../../../src/app/forecast/team/followOne';
import type { SpeedRequest } from '../../../src/app/forecast/team/messages';
import type { RunningSpeed, SpeedJob } from '../../../src/pulse/forecast/job';
import type { SpeedAnswer, SpeedFailure } from '../../../src/pulse/forecast/types';
import { answerOf, ENGINE, pathOf } from './fixtures';

const job = (rpm: number): SpeedJob => ({ engine: ENGINE, path: pathOf(1), rpm });

type Fake = {
  onmessage: ((event: MessageEvent) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror: (() => void) | null;
  ended: boolean;
  doing: SpeedRequest | null;
};

let workers: Fake[];
let look: () => void;
/** Why nothing can be posted; null: it can. */
let refusing: string | null;
let crew: Crew;
const make = (cores: number): Crew =>
  createCrew({
    cores,
    makeWorker() {
      const worker: Fake & { postMessage(request: SpeedRequest): void; terminate(): void } = {
        onmessage: null,
        onerror: null,
        onmessageerror: null,
        ended: false,
        doing: null,
        postMessage(request) {
          if (refusing !== null) throw new Error(refusing);
          worker.doing = request;
        },
        terminate() {
          worker.ended = true;
        },
      };
      workers.push(worker);
      return worker as unknown as Worker;
    },
    every(act) {
      look = act;
      return () => {
        look = () => {};
      };
    },
  });

const finish = (worker: Fake, told?: SpeedAnswer | SpeedFailure) => {
  const { number, job } = worker.doing!;
  worker.doing = null;
  worker.onmessage!({ data: { number, told: told ?? answerOf(job.rpm) } } as MessageEvent);
};
const busy = () => workers.filter(({ doing, ended }) => doing && !ended);
const rpms = () => busy().map(({ doing }) => doing!.job.rpm);

beforeEach(() => {
  workers = [];
  refusing = null;
  look = () => {};
  crew = make(2);
});

describe('a crew', () => {
  it('keeps every core at one job, tells each as it comes, and is over when all are told', async () => {
    const told: [number, number][] = [];
    let over = false;
    const following = crew
      .follow([job(1), job(2), job(3)], (k, { rpm }) => told.push([k, rpm]))
      .then(() => {
        over = true;
      });
    expect(rpms()).toEqual([1, 2]);
    finish(workers[1]!);
    expect(told).toEqual([[1, 2]]);
    expect(rpms()).toEqual([1, 3]);
    finish(workers[0]!);
    finish(workers[1]!);
    await following;
    expect(over).toBe(true);
    expect(told.map(([k]) => k).sort()).toEqual([0, 1, 2]);
    expect(workers).toHaveLength(2);
  });

  it('does what is urgent before what waits, and tells how far it is', () => {
    void crew.follow([job(1), job(2), job(3)], () => {});
    const done: number[] = [];
    void crew.ahead(
      [job(9)],
      () => {},
      undefined,
      (_, share) => done.push(share),
    );
    expect(rpms()).toEqual([1, 2]);
    finish(workers[0]!);
    expect(rpms()).toEqual([9, 2]);
    workers[0]!.onmessage!({ data: { number: workers[0]!.doing!.number, share: 0.5 } } as MessageEvent);
    expect(done).toEqual([0.5]);
  });

  it('ends the workers of what is stopped, tells no more of it, and goes on with the rest', async () => {
    let stopped = false;
    const told: number[] = [];
    const first = crew.follow(
      [job(1), job(2)],
      (k) => told.push(k),
      () => stopped,
    );
    void crew.follow([job(7)], (_, { rpm }) => told.push(rpm));
    stopped = true;
    look();
    await first;
    expect(workers.slice(0, 2).map(({ ended }) => ended)).toEqual([true, true]);
    expect(rpms()).toEqual([7]);
    workers[0]!.onmessage!({ data: { number: 1, told: answerOf(1) } } as MessageEvent);
    finish(busy()[0]!);
    expect(told).toEqual([7]);
  });

  it('tells a worker that breaks as a failure of its speed alone', async () => {
    const told: (SpeedAnswer | SpeedFailure)[] = [];
    const all = crew.follow([job(1), job(2), job(3)], (_, answer) => told.push(answer));
    workers[0]!.onerror!({ message: 'out of memory' } as ErrorEvent);
    expect(told).toEqual([{ rpm: 1, failed: 'out of memory' }]);
    expect(rpms().sort()).toEqual([2, 3]);
    for (const worker of busy()) finish(worker);
    await all;
    expect(told).toHaveLength(3);
  });

  it('tells a job that no worker can be given, or whose answer cannot be read, as a failure of its speed alone', async () => {
    const told: (SpeedAnswer | SpeedFailure)[] = [];
    const all = crew.follow([job(1), job(2), job(3), job(4)], (_, answer) => told.push(answer));
    workers[0]!.onmessageerror!();
    expect(told).toEqual([{ rpm: 1, failed: 'The worker’s answer could not be read.' }]);
    expect(workers[0]!.ended).toBe(true);
    // The next to be posted cannot be.
    refusing = 'It cannot be cloned.';
    finish(workers[1]!);
    expect(told[2]).toEqual({ rpm: 4, failed: 'It cannot be cloned.' });
    refusing = null;
    for (const worker of busy()) finish(worker);
    await all;
    expect(told.map(({ rpm }) => rpm)).toEqual([1, 2, 4, 3]);
  });

  it('tells every speed as failed where no worker starts, and is over', async () => {
    const told: (SpeedAnswer | SpeedFailure)[] = [];
    const none = createCrew({
      cores: 2,
      makeWorker() {
        throw new Error('Workers are not allowed here.');
      },
      every: () => () => {},
    });
    await none.follow([job(1), job(2), job(3)], (_, answer) => told.push(answer));
    expect(told).toEqual([1, 2, 3].map((rpm) => ({ rpm, failed: 'Workers are not allowed here.' })));
  });

  it('takes no job or a machine that does not count its cores as they come', async () => {
    await crew.follow([], () => expect.unreachable());
    const unknown = make(Number.NaN);
    void unknown.follow([job(1), job(2)], () => {});
    expect(rpms()).toEqual([1]);
    unknown.end();
    expect(workers.every(({ ended }) => ended)).toBe(true);
  });
});

describe('one speed', () => {
  const running = (steps: number): RunningSpeed => {
    let left = steps;
    return {
      get cycles() {
        return steps - left;
      },
      likely: steps,
      advance() {
        left -= 1;
        return left <= 0;
      },
      answer: () => answerOf(3000),
    };
  };
  it('is followed to its answer, telling now and then how far it is', () => {
    let clock = 0;
    const shares: number[] = [];
    const ground = {
      start: () => running(10),
      now: () => {
        clock += 40;
        return clock;
      },
    };
    expect(followOne(job(3000), ground, (share) => shares.push(share))).toMatchObject({
      rpm: 3000,
      torque: answerOf(3000).torque,
    });
    expect(shares.length).toBeGreaterThan(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
  it('that cannot be followed is told with its reason', () => {
    const start = () => {
      throw new Error('The flow could not be followed.');
    };
    expect(followOne(job(3000), { start, now: () => 0 }, () => {})).toEqual({
      rpm: 3000,
      failed: 'The flow could not be followed.',
    });
  });
});
