/** Where marks stand on the picture: what sits on the tube stays, the rest take the first free place of theirs. */
import { describe, expect, it } from 'vitest';
import { type Spot, spread } from '../../../src/app/viewport/shape/spread';

const APART = 40;
/** Closer than this is not free. */
const FREE = 0.85 * APART;

const spot = (kind: Spot['kind'], at: Spot['at'], more: Partial<Spot> = {}): Spot => ({
  key: `${kind} ${at.join(' ')}`,
  kind,
  at,
  way: [1, 0],
  back: false,
  ...more,
});
const placed = (spots: readonly Spot[], kept = new Map<string, number>()) =>
  spread(spots, APART, kept).map((p) => p.map((x) => Math.round(x * 100) / 100));

describe('a mark', () => {
  it('that sits on the tube stays where it is, however crowded', () => {
    const kinds = ['bend', 'run', 'merge', 'port', 'surrounding', 'capsule-end', 'face'] as const;
    expect(placed(kinds.map((kind) => spot(kind, [100, 50])))).toEqual(kinds.map(() => [100, 50]));
  });

  it('that slides stands on its own straight, before its bend or after it', () => {
    expect(placed([spot('slide', [0, 0])])).toEqual([[14, 0]]);
    expect(placed([spot('slide', [0, 0], { back: true })])).toEqual([[-14, 0]]);
    expect(placed([spot('slide', [0, 0], { way: [0, 1] })])).toEqual([[0, 14]]);
  });

  it('beside the tube stands on one side for a new bend, on the other for a turn, whichever way the tube lies', () => {
    expect(placed([spot('add', [10, 10]), spot('turn', [10, 10])])).toEqual([
      [10, -30],
      [10, 50],
    ]);
    expect(placed([spot('add', [10, 10], { way: [0, 1] }), spot('turn', [10, 10], { way: [0, 1] })])).toEqual([
      [50, 10],
      [-30, 10],
    ]);
  });

  it('goes farther out where the first place is taken', () => {
    // The bend itself leaves no room at 0.35 and 0.6 of the distance; 0.9 of it is free.
    expect(placed([spot('bend', [0, 0]), spot('slide', [0, 0])])).toEqual([
      [0, 0],
      [36, 0],
    ]);
    const taken = spot('bend', [0, -APART]);
    expect(placed([taken, spot('add', [0, 0])])[1]).toEqual([APART, -APART]);
  });

  it('gives way to what stays, also where that comes later in the list', () => {
    const add = spot('add', [0, 0]);
    expect(placed([add, spot('bend', [0, -APART])])[0]).toEqual([APART, -APART]);
  });

  it('keeps clear of those before it', () => {
    const [first, second] = placed([spot('turn', [0, 0], { key: 'a' }), spot('turn', [0, 0], { key: 'b' })]);
    expect(first).toEqual([0, APART]);
    expect(Math.hypot(second![0]! - first![0]!, second![1]! - first![1]!)).toBeGreaterThanOrEqual(FREE);
  });

  it('takes the roomiest place where none is free', () => {
    // The places at 14 and 36 px have a bend 5 px away; the one between, at 24, some 11.
    const bends = [spot('bend', [14, 5]), spot('bend', [36, 5])];
    expect(placed([...bends, spot('slide', [0, 0])])[2]).toEqual([24, 0]);
  });
});

describe('while it is held', () => {
  it('and is alone on the picture, a mark stays in the place that it was taken from', () => {
    const kept = new Map<string, number>();
    const slide = spot('slide', [0, 0]);
    expect(placed([spot('bend', [0, 0]), slide], kept)[1]).toEqual([36, 0]);
    // The others are hidden now: the first place would be free.
    expect(placed([{ ...slide, at: [5, 5] }], kept)).toEqual([[41, 5]]);
  });

  it('but among others it is placed anew', () => {
    const kept = new Map([['slide 0 0', 2]]);
    expect(placed([spot('slide', [0, 0]), spot('bend', [500, 0])], kept)[0]).toEqual([14, 0]);
    expect(kept.get('slide 0 0')).toBe(0);
  });
});
