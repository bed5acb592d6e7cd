/** Every hole of a flange to one series of ISO 273: M8 9 mm medium, M6 7 mm coarse, and so on; other threads are left. */
import { describe, expect, it } from 'vitest';
import type { Design, Fastener } from '../../../shared/design/types';
import { flangesOf, hasKnownThreads, setHoles, unknownThreads } from '../../../src/app/inspect/holes';
import { header } from '../../geometry/check/header';

const fastener = (thread: string, hole: number): Fastener => ({ position: [0, 0, 0], kind: 'bolt', thread, hole });
const design: Design = {
  ...header(),
  flanges: [
    { id: 'a', ports: [], thickness: 10, fasteners: [fastener('M8', 8), fastener('3/8-16', 10), fastener('M6x1', 6)] },
    { id: 'b', ports: [], thickness: 10, fasteners: [fastener('M10', 20)] },
    { id: 'c', ports: [], thickness: 10 },
  ],
};

const holes = (made: Design) => made.flanges!.map((flange) => (flange.fasteners ?? []).map(({ hole }) => hole));

describe('holes by series', () => {
  it.each([
    ['fine', [8.4, 10, 6.4]],
    ['medium', [9, 10, 6.6]],
    ['coarse', [10, 10, 7]],
  ] as const)('%s', (series, own) => {
    const edited = setHoles(design, ['a'], series);
    if (!edited.ok) throw new Error(edited.refusal.path);
    expect(holes(edited.design)).toEqual([own, [20], []]);
  });

  it('names the threads that it leaves, and knows where there is none that it could set', () => {
    expect(unknownThreads(design, ['a', 'b'])).toEqual(['3/8-16']);
    expect(hasKnownThreads(design, ['b'])).toBe(true);
    expect(hasKnownThreads(design, ['c'])).toBe(false);
  });

  it('is about the flange of a fastener too', () => {
    expect(
      flangesOf([
        { kind: 'fastener', id: 'a', index: 0 },
        { kind: 'flange', id: 'a' },
        { kind: 'port', id: 'p' },
        { kind: 'flange', id: 'b' },
      ]),
    ).toEqual(['a', 'b']);
  });
});
