/**
 * Unrolled cuts against tubes and planes met in space: lines along the branch's surface are marched until they enter the other
 * body, by bisection, with no formula in common with the kernel's. Seeded.
 */
import { expect, test } from 'vitest';
import { extremes, mitreCut, saddleCut, segmentedBend } from '../../../geometry';
import { random } from '../../random';

type V = readonly [number, number, number];
const dot = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const plus = (a: V, b: V, k = 1): V => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const cross = (a: V, b: V): V => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: V): V => plus([0, 0, 0], a, 1 / Math.sqrt(dot(a, a)));

/** From `from` along `way` to where `inside` first holds; it must hold nowhere before. */
function reach(from: V, way: V, inside: (p: V) => boolean, farthest: number): number {
  const step = 0.01;
  let s = 0;
  while (!inside(plus(from, way, s + step))) {
    s += step;
    if (s > farthest) throw new Error('never met');
  }
  let [a, b] = [s, s + step];
  for (let i = 0; i < 40; i++) {
    const middle = (a + b) / 2;
    if (inside(plus(from, way, middle))) b = middle;
    else a = middle;
  }
  return b;
}

/** Some frame in space, so that nothing is along an axis by luck. */
function frame(next: () => number): { x: V; y: V; z: V; o: V } {
  const z = unit([next() - 0.5, next() - 0.5, next() + 0.2]);
  const x = unit(cross(z, [next(), next() + 1, 0.3]));
  return { x, y: cross(z, x), z, o: [100 * next(), 100 * next(), 100 * next()] };
}

const TOLERANCE = 0.05;
const ROUND = Array.from({ length: 48 }, (_, i) => (2 * Math.PI * i) / 48);

test.each([1, 2, 3, 4, 5, 6])('a branch met with a header tube, by outside and by bore, seed %i', (seed) => {
  const next = random(seed);
  const headerRadius = 20 + 20 * next();
  const outsideDiameter = 2 * headerRadius * (0.5 + 0.35 * next());
  const wall = 1 + next();
  const angle = ((30 + 60 * next()) * Math.PI) / 180;
  const offset = (headerRadius - outsideDiameter / 2) * (2 * next() - 1);
  const { x, y, z, o } = frame(next);
  for (const measuredOn of ['outside', 'bore'] as const) {
    const cut = saddleCut({ id: 'b', title: 'B', outsideDiameter, wall, headerRadius, angle, offset, measuredOn });
    const r = outsideDiameter / 2 - (measuredOn === 'bore' ? wall : 0);
    // The header lies along x. The branch comes down on it, its free end leaning toward +x: the obtuse side looks to −x.
    const toCut = unit(plus(plus([0, 0, 0], x, -Math.cos(angle)), z, -Math.sin(angle)));
    const heelward = unit(plus(plus([0, 0, 0], x, -Math.sin(angle)), z, Math.cos(angle)));
    const quarter = cross(toCut, heelward);
    expect(dot(quarter, y)).toBeCloseTo(1, 12);
    const far = 300;
    const start = plus(plus(o, toCut, -far), quarter, offset);
    const inHeader = (p: V) => {
      const d = plus(p, o, -1);
      return dot(d, y) ** 2 + dot(d, z) ** 2 <= headerRadius ** 2;
    };
    const along = ROUND.map((phi) => {
      const rim = plus(plus(start, heelward, r * Math.cos(phi)), quarter, r * Math.sin(phi));
      return reach(rim, toCut, inHeader, far);
    });
    for (const [i, phi] of ROUND.entries())
      expect(Math.abs(cut.height(phi) - cut.height(0) - (along[i]! - along[0]!))).toBeLessThan(TOLERANCE / 100);
  }
});

test.each([1, 2, 3])(
  'two pieces of a segmented bend show one cut in the plane that halves their angle, seed %i',
  (seed) => {
    const next = random(seed);
    const outsideDiameter = 30 + 60 * next();
    const total = ((20 + 100 * next()) * Math.PI) / 180;
    const joints = 1 + Math.floor(4 * next());
    const bend = segmentedBend(outsideDiameter, 2 * outsideDiameter, total, joints);
    const cut = mitreCut({ id: 'b', title: 'B', outsideDiameter, wall: 1.5, cutAngle: bend.cutAngle });
    const { x, y, z, o } = frame(next);
    // One piece runs along z to o; the next leaves it turned toward −x, so that the outside of the bend is +x.
    const turn = total / joints;
    const leaving = plus(plus([0, 0, 0], z, Math.cos(turn)), x, -Math.sin(turn));
    const normal = unit(plus(z, leaving));
    const beyond = (p: V) => dot(plus(p, o, -1), normal) >= 0;
    const along = ROUND.map((phi) => {
      const rim = plus(
        plus(plus(o, z, -200), x, (outsideDiameter / 2) * Math.cos(phi)),
        y,
        (outsideDiameter / 2) * Math.sin(phi),
      );
      return reach(rim, z, beyond, 400);
    });
    for (const [i, phi] of ROUND.entries())
      expect(Math.abs(cut.height(phi) - cut.height(0) - (along[i]! - along[0]!))).toBeLessThan(TOLERANCE / 100);
  },
);

test('a segmented bend’s pieces touch the circle of its radius in their middles and turn it in all', () => {
  const { middle, end, cutAngle } = segmentedBend(50.8, 76.2, Math.PI / 2, 4);
  // March along the centerline from the start of the circle: it must end a quarter turn on.
  let [px, py, heading] = [0, 0, 0];
  for (const length of [end, middle, middle, middle, end].map((p) => p.centerline)) {
    px += length * Math.cos(heading);
    py += length * Math.sin(heading);
    heading += 2 * cutAngle;
  }
  expect(px).toBeCloseTo(76.2, 9);
  expect(py).toBeCloseTo(76.2, 9);
});

test('heel and crotch: two of each where the branch stands square, one where it leans', () => {
  const of = (angle: number, r = 20) => {
    const cut = saddleCut({ id: 'b', title: 'B', outsideDiameter: 2 * r, wall: 1, headerRadius: 30, angle });
    return extremes(cut.height, cut.corners);
  };
  const square = of(Math.PI / 2);
  for (const [i, a] of [Math.PI / 2, (3 * Math.PI) / 2].entries()) expect(square.highest[i]).toBeCloseTo(a, 6);
  for (const [i, a] of [0, Math.PI].entries()) expect(square.lowest[i]).toBeCloseTo(a, 6);
  const leaning = of(Math.PI / 4);
  expect(leaning.lowest).toHaveLength(1);
  expect(leaning.lowest[0]).toBeCloseTo(Math.PI, 6);
  const equal = saddleCut({ id: 'b', title: 'B', outsideDiameter: 60, wall: 1, headerRadius: 30, angle: Math.PI / 2 });
  expect(equal.corners).toEqual([Math.PI / 2, (3 * Math.PI) / 2]);
  expect(equal.height(Math.PI / 2) - equal.height(0)).toBeCloseTo(30, 9);
});

test('what cannot be cut is refused, saying why', () => {
  const base = { id: 'b', title: 'Branch b', outsideDiameter: 50, wall: 1.5, headerRadius: 25 };
  expect(() => saddleCut({ ...base, angle: 1, offset: 3 })).toThrow(/Branch b: a branch of 50 mm, 3 mm off centre/);
  expect(() => saddleCut({ ...base, angle: 2 })).toThrow(/at most 90°/);
  expect(() => segmentedBend(50, 20, 1, 2)).toThrow(/leaves no inside/);
  expect(() => segmentedBend(50, 75, 1, 0)).toThrow(/joints/);
  expect(() => mitreCut({ ...base, cutAngle: 1.6 })).toThrow(/never crosses/);
});
