/** One long job: what it is at is told before its answer comes, and cancelling ends its worker. */
import { expect, it } from 'vitest';
import type { ShopAnswer } from '../../src/app/workers/messages';
import { Cancelled, startTask } from '../../src/app/workers/task';
import { titled } from './designs';
import { fakeWorkers, type JobRequest } from './fakeWorkers';

const request = { job: 'shop', design: titled('a'), meshes: new Map(), folder: 'a shop' } as const;
const answer: ShopAnswer = { zip: new Uint8Array(1), fileCount: 1, problemCount: 0, leftOut: [], warnings: [] };

it('tells what it is at, then answers', async () => {
  const { workers, make, reply } = fakeWorkers<JobRequest<'shop'>>();
  const seen: string[] = [];
  const task = startTask(request, (doing) => seen.push(doing), make);
  for (const doing of ['tables', 'collectors']) reply({ doing });
  expect(workers[0]!.ended).toBe(false);
  reply({ done: answer });
  expect(await task.result).toBe(answer);
  expect(seen).toEqual(['tables', 'collectors']);
  expect(workers[0]!.ended).toBe(true);
});

it('ends its worker when it is cancelled on the way', async () => {
  const { workers, make, reply } = fakeWorkers<JobRequest<'shop'>>();
  const task = startTask(request, undefined, make);
  reply({ doing: 'tables' });
  task.cancel();
  await expect(task.result).rejects.toBeInstanceOf(Cancelled);
  expect(workers[0]!.ended).toBe(true);
});

it('fails with the words that the worker gives', async () => {
  const { make, reply } = fakeWorkers<JobRequest<'shop'>>();
  const task = startTask(request, undefined, make);
  reply({ failed: 'no room' });
  await expect(task.result).rejects.toThrow('no room');
});
