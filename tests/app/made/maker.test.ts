/** Parts are made once the design rests; only the newest design's are heard, and what came out as before stays the same. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createMaker, REST } from '../../../src/app/made/maker';
import type { MakeReply, MakeRequest, ShownMade } from '../../../src/app/made/messages';
import type { ShownPart } from '../../../src/app/made/shape';
import { keepSame } from '../../../src/app/made/state';
import { titled } from '../designs';
import { fakeWorkers } from '../fakeWorkers';

const nothing: ShownMade = { parts: [], notMade: [], warnings: [] };

function bench() {
  const { asked, workers, make, reply } = fakeWorkers<MakeRequest>();
  const heard: unknown[] = [];
  const maker = createMaker(
    {
      doing: (what) => heard.push(what),
      done: (design) => heard.push(['done', design.title]),
      failed: (design, why) => heard.push(['failed', design.title, why]),
    },
    make,
  );
  return { asked, workers, heard, maker, reply: (data: MakeReply) => reply(data) };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('the maker', () => {
  it('starts no worker before a design has rested, and then asks for the newest', () => {
    const { asked, workers, maker } = bench();
    for (const title of ['a', 'b', 'c']) {
      maker.make(titled(title));
      vi.advanceTimersByTime(REST - 1);
    }
    expect(workers).toHaveLength(0);
    vi.advanceTimersByTime(1);
    expect(asked.map((r) => r.design.title)).toEqual(['c']);
  });

  it('tells what is being made, and what came of it', () => {
    const { asked, heard, maker, reply } = bench();
    maker.make(titled('a'));
    vi.advanceTimersByTime(REST);
    const { number } = asked[0]!;
    reply({ number, doing: 'tubes' });
    reply({ number, done: nothing });
    expect(heard).toEqual(['tubes', ['done', 'a']]);
  });

  it('hears nothing more of a design once there is a newer one, even before that is asked for', () => {
    const { asked, heard, workers, maker, reply } = bench();
    maker.make(titled('a'));
    vi.advanceTimersByTime(REST);
    maker.make(titled('b'));
    reply({ number: asked[0]!.number, done: nothing });
    vi.advanceTimersByTime(REST);
    reply({ number: asked[0]!.number, failed: 'late' });
    expect(heard).toEqual([]);
    reply({ number: asked[1]!.number, done: nothing });
    expect(heard).toEqual([['done', 'b']]);
    expect(workers).toHaveLength(1);
  });

  it('tells a failure in words, and starts afresh after a worker that broke', () => {
    const { asked, heard, workers, maker, reply } = bench();
    maker.make(titled('a'));
    vi.advanceTimersByTime(REST);
    reply({ number: asked[0]!.number, failed: 'no' });
    workers[0]!.onerror!.call(null as never, { message: 'broke' } as ErrorEvent);
    expect(heard).toEqual([
      ['failed', 'a', 'no'],
      ['failed', 'a', 'broke'],
    ]);
    expect(workers[0]!.ended).toBe(true);
    maker.make(titled('b'));
    vi.advanceTimersByTime(REST);
    expect(workers).toHaveLength(2);
  });
});

describe('parts made again', () => {
  const part = (id: string, print: string, x = 0): ShownPart => ({
    id,
    kind: 'stub',
    name: 'stub',
    of: { kind: 'merge', id: 'm' },
    pose: { position: [x, 0, 0], direction: [0, 0, 1], up: [0, 1, 0] },
    volume: 1,
    material: undefined,
    print,
    shape: { positions: new Float32Array(3) } as never,
  });

  it('are the very same where nothing about them changed', () => {
    const before = [part('a', '1'), part('b', '1')];
    const [a, b] = keepSame(before, [part('a', '1'), part('b', '2')]);
    expect(a).toBe(before[0]);
    expect(b).not.toBe(before[1]);
    expect(b!.shape).not.toBe(before[1]!.shape);
  });

  it('keep their shape where they only moved', () => {
    const before = [part('a', '1')];
    const [a] = keepSame(before, [part('a', '1', 5)]);
    expect(a!.pose.position).toEqual([5, 0, 0]);
    expect(a!.shape).toBe(before[0]!.shape);
  });
});
