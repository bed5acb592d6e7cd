/** The team of threads: the thread's own side is served over a channel of messages, in this process. */
import { EventEmitter } from 'node:events';
import { MessageChannel, type Worker } from 'node:worker_threads';
import { afterEach, expect, test } from 'vitest';
import { type Start, serveSpeeds } from '../../src/cli/pulse/serve';
import { threadTeam } from '../../src/cli/pulse/threads';
import type { SpeedJob } from '../../src/pulse/forecast/job';
import type { SpeedAnswer, SpeedFailure } from '../../src/pulse/forecast/types';
import { invented } from './pulseBench';

const ends: (() => void)[] = [];
afterEach(() => {
  for (const end of ends.splice(0)) end();
});

/** Serves like a thread. `dies`: leaves with the first job that it is sent, telling nothing. */
function thread(start: Start, dies = false): Worker & { answers: number } {
  const { port1, port2 } = new MessageChannel();
  ends.push(() => port1.close());
  const worker = Object.assign(new EventEmitter(), {
    answers: 0,
    postMessage(batch: { shared: Int32Array }) {
      if (!dies) return port1.postMessage(batch);
      Atomics.add(batch.shared, 0, 1);
      worker.emit('exit', 1);
    },
    terminate: async () => {
      port1.close();
      worker.emit('exit', 0);
      return 0;
    },
  });
  port1.on('message', (told: { kind: string }) => {
    if (told.kind === 'answer') worker.answers++;
    worker.emit('message', told);
  });
  serveSpeeds(port2, start);
  return worker as unknown as Worker & { answers: number };
}

const jobs = Array.from({ length: 20 }, (_, k) => ({ rpm: 1000 + 100 * k }) as SpeedJob);
const byRpm = ({ rpm }: SpeedJob): number | string => (rpm === 1500 ? 'nothing there' : rpm / 10);

async function followed(team: ReturnType<typeof threadTeam>, stopped?: () => boolean) {
  const told = new Map<number, SpeedAnswer | SpeedFailure>();
  await team.follow(
    jobs,
    (index, answer) => {
      expect(told.has(index)).toBe(false);
      told.set(index, answer);
    },
    stopped,
  );
  return jobs.map((_, k) => told.get(k));
}

const start = invented(byRpm);

test('answers are the same whoever gives them, batch after batch; a failure keeps its place', async () => {
  const alone = await followed(threadTeam({ start, threads: 1 }));
  expect(alone[5]).toMatchObject({ rpm: 1500, failed: expect.stringMatching(/nothing there/) });
  expect(alone.filter((answer) => answer && !('failed' in answer))).toHaveLength(19);
  const crew: ReturnType<typeof thread>[] = [];
  const startThread = () => {
    const one = thread(start);
    crew.push(one);
    return one;
  };
  const team = threadTeam({ start, threads: 3, startThread });
  expect(await followed(team)).toEqual(alone);
  expect(await followed(team)).toEqual(alone);
  // The same two serve both batches, and do some of the work.
  expect(crew).toHaveLength(2);
  expect(crew[0]!.answers + crew[1]!.answers).toBeGreaterThan(0);
  await team.dismiss();
});

test('a thread that dies leaves its jobs to the main one', async () => {
  const alone = await followed(threadTeam({ start, threads: 1 }));
  const team = threadTeam({ start, threads: 2, startThread: () => thread(start, true) });
  expect(await followed(team)).toEqual(alone);
});

test('stopped, it comes to an end, with what was told until then', async () => {
  let looks = 0;
  const team = threadTeam({ start, threads: 1 });
  const told = await followed(team, () => ++looks > 12);
  const some = told.filter((answer) => answer !== undefined).length;
  expect(some).toBeGreaterThan(0);
  expect(some).toBeLessThan(jobs.length);
  await team.dismiss();
});

test('whatever a job throws is that job’s failure, on whichever thread; all others are answered', async () => {
  const broken = invented((job) => {
    if (job.rpm === 1800) throw new TypeError('no such thing');
    return byRpm(job);
  });
  for (const threads of [1, 2]) {
    const team = threadTeam({ start: broken, threads, startThread: () => thread(broken) });
    const told = await followed(team);
    expect(told[8]).toEqual({ rpm: 1800, failed: expect.stringMatching(/^A fault of the program.*: no such thing$/) });
    expect(told.filter((answer) => answer && !('failed' in answer))).toHaveLength(18);
    await team.dismiss();
  }
});

test('a thread that cannot even take a job is a fault of the program', async () => {
  const slow: Start = (job) => ({ ...start(job), cycles: 0, advance: () => false });
  const garbled = () => {
    const one = thread(start);
    const { postMessage } = one;
    one.postMessage = (batch: object) => postMessage({ ...batch, jobs: null });
    return one;
  };
  const team = threadTeam({ start: slow, threads: 2, startThread: garbled });
  await expect(followed(team)).rejects.toThrow(/null/);
  await team.dismiss();
});
