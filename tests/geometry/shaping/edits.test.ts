/** What a hand may do to a runner: ends stay true, nothing else moves, and the same move backward brings everything back. */
import { describe, expect, it } from 'vitest';
import {
  add,
  addBend,
  bendTable,
  check,
  moveBend,
  movePoint,
  moveRun,
  pathOf,
  removeBend,
  resolveHeader,
  scale,
  setBendAngle,
  setRotation,
  setStraight,
  slideBend,
  sub,
  turningSide,
  turnRun,
} from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { designWith } from '../../app/designs';
import { random } from '../../random';
import { examples, expectEndsTrue, expectOthersUntouched, farthest, pull, withUBend, withUBendFirst } from './designs';

const ROUNDS = 12;
/** The documents' own ends are true to what their decimals give, radians and mm. */
const WRITTEN = 2e-4;

/** Each runner of each example with a few seeded pulls. */
function each(seed: number, act: (design: Design, runner: string, rnd: ReturnType<typeof random>) => void): void {
  const rnd = random(seed);
  for (const design of Object.values(examples))
    for (const { id } of design.runners) for (let k = 0; k < ROUNDS; k++) act(design, id, rnd);
}
const tableOf = (design: Design, id: string) => {
  const { centerline, start } = resolveHeader(design).runners.find((r) => r.runner.id === id)!;
  return bendTable(centerline!, start.up);
};

describe('moving bends, seed 301', () => {
  it('keeps both ends true and every other runner the same bytes', () => {
    each(301, (design, id, rnd) => {
      const { points } = pathOf(design, id);
      const index = rnd.whole(1, points.length - 2);
      const next = movePoint(design, id, index, add(points[index]!, pull(rnd)));
      expectOthersUntouched(design, next, id);
      expectEndsTrue(next, id, WRITTEN, WRITTEN);
    });
  });

  it('comes back by the opposite move', () => {
    each(302, (design, id, rnd) => {
      const bend = rnd.whole(0, pathOf(design, id).bends.length - 1);
      const by = pull(rnd, 15);
      const there = moveBend(design, id, bend, by);
      expect(farthest(design, there)).toBeGreaterThan(0);
      expect(farthest(design, moveBend(there, id, bend, scale(by, -1)))).toBeLessThan(1e-9);
    });
  });

  it('puts a bend between others exactly where it is asked', () => {
    each(303, (design, id, rnd) => {
      const { points } = pathOf(design, id);
      if (points.length < 5) return;
      const to = add(points[2]!, pull(rnd));
      const next = movePoint(design, id, 2, to);
      expect(next.runners.find((r) => r.id === id)!.points![2]).toEqual(to.map((x) => expect.closeTo(x, 9)));
    });
  });

  it('slides the first bend along its port and lets the sideways part swing the straight after it', () => {
    const id = examples.four.runners[0]!.id;
    const path = pathOf(examples.four, id);
    expect(path.points.length).toBeGreaterThan(4);
    const out = path.start.direction;
    const by = add(scale(out, 12), [7, 0, 0]);
    const after = pathOf(moveBend(examples.four, id, 0, by), id).points;
    expect(sub(after[1]!, path.points[1]!)).toEqual(scale(out, 12).map((x) => expect.closeTo(x, 9)));
    expect(sub(after[2]!, path.points[2]!)).toEqual([expect.closeTo(7, 9), expect.closeTo(0, 9), expect.closeTo(0, 9)]);
  });

  it('never takes the first bend behind its port', () => {
    const id = examples.four.runners[0]!.id;
    const { start } = pathOf(examples.four, id);
    const next = moveBend(examples.four, id, 0, scale(start.direction, -5000));
    expectEndsTrue(next, id, WRITTEN, 2e-3);
  });

  it('has nowhere to take a lone bend between two fixed ends', () => {
    const lone = designWith([
      [0, 0, 0],
      [0, 320, 0],
      [-100, 320, 0],
    ]);
    expect(moveBend(lone, 'r1', 0, [5, 5, 5])).toBe(lone);
  });

  it('slides along the line that it says', () => {
    each(304, (design, id, rnd) => {
      const { bends, points } = pathOf(design, id);
      const bend = rnd.whole(0, bends.length - 1);
      const by = rnd.between(2, 10);
      const next = pathOf(slideBend(design, id, bend, 'in', by), id).points;
      const at = bends[bend]!.first;
      expect(Math.hypot(...sub(next[at]!, points[at]!))).toBeCloseTo(by, 6);
      expectEndsTrue(slideBend(design, id, bend, 'in', by), id, WRITTEN, WRITTEN);
    });
  });
});

describe('a bend stored as two points, seed 306', () => {
  it.each([
    ['between others', withUBend],
    ['as the first', withUBendFirst],
  ])('stays one continuous bend %s, whichever bend is pulled, and comes back', (_, design) => {
    const rnd = random(306);
    const { bends } = pathOf(design, 'r1');
    expect(bends.some((b) => b.last === b.first + 1)).toBe(true);
    for (let k = 0; k < 40; k++) {
      const bend = rnd.whole(0, bends.length - 1);
      const by = pull(rnd, 6);
      const there = moveBend(design, 'r1', bend, by);
      expect(pathOf(there, 'r1').bends).toEqual(bends);
      expectEndsTrue(there, 'r1');
      expect(farthest(design, moveBend(there, 'r1', bend, scale(by, -1)))).toBeLessThan(1e-9);
    }
  });
});

describe('moving and turning straights, seed 311', () => {
  it('moves a straight parallel to itself, ends true, and back', () => {
    each(311, (design, id, rnd) => {
      const { straights, points, bends } = pathOf(design, id);
      if (straights.length < 3) return;
      const straight = rnd.whole(1, straights.length - 2);
      const by = pull(rnd, 3);
      const there = moveRun(design, id, straight, by);
      expectOthersUntouched(design, there, id);
      expectEndsTrue(there, id, WRITTEN, WRITTEN);
      // Between the first and the last bend both ends ride, and the straight may swing: it comes back only nearly.
      if (bends.length === 2) return;
      const run = straights[straight]!;
      const moved = pathOf(there, id).points;
      const [a, b] = [sub(points[run.last]!, points[run.first]!), sub(moved[run.last]!, moved[run.first]!)];
      const turn = Math.hypot(...crossed(a, b)) / (Math.hypot(...a) * Math.hypot(...b));
      expect(turn).toBeLessThan(1e-9);
      expect(farthest(design, moveRun(there, id, straight, scale(by, -1)))).toBeLessThan(1e-9);
    });
  });

  it('leaves the first and last straights on their end lines', () => {
    const id = examples.four.runners[0]!.id;
    expect(moveRun(examples.four, id, 0, [9, 9, 9])).toBe(examples.four);
  });

  it('turns about a straight without changing lengths before it, ends true, and back', () => {
    let turned = 0;
    each(312, (design, id, rnd) => {
      const { straights } = pathOf(design, id);
      const straight = rnd.whole(0, straights.length - 1);
      const side = turningSide(pathOf(design, id), straight);
      const angle = rnd.between(-0.5, 0.5);
      const there = turnRun(design, id, straight, angle);
      if (side === null) {
        expect(there).toBe(design);
        return;
      }
      turned++;
      expectOthersUntouched(design, there, id);
      expectEndsTrue(there, id, WRITTEN, WRITTEN);
      const [before, after] = [tableOf(design, id), tableOf(there, id)];
      // The row whose rotation turns is that of the bend at the straight's far end, by the angle and with its sign.
      if (side === 'after' && straight > 0) {
        const row = (t: typeof before) => t.rows[straight]!.rotation;
        const change = row(after) - row(before) - (angle * 180) / Math.PI;
        expect(change - 360 * Math.round(change / 360)).toBeCloseTo(0, 6);
      }
      expect(farthest(design, turnRun(there, id, straight, -angle, side))).toBeLessThan(1e-9);
    });
    expect(turned).toBeGreaterThan(20);
  });
});

describe('setting a row, seed 321', () => {
  it('reads what was asked, ends true', () => {
    let set = 0;
    each(321, (design, id, rnd) => {
      const { bends } = pathOf(design, id);
      const bend = rnd.whole(0, bends.length - 1);
      const row = tableOf(design, id).rows[bend]!;
      const angle = row.angle + rnd.between(-6, 6);
      const bent = setBendAngle(design, id, bend, angle);
      if (bent !== design) {
        expect(tableOf(bent, id).rows[bend]!.angle).toBeCloseTo(angle, 6);
        set++;
      }
      const straight = row.length + rnd.between(1, 8);
      const longer = setStraight(design, id, bend, straight);
      if (longer !== design) {
        expect(tableOf(longer, id).rows[bend]!.length).toBeCloseTo(straight, 6);
        set++;
      }
      const rotation = row.rotation + rnd.between(-8, 8);
      const turned = setRotation(design, id, bend, rotation);
      if (turned !== design) {
        const miss = tableOf(turned, id).rows[bend]!.rotation - rotation;
        expect(miss - 360 * Math.round(miss / 360)).toBeCloseTo(0, 6);
        set++;
      }
      for (const next of [bent, longer, turned]) {
        expectEndsTrue(next, id, WRITTEN, WRITTEN);
        expectOthersUntouched(design, next, id);
      }
    });
    expect(set).toBeGreaterThan(200);
  });
});

describe('adding and removing bends, seed 331', () => {
  it('adds one bend on any straight, ends true, and takes it out again', () => {
    each(331, (design, id, rnd) => {
      const { straights, bends, points } = pathOf(design, id);
      const straight = rnd.whole(0, straights.length - 1);
      const by: Vec3 = [rnd.between(5, 20), rnd.between(5, 20), rnd.between(5, 20)];
      const next = addBend(design, id, straight, 40, by);
      expectOthersUntouched(design, next, id);
      expectEndsTrue(next, id, WRITTEN, WRITTEN);
      const now = pathOf(next, id);
      expect(now.points.length).toBe(points.length + 1);
      expect(now.bends.length).toBe(bends.length + 1);
      const inner = straight > 0 && straight < straights.length - 1;
      if (inner) {
        const again = removeBend(next, id, straight);
        expect(farthest(design, again)).toBeLessThan(1e-9);
      }
    });
  });

  it('keeps a radius for every bend where the runner names its own', () => {
    const [first, ...rest] = examples.four.runners;
    const radii = first!.points!.slice(1, -1).map((_, i) => 60 + i);
    const own = { ...examples.four, runners: [{ ...first!, radii }, ...rest] };
    const added = addBend(own, first!.id, 1, 30, [0, 0, 20]).runners[0]!;
    expect(added.radii).toHaveLength(added.points!.length - 2);
    const removed = removeBend(own, first!.id, 1).runners[0]!;
    expect(removed.radii).toEqual(radii.filter((_, i) => i !== 1));
  });

  it('removes any bend of three or more, ends true', () => {
    each(332, (design, id, rnd) => {
      const { bends } = pathOf(design, id);
      if (bends.length < 3) return;
      const next = removeBend(design, id, rnd.whole(0, bends.length - 1));
      expect(next).not.toBe(design);
      expectEndsTrue(next, id, WRITTEN, WRITTEN);
    });
  });

  it('refuses to take out the last bend between lines that do not meet', () => {
    const lone = designWith([
      [0, 0, 0],
      [0, 320, 0],
      [-100, 320, 0],
    ]);
    expect(removeBend(lone, 'r1', 0)).toBe(lone);
  });

  it('leaves a design that can still be measured', () => {
    const id = examples.four.runners[0]!.id;
    const report = check(removeBend(examples.four, id, 1));
    expect(report.runners.find((r) => r.id === id)!.bends).toBe(pathOf(examples.four, id).bends.length - 1);
  });
});

const crossed = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
