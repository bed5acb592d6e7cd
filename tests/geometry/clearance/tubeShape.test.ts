import { describe, expect, test } from 'vitest';
import type { Centerline } from '../../../geometry';
import { chain } from '../../../geometry/clearance/chain';
import { boxShape, type ConvexShape, capsuleShape, frustumShape } from '../../../geometry/clearance/shapes';
import { tubeToShape } from '../../../geometry/clearance/tubeShape';
import { unit } from '../../../geometry/vector';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';
import { type Distance, leastOver, toBox, toCapsule, toFrustum, tubePatches, WITHIN } from './bruteForce';
import { LIMIT, randomLine, randomPoint, straight } from './lines';

const shapes: Record<string, (next: Random) => [ConvexShape, Distance]> = {
  capsule(next) {
    const [a, b, radius] = [randomPoint(next, 90), randomPoint(next, 90), next.between(4, 40)];
    return [capsuleShape({ a, b, radius }), toCapsule(a, b, radius)];
  },
  box(next) {
    const p = randomPoint(next, 90);
    const size = [next.between(2, 120), next.between(2, 120), next.between(2, 120)] as const;
    const max: Vec3 = [p[0] + size[0], p[1] + size[1], p[2] + size[2]];
    return [boxShape({ min: p, max }), toBox(p, max)];
  },
  frustum(next) {
    const cone = {
      position: randomPoint(next, 90),
      axis: unit(randomPoint(next, 1)),
      length: next.between(30, 150),
      startRadius: next.between(20, 70),
      endRadius: next.between(15, 50),
    };
    return [frustumShape(cone), toFrustum(cone)];
  },
};

describe.each(Object.keys(shapes))('%s', (kind) => {
  test.each(Array.from({ length: 18 }, (_, i) => i + 1))('and a bent tube against brute force, seed %i', (seed) => {
    const next = random(seed);
    const radius = next.between(12, 32);
    const line = randomLine(next, radius, 90);
    const [shape, field] = shapes[kind]!(next);
    const slow = leastOver(tubePatches(line, radius), field);
    const fast = tubeToShape(chain(line, radius)!, shape)!.gap;
    // Shallow overlaps have a depth that both agree on; deep ones only a sign.
    if (slow > -0.5) expect(Math.abs(fast - slow)).toBeLessThan(LIMIT);
    else expect(fast).toBeLessThan(-LIMIT);
  });

  test.each([1, 2, 3])('the field is the same as the slow one’s, inside and out, seed %i', (seed) => {
    const next = random(seed);
    const [shape, field] = shapes[kind]!(next);
    for (let i = 0; i < 300; i++) {
      const p = randomPoint(next, 150);
      expect(shape.signedDistance(...p)).toBeCloseTo(field(p), 6);
      const [c, r] = [shape.centre, shape.reach];
      expect(shape.signedDistance(...p)).toBeGreaterThan(Math.hypot(p[0] - c[0], p[1] - c[1], p[2] - c[2]) - r - 1e-9);
    }
  });
});

describe('by hand', () => {
  const rod = straight([0, 0, 0], [100, 0, 0]);
  const box = (min: Vec3, max: Vec3) => boxShape({ min, max });
  const ball = (a: Vec3, radius: number) => capsuleShape({ a, b: a, radius });
  test.each<[string, Centerline, ConvexShape, number]>([
    ['a face along the side', rod, box([-50, 25, -50], [150, 60, 50]), 5],
    ['a face that cuts into the side', rod, box([-50, 19.6, -50], [150, 60, 50]), -0.4],
    ['a face square to the end', rod, box([112, -50, -50], [150, 50, 50]), 12],
    ['a head behind the flange, 12 mm for 40 mm tube', rod, box([-90, -60, -60], [-12, 60, 60]), 12],
    [
      'an edge over the side',
      rod,
      box([40, 12 + 20 * Math.SQRT1_2, 12 + 20 * Math.SQRT1_2], [60, 90, 90]),
      12 * Math.SQRT2,
    ],
    ['a ball beside the end, past it', rod, ball([110, 30, 0], 5), Math.hypot(10, 10) - 5],
    ['a ball wholly in the bore', rod, ball([50, 3, 0], 2), 1 - 20],
    ['a pin along the axis, off the end', rod, capsuleShape({ a: [120, 0, 0], b: [200, 0, 0], radius: 6 }), 14],
  ])('%s', (_, line, shape, gap) => {
    expect(tubeToShape(chain(line, 20)!, shape)!.gap).toBeCloseTo(gap, 2);
    expect(tubeToShape(chain(line, 20)!, shape, gap + 0.1)!.gap).toBeCloseTo(gap, 2);
    expect(tubeToShape(chain(line, 20)!, shape, gap - 0.1)).toBeNull();
  });
  test('the brute force is as fine as it says', () => {
    const slow = leastOver(tubePatches(rod, 20), toBox([40, 25, -5], [45, 60, 5]));
    expect(slow).toBeGreaterThanOrEqual(5);
    expect(slow).toBeLessThan(5 + WITHIN);
  });
});
