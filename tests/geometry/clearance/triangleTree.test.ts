/** The hierarchy against every triangle in turn, and the regions' distance against triangles cut into patches. */
import { describe, expect, test } from 'vitest';
import { triangleField } from '../../../geometry/clearance/triangle';
import { triangleTree } from '../../../geometry/clearance/triangleTree';
import { distance } from '../../../geometry/vector';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';
import { leastOver, trianglePatch, WITHIN } from './bruteForce';
import { randomPoint } from './lines';

type Triangle = readonly [Vec3, Vec3, Vec3];
const soupOf = (triangles: readonly Triangle[]): Float32Array => Float32Array.from(triangles.flat(2));
/** Its number among the triangles, from its corners: the tree has an order of its own. */
const single = (p: Vec3): Vec3 => [Math.fround(p[0]), Math.fround(p[1]), Math.fround(p[2])];
const key = (a: Vec3, b: Vec3, c: Vec3): string => [...a, ...b, ...c].join();
const beside = (next: Random, p: Vec3, by: number): Vec3 => [
  p[0] + next.between(-by, by),
  p[1] + next.between(-by, by),
  p[2] + next.between(-by, by),
];

function scattered(next: Random, count: number): Triangle[] {
  return Array.from({ length: count }, (): Triangle => {
    const a = randomPoint(next, 200);
    return [a, beside(next, a, 30), beside(next, a, 30)];
  }).map(rounded);
}
/** As the tree holds it. */
const rounded = ([a, b, c]: Triangle): Triangle => [single(a), single(b), single(c)];

const meshes: Record<string, (next: Random) => Triangle[]> = {
  'triangles all over': (next) => scattered(next, 500),
  'a few': (next) => scattered(next, next.whole(1, 9)),
  'all in one plane': (next) => scattered(next, 400).map((t) => t.map(([x, y]): Vec3 => [x, y, 12]) as never),
  'all along a line': (next) => scattered(next, 300).map((t) => t.map(([x]): Vec3 => [x, -x, 2 * x]) as never),
  'each many times': (next) => scattered(next, 9).flatMap((t) => Array.from({ length: 40 }, () => t)),
  'points and edges among sound ones': (next) =>
    scattered(next, 300).map(([a, b, c], i) => (i % 3 === 0 ? [a, a, a] : i % 3 === 1 ? [a, b, a] : [a, b, c])),
  'sizes from a micron to a metre': (next) =>
    Array.from({ length: 400 }, (_, i) => {
      const a = randomPoint(next, 100);
      const size = 1e-3 * 10 ** (6 * (i / 400));
      return [a, beside(next, a, size), beside(next, a, size)];
    }),
  'ever nearer to one corner': (next) =>
    Array.from({ length: 300 }, (_, i) => {
      const a: Vec3 = [1000 * 0.8 ** i, 0, 0];
      return [a, beside(next, a, 0.1 * a[0]), beside(next, a, 0.1 * a[0])];
    }),
};

describe.each(Object.keys(meshes))('%s', (kind) => {
  test.each([1, 2, 3])('the nearest place is the brute force’s, seed %i', (seed) => {
    const next = random(seed);
    const triangles = meshes[kind]!(next).map(rounded);
    const soup = soupOf(triangles);
    const before = soup.slice();
    const tree = triangleTree(soup);
    expect(soup).toEqual(before);
    const fields = triangles.map((t) => triangleField(...t));
    const place = new Float64Array(3);
    for (let i = 0; i < 60; i++) {
      const p = i % 4 === 0 ? triangles[i % triangles.length]![i % 3]! : randomPoint(next, 300);
      const slow = Math.min(...fields.map((field) => field(...p)));
      expect(tree.nearest(...p, undefined, place)).toBeCloseTo(slow, 9);
      const at: Vec3 = [place[0]!, place[1]!, place[2]!];
      expect(distance(p, at)).toBeCloseTo(slow, 9);
      expect(Math.min(...fields.map((field) => field(...at)))).toBeLessThan(1e-6);
      if (slow < 1e-6) continue;
      expect(tree.nearest(...p, slow * 1.001)).toBeCloseTo(slow, 9);
      expect(tree.nearest(...p, slow * 0.999)).toBe(Number.POSITIVE_INFINITY);
    }
  });

  test.each([4, 5])('a visit shows exactly the triangles within its limit, seed %i', (seed) => {
    const next = random(seed);
    const triangles = meshes[kind]!(next).map(rounded);
    const tree = triangleTree(soupOf(triangles));
    for (let i = 0; i < 20; i++) {
      const p = randomPoint(next, 250);
      const limit = next.between(1, 300);
      const seen: string[] = [];
      tree.visit(
        p,
        () => limit,
        (a, b, c, field, index, place) => {
          expect(distance(p, [place[0]!, place[1]!, place[2]!])).toBeCloseTo(field(...p), 9);
          expect([...tree.flat.soup.subarray(9 * index, 9 * index + 9)]).toEqual([...a, ...b, ...c]);
          expect(field(...p)).toBe(triangleField(a, b, c)(...p));
          seen.push(key(a, b, c));
        },
      );
      const within = triangles.filter((t) => triangleField(...t)(...p) < limit).map((t) => key(...t));
      expect(seen.sort()).toEqual(within.sort());
    }
  });
});

test.each(Array.from({ length: 12 }, (_, i) => i + 1))(
  'the nearest of a few triangles against patches ever smaller, seed %i',
  (seed) => {
    const next = random(seed);
    const triangles = scattered(next, 5);
    const tree = triangleTree(soupOf(triangles));
    const p = randomPoint(next, 200);
    const slow = leastOver(
      triangles.map((t) => trianglePatch(...t)),
      (q) => distance(p, q),
    );
    const fast = tree.nearest(...p);
    expect(fast).toBeLessThanOrEqual(slow + 1e-9);
    expect(fast).toBeGreaterThan(slow - WITHIN - 1e-9);
  },
);

test('no triangles: nothing is near, and nothing is shown', () => {
  const tree = triangleTree(new Float32Array(0));
  expect(tree.nearest(0, 0, 0)).toBe(Number.POSITIVE_INFINITY);
  tree.visit(
    [0, 0, 0],
    () => Number.POSITIVE_INFINITY,
    () => expect.unreachable(),
  );
});

test('one triangle, asked on it, beside it and too far', () => {
  const tree = triangleTree(
    soupOf([
      [
        [0, 0, 0],
        [10, 0, 0],
        [0, 10, 0],
      ],
    ]),
  );
  const place = new Float64Array([7, 7, 7]);
  expect(tree.nearest(2, 2, 5, 5, place)).toBe(Number.POSITIVE_INFINITY);
  expect([...place]).toEqual([7, 7, 7]);
  expect(tree.nearest(2, 2, 5, 5.1, place)).toBe(5);
  expect([...place]).toEqual([2, 2, 0]);
  expect(tree.nearest(2, 2, 0)).toBe(0);
  expect(tree.nearest(2, 2, 0, 0)).toBe(Number.POSITIVE_INFINITY);
});

test('a visit within a visit, and one after a throw, show what they should', () => {
  const triangles = scattered(random(9), 40);
  const tree = triangleTree(soupOf(triangles));
  const everywhere = () => Number.POSITIVE_INFINITY;
  expect(() =>
    tree.visit([0, 0, 0], everywhere, () => {
      throw new Error('stop');
    }),
  ).toThrow('stop');
  let outer = 0;
  let inner = 0;
  const seen = new Set<string>();
  tree.visit([0, 0, 0], everywhere, (a, b, c, field) => {
    outer++;
    const before = triangleField(a, b, c)(1, 2, 3);
    const own = key(a, b, c);
    tree.visit([50, 0, 0], everywhere, () => inner++);
    expect(key(a, b, c)).toBe(own);
    expect(field(1, 2, 3)).toBe(before);
    seen.add(own);
  });
  expect([outer, inner]).toEqual([40, 1600]);
  expect(seen).toEqual(new Set(triangles.map((t) => key(...t))));
});

test('a limit of −Infinity ends a visit', () => {
  const tree = triangleTree(soupOf(scattered(random(3), 100)));
  let seen = 0;
  tree.visit(
    [0, 0, 0],
    () => (seen < 3 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY),
    () => seen++,
  );
  expect(seen).toBe(3);
});
