/** The room's workers answer for the newest design only: live ones never fall behind, resting ones wait and drop what is outdated. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { flatTreeOf } from '../../../geometry';
import { type Asker, live, newRoomWorker, REST, resting } from '../../../src/app/room/asker';
import type { Question, RoomRequest } from '../../../src/app/room/messages';
import { titled } from '../designs';
import { fakeWorkers } from '../fakeWorkers';

function bench(kind: typeof live | typeof resting) {
  const { asked, workers, make, reply } = fakeWorkers<RoomRequest>();
  const told: (readonly [what: string, title: string | undefined, more: boolean])[] = [];
  const asker: Asker = kind(
    {
      answered: (question, design, _, more) => told.push([question, design.title, more]),
      failed: (question, error, more) => told.push([`${question}: ${error}`, undefined, more]),
    },
    make,
  );
  const done = (question: Question) => reply({ question, done: {}, spent: 1 });
  return { asked, workers, told, asker, done, reply };
}

const meshes = new Map();
const titles = (asked: readonly RoomRequest[]) => asked.map(({ question, design }) => `${question} ${design.title}`);

describe('a live asker', () => {
  it('asks at once, and of the designs that came meanwhile only the newest', () => {
    const { asked, told, asker, done } = bench(live);
    for (const title of ['a', 'b', 'c']) asker.ask(['gaps'], titled(title), meshes);
    expect(titles(asked)).toEqual(['gaps a']);
    done('gaps');
    expect(titles(asked)).toEqual(['gaps a', 'gaps c']);
    done('gaps');
    expect(titles(asked)).toEqual(['gaps a', 'gaps c']);
    expect(told).toEqual([
      ['gaps', 'a', true],
      ['gaps', 'c', false],
    ]);
  });

  it('sends meshes once, and again to a worker that took the place of a broken one', () => {
    const { asked, workers, told, asker, done } = bench(live);
    asker.ask(['gaps'], titled('a'), meshes);
    done('gaps');
    asker.ask(['gaps'], titled('b'), meshes);
    workers[0]!.onerror!.call(null as never, { message: 'out of memory' } as ErrorEvent);
    expect(workers[0]!.ended).toBe(true);
    asker.ask(['gaps'], titled('c'), meshes);
    expect(workers).toHaveLength(2);
    expect(asked.map((r) => r.meshes)).toEqual([meshes, null, meshes]);
    expect(told.at(-1)).toEqual(['gaps: out of memory', undefined, false]);
  });
});

describe('a resting asker', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('waits until the design rests, then asks one question after another', () => {
    const { asked, told, asker, done } = bench(resting);
    for (const title of ['a', 'b']) {
      asker.ask(['sensors', 'access'], titled(title), meshes);
      vi.advanceTimersByTime(REST - 1);
    }
    expect(asked).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(titles(asked)).toEqual(['sensors b']);
    done('sensors');
    expect(titles(asked)).toEqual(['sensors b', 'access b']);
    done('access');
    expect(told.map(([what]) => what)).toEqual(['sensors', 'access']);
  });

  it('ends what is under way for a design that was left, and answers nothing of it', () => {
    const { asked, workers, told, asker, done } = bench(resting);
    asker.ask(['sensors', 'removal'], titled('a'), meshes);
    vi.advanceTimersByTime(REST);
    done('sensors');
    asker.ask(['sensors', 'removal'], titled('b'), meshes);
    expect(workers[0]!.ended).toBe(true);
    vi.advanceTimersByTime(REST);
    done('sensors');
    done('removal');
    expect(titles(asked)).toEqual(['sensors a', 'removal a', 'sensors b', 'removal b']);
    expect(told.map(([what, title]) => `${what} ${title}`)).toEqual(['sensors a', 'sensors b', 'removal b']);
  });

  it('tells a failure and goes on with the next question', () => {
    const { asked, told, asker, reply } = bench(resting);
    asker.ask(['access', 'removal'], titled('a'), meshes);
    vi.advanceTimersByTime(REST);
    reply({ question: 'access', failed: 'no such tool' });
    expect(told).toEqual([['access: no such tool', undefined, false]]);
    expect(titles(asked)).toEqual(['access a', 'removal a']);
  });

  it('is silent once ended', () => {
    const { asked, workers, asker } = bench(resting);
    asker.ask(['access'], titled('a'), meshes);
    vi.advanceTimersByTime(REST);
    asker.ask(['access'], titled('b'), meshes);
    asker.end();
    vi.advanceTimersByTime(10 * REST);
    expect(titles(asked)).toEqual(['access a']);
    expect(workers.every(({ ended }) => ended)).toBe(true);
  });
});

it('a mesh goes to the worker with the tree that was built over it, not to be built again', () => {
  const posted: unknown[] = [];
  vi.stubGlobal(
    'Worker',
    class {
      postMessage = (message: unknown) => posted.push(message);
    },
  );
  const { soup } = flatTreeOf(Float32Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0]));
  newRoomWorker().postMessage({ question: 'gaps', design: titled('a'), meshes: new Map([['bay.stl', soup]]) });
  vi.unstubAllGlobals();
  expect(posted).toMatchObject([{ meshes: new Map([['bay.stl', { mesh: { soup } }]]) }]);
  const [{ meshes: sent }] = posted as [{ meshes: Map<string, { mesh: object }> }];
  expect(sent.get('bay.stl')!.mesh).toHaveProperty('link');
});
