import { describe, expect, test } from 'vitest';
import type { Frustum } from '../../../geometry';
import { bodyToMesh, bodyToShape } from '../../../geometry/clearance/bodies';
import { boxShape, type ConvexShape, capsuleShape, frustumShape } from '../../../geometry/clearance/shapes';
import { triangleTree } from '../../../geometry/clearance/triangleTree';
import { unit } from '../../../geometry/vector';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';
import { type Distance, frustumPatches, leastOver, toBox, toCapsule, toFrustum, trianglePatch } from './bruteForce';
import { LIMIT, randomPoint } from './lines';

const cone = (next: Random): Frustum => ({
  position: randomPoint(next, 80),
  axis: unit(randomPoint(next, 1)),
  length: next.between(40, 150),
  startRadius: next.between(30, 70),
  endRadius: next.between(20, 45),
});

const others: Record<string, (next: Random) => [ConvexShape, Distance]> = {
  frustum(next) {
    const other = cone(next);
    return [frustumShape(other), toFrustum(other)];
  },
  capsule(next) {
    const [a, b, radius] = [randomPoint(next, 160), randomPoint(next, 160), next.between(4, 30)];
    return [capsuleShape({ a, b, radius }), toCapsule(a, b, radius)];
  },
  box(next) {
    const p = randomPoint(next, 140);
    const max: Vec3 = [p[0] + next.between(5, 90), p[1] + next.between(5, 90), p[2] + next.between(5, 90)];
    return [boxShape({ min: p, max }), toBox(p, max)];
  },
};

describe.each(Object.keys(others))('a collector’s body and a %s against brute force', (kind) => {
  test.each(Array.from({ length: 14 }, (_, i) => i + 1))('seed %i', (seed) => {
    const next = random(seed);
    const body = cone(next);
    const [shape, field] = others[kind]!(next);
    const slow = leastOver(frustumPatches(body), field);
    const fast = bodyToShape(body, shape)!.value;
    if (slow > -0.5) expect(Math.abs(fast - slow)).toBeLessThan(LIMIT);
    else expect(fast).toBeLessThan(-LIMIT);
    // The quick first look lets no gap pass that is under the limit.
    expect(bodyToShape(body, shape, fast + LIMIT)?.value).toBe(fast);
    expect(bodyToShape(body, shape, fast - LIMIT)).toBeNull();
  });
});

test.each(Array.from({ length: 14 }, (_, i) => i + 1))(
  'a collector’s body and triangles against brute force, seed %i',
  (seed) => {
    const next = random(seed);
    const body = cone(next);
    const triangles = Array.from({ length: 7 }, () => {
      const a = randomPoint(next, 160);
      const corner = (): Vec3 => [
        a[0] + next.between(-60, 60),
        a[1] + next.between(-60, 60),
        a[2] + next.between(-60, 60),
      ];
      return [a, corner(), corner()] as const;
    });
    const slow = leastOver(
      triangles.map((t) => trianglePatch(...t)),
      toFrustum(body),
    );
    const fast = bodyToMesh(body, triangleTree(Float32Array.from(triangles.flat(2))))!.value;
    if (slow > -0.5) expect(Math.abs(fast - slow)).toBeLessThan(LIMIT);
    else expect(fast).toBeLessThan(-LIMIT);
  },
);
