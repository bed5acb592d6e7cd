/** Distances that tell which way they rise, the walk down a mesh by them, and flat ends beside triangles: against slow searches. */
import { describe, expect, test } from 'vitest';
import { minimumOnDisc, minimumOnTriangle } from '../../../geometry/clearance/convexMinimum';
import { pointToDisc } from '../../../geometry/clearance/discs';
import { discToTriangle } from '../../../geometry/clearance/discTriangle';
import { placedTree } from '../../../geometry/clearance/placedTree';
import { type Rising, risingFromDisc, risingFromFrustum, risingFromSegment } from '../../../geometry/clearance/rising';
import { frustumShape } from '../../../geometry/clearance/shapes';
import { triangleField, triangleTree } from '../../../geometry/clearance/triangleTree';
import { addScaled, anySquareTo, cross, sub, unit } from '../../../geometry/vector';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';
import { randomPoint } from './lines';

const SEEDS = Array.from({ length: 12 }, (_, i) => i + 1);

const things: Record<string, (next: Random) => { rising: Rising; field: (x: number, y: number, z: number) => number }> =
  {
    'a disc': (next) => {
      const disc = { centre: randomPoint(next, 60), normal: unit(randomPoint(next, 1)), radius: next.between(5, 40) };
      return { rising: risingFromDisc(disc), field: (x, y, z) => pointToDisc(disc, x, y, z) };
    },
    'a segment': (next) => {
      const [a, b] = [randomPoint(next, 60), randomPoint(next, 60)];
      // A triangle without width is its longest edge.
      return { rising: risingFromSegment(a, sub(b, a)), field: triangleField(a, b, b) };
    },
    'a body': (next) => {
      const body = {
        position: randomPoint(next, 60),
        axis: unit(randomPoint(next, 1)),
        length: next.between(10, 80),
        startRadius: next.between(5, 40),
        endRadius: next.between(5, 40),
      };
      return { rising: risingFromFrustum(body), field: frustumShape(body).signedDistance };
    },
  };

describe.each(Object.keys(things))('%s', (kind) => {
  test.each(SEEDS)('rises as its field does, seed %i', (seed) => {
    const next = random(seed);
    const { rising, field } = things[kind]!(next);
    const way = new Float64Array(3);
    const h = 1e-4;
    for (let i = 0; i < 200; i++) {
      const p = randomPoint(next, 150);
      const value = rising(...p, way);
      expect(value).toBeCloseTo(field(...p), 9);
      if (value <= 0.1) continue;
      const g = [0, 1, 2].map((k) => {
        const by = (s: number): Vec3 => [p[0] + (k === 0 ? s : 0), p[1] + (k === 1 ? s : 0), p[2] + (k === 2 ? s : 0)];
        return (field(...by(h)) - field(...by(-h))) / (2 * h);
      });
      for (let k = 0; k < 3; k++) expect(way[k]).toBeCloseTo(g[k]!, 2);
      // Nowhere under the plane that touches it: what the walk relies on.
      const q = randomPoint(next, 150);
      const plane = value + way[0]! * (q[0] - p[0]) + way[1]! * (q[1] - p[1]) + way[2]! * (q[2] - p[2]);
      expect(field(...q)).toBeGreaterThanOrEqual(plane - 1e-9);
    }
  });

  test.each(SEEDS)('the nearest triangle of a mesh moved, turned and in inches, seed %i', (seed) => {
    const next = random(100 + seed);
    const { rising, field } = things[kind]!(next);
    const soup = Float32Array.from(
      Array.from({ length: 300 }, () => {
        const a = randomPoint(next, 8);
        return [a, addScaled(a, randomPoint(next, 1), 0.7), addScaled(a, randomPoint(next, 1), 0.7)];
      }).flat(2),
    );
    const x = unit(randomPoint(next, 1));
    const y = anySquareTo(x);
    const tree = placedTree(triangleTree(soup).flat, {
      scale: 25.4,
      position: randomPoint(next, 30),
      x,
      y,
      z: cross(x, y),
    });
    let slow = Number.POSITIVE_INFINITY;
    let count = 0;
    tree.visitWhere(
      rising,
      () => Number.POSITIVE_INFINITY,
      (a, b, c) => {
        count++;
        slow = Math.min(slow, minimumOnTriangle(field, a, b, c).value);
      },
    );
    expect(count).toBe(300);
    let least = Number.POSITIVE_INFINITY;
    let looked = 0;
    tree.visitWhere(
      rising,
      () => least,
      (a, b, c, toIt) => {
        looked++;
        expect(toIt(...a)).toBeLessThan(1e-5);
        least = Math.min(least, minimumOnTriangle(field, a, b, c).value);
      },
    );
    expect(Math.abs(least - slow)).toBeLessThan(1e-3);
    expect(looked).toBeLessThan(count / 3);
  });
});

describe('a triangle and a flat end', () => {
  test.each(SEEDS)('are as far apart as a search over all of the disc tells, seed %i', (seed) => {
    const next = random(200 + seed);
    let cuts = 0;
    for (let i = 0; i < 60; i++) {
      const disc = { centre: randomPoint(next, 20), normal: unit(randomPoint(next, 1)), radius: next.between(5, 40) };
      const [a, b, c] = [randomPoint(next, 60), randomPoint(next, 60), randomPoint(next, 60)];
      const field = triangleField(a, b, c);
      const slow = minimumOnDisc(field, disc).value;
      const found = discToTriangle(disc, risingFromDisc(disc), field, a, b, c, Number.POSITIVE_INFINITY)!;
      expect(Math.abs(Math.max(0, found.value) - slow)).toBeLessThan(1e-3);
      expect(pointToDisc(disc, ...found.at)).toBeLessThan(1e-9);
      if (slow > 0.001) expect(field(...found.at)).toBeCloseTo(found.value, 3);
      else cuts++;
      // What is asked for less than there is, is not there.
      expect(discToTriangle(disc, risingFromDisc(disc), field, a, b, c, found.value - 0.01)).toBeNull();
      expect(discToTriangle(disc, risingFromDisc(disc), field, a, b, c, found.value + 0.01)?.value).toBeCloseTo(
        found.value,
        3,
      );
    }
    expect(cuts).toBeGreaterThan(0);
    expect(cuts).toBeLessThan(60);
  });
});
