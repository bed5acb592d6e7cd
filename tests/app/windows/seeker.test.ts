/** Length windows are sought once the design rests, and never answered for a design that was left meanwhile. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createSeeker, REST, type Sought } from '../../../src/app/windows/seeker';
import { titled } from '../designs';
import { fakeWorkers, type JobRequest } from '../fakeWorkers';

const windows = { runners: [], groups: [] };
const meshes = new Map();

function bench() {
  const answers: Sought[] = [];
  const { asked, workers, make, reply } = fakeWorkers<JobRequest<'windows'>>();
  const seeker = createSeeker((a) => answers.push(a), make);
  return { asked, workers, answers, seeker, reply };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('the seeker', () => {
  it('waits until the design rests', () => {
    const { asked, seeker } = bench();
    for (const title of ['a', 'b', 'c']) {
      seeker.seek(titled(title), meshes);
      vi.advanceTimersByTime(REST - 1);
    }
    expect(asked).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(asked.map((r) => r.design.title)).toEqual(['c']);
  });

  it('ends the search for a design that was left', () => {
    const { asked, workers, answers, seeker, reply } = bench();
    seeker.seek(titled('a'), meshes);
    vi.advanceTimersByTime(REST);
    seeker.seek(titled('b'), meshes);
    expect(workers[0]!.ended).toBe(true);
    vi.advanceTimersByTime(REST);
    reply({ done: windows });
    expect(answers).toEqual([{ design: asked[1]!.design, windows }]);
    // A new worker has no meshes yet.
    expect(asked.map((r) => r.meshes)).toEqual([meshes, meshes]);
  });

  it('keeps a worker that has answered, and the meshes that it has', () => {
    const { asked, workers, seeker, reply } = bench();
    for (const title of ['a', 'b']) {
      seeker.seek(titled(title), meshes);
      vi.advanceTimersByTime(REST);
      reply({ done: windows });
    }
    expect(workers).toHaveLength(1);
    expect(asked.map((r) => r.meshes)).toEqual([meshes, null]);
  });

  it('tells a failure, and starts afresh after a worker that broke', () => {
    const { answers, workers, seeker, reply } = bench();
    seeker.seek(titled('a'), meshes);
    vi.advanceTimersByTime(REST);
    reply({ failed: 'no' });
    seeker.seek(titled('b'), meshes);
    vi.advanceTimersByTime(REST);
    workers[0]!.onerror!.call(null as never, { message: 'broke' } as ErrorEvent);
    expect(answers).toMatchObject([{ error: 'no' }, { error: 'broke' }]);
    seeker.seek(titled('c'), meshes);
    vi.advanceTimersByTime(REST);
    expect(workers).toHaveLength(2);
  });
});
