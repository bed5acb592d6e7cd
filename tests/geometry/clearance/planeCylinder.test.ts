/** Cylinders with flat ends and half spaces as surroundings: measured against brute force, and kept clear of by the solver. */
import { describe, expect, test } from 'vitest';
import { balance, check, pointAt, resolveHeader, router, unit } from '../../../geometry';
import { bodyToShape } from '../../../geometry/clearance/bodies';
import { chain } from '../../../geometry/clearance/chain';
import { cylinderShape, planeShape } from '../../../geometry/clearance/shapes';
import { tubeToShape } from '../../../geometry/clearance/tubeShape';
import type { Design, Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { loadLayout } from '../../layouts/load';
import { random } from '../../random';
import { firstLayout } from '../route/firstLayout';
import { frustumPatches, leastOver, toFrustum, tubePatches } from './bruteForce';
import { LIMIT, randomLine, randomPoint } from './lines';

const agree = (fast: number, slow: number): void => {
  if (slow > LIMIT) expect(Math.abs(fast - slow)).toBeLessThan(LIMIT);
  else if (slow < -LIMIT) expect(fast).toBeLessThan(0);
};

describe('a bent tube and a collector’s body against brute force', () => {
  test.each(Array.from({ length: 12 }, (_, i) => i + 1))('a plane, seed %i', (seed) => {
    const next = random(seed);
    const radius = next.between(12, 32);
    const line = randomLine(next, radius, 60);
    const normal = unit(randomPoint(next, 1));
    const position = randomPoint(next, 60).map((x, k) => x - 150 * normal[k]!) as unknown as Vec3;
    const height = (p: Vec3) => p.reduce((sum, x, k) => sum + (x - position[k]!) * normal[k]!, 0);
    const shape = planeShape({ position, normal });
    agree(tubeToShape(chain(line, radius)!, shape)!.gap, leastOver(tubePatches(line, radius), height));
    const axis = unit(randomPoint(next, 1));
    const body = { position: randomPoint(next, 60), axis, length: 120, startRadius: 40, endRadius: 25 };
    agree(bodyToShape(body, shape)!.value, leastOver(frustumPatches(body), height));
  });
  test.each(Array.from({ length: 12 }, (_, i) => i + 1))('a cylinder, seed %i', (seed) => {
    const next = random(seed);
    const radius = next.between(12, 32);
    const line = randomLine(next, radius, 90);
    const [a, b] = [randomPoint(next, 140), randomPoint(next, 140)];
    const wide = next.between(5, 30);
    const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    const axis = unit([b[0] - a[0], b[1] - a[1], b[2] - a[2]]);
    const field = toFrustum({ position: a, axis, length, startRadius: wide, endRadius: wide });
    const fast = tubeToShape(chain(line, radius)!, cylinderShape({ a, b, radius: wide }))!.gap;
    agree(fast, leastOver(tubePatches(line, radius), field));
  });
});

describe('a header that runs into one', () => {
  const { design: base, meshes } = loadLayout('known', 'c4-v8-bank-shaft');
  /** Reaching 1.5 mm further than the clearance allows toward the middle of the outermost place of a runner. */
  function inTheWay(shape: 'plane' | 'cylinder'): Design {
    const header = resolveHeader(base);
    const r = header.runners[1]!;
    const line = r.centerline!;
    const [, , y] = farthest();
    const at = pointAt(line, y).position;
    const face = at[1] + r.tubeRadius + 5 - 1.5;
    const thing: Surrounding =
      shape === 'plane'
        ? { id: 'wall', shape, position: [0, face, 0], normal: [0, -3, 0], clearance: 5 }
        : { id: 'wall', shape, a: [at[0], face, at[2]], b: [at[0], face + 60, at[2]], radius: 12, clearance: 5 };
    return { ...base, surroundings: [...(base.surroundings ?? []).filter((s) => s.shape !== shape), thing] };

    /** Where it bulges out most, y. */
    function farthest(): [number, number, number] {
      let best: [number, number, number] = [0, Number.NEGATIVE_INFINITY, 0];
      for (let s = 0.25 * line.length; s < 0.75 * line.length; s += 2) {
        const p = pointAt(line, s).position;
        if (p[1] > best[1]) best = [0, p[1], s];
      }
      return best;
    }
  }
  test.each(['plane', 'cylinder'] as const)('is balanced away from a %s', (shape) => {
    const design = inTheWay(shape);
    expect(check(design, meshes).problems.map((p) => p.rule)).toContain('surroundings');
    const { report } = balance(design, meshes);
    expect(report.problems.map((p) => p.message)).toEqual([]);
  });
  test.each(['plane', 'cylinder'] as const)('is laid clear of a %s', { timeout: 60_000 }, (shape) => {
    const design = inTheWay(shape);
    const found = firstLayout(router(design, meshes, { seed: 2 }), 10);
    expect(found).not.toBeNull();
    expect(check(found!.design, meshes).ok).toBe(true);
  });
});
