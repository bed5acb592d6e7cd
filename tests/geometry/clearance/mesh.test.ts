import { describe, expect, test } from 'vitest';
import type { Centerline } from '../../../geometry';
import { chain } from '../../../geometry/clearance/chain';
import { triangleField } from '../../../geometry/clearance/triangle';
import { triangleTree } from '../../../geometry/clearance/triangleTree';
import { tubeToMesh } from '../../../geometry/clearance/tubeMesh';
import { distance } from '../../../geometry/vector';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { leastOver, toTube, trianglePatch } from './bruteForce';
import { LIMIT, randomLine, randomPoint, straight } from './lines';

type Triangle = readonly [Vec3, Vec3, Vec3];
const gapOf = (line: Centerline, radius: number, triangles: readonly Triangle[], below?: number) =>
  tubeToMesh(chain(line, radius)!, triangleTree(Float32Array.from(triangles.flat(2))), below);

describe('a bent tube and a few triangles against brute force', () => {
  test.each(Array.from({ length: 30 }, (_, i) => i + 1))('seed %i', (seed) => {
    const next = random(seed);
    const radius = next.between(12, 32);
    const line = randomLine(next, radius, 90);
    const triangles = Array.from({ length: next.whole(1, 6) }, (): Triangle => {
      const a = randomPoint(next, 130);
      const corner = (): Vec3 => [
        a[0] + next.between(-50, 50),
        a[1] + next.between(-50, 50),
        a[2] + next.between(-50, 50),
      ];
      return [a, corner(), corner()];
    });
    const slow = leastOver(
      triangles.map((t) => trianglePatch(...t)),
      toTube(line, radius),
    );
    const fast = gapOf(line, radius, triangles)!.gap;
    if (slow > LIMIT) expect(Math.abs(fast - slow)).toBeLessThan(LIMIT);
    else if (slow < -LIMIT) expect(fast).toBeLessThan(0);
  });
});

describe('a wall along a straight tube', () => {
  const rod = straight([0, 0, 0], [100, 0, 0]);
  /** Two triangles, y constant. */
  const wall = (y: number, from = -50, to = 150): Triangle[] => [
    [
      [from, y, -80],
      [to, y, -80],
      [to, y, 80],
    ],
    [
      [from, y, -80],
      [to, y, 80],
      [from, y, 80],
    ],
  ];
  test.each([
    ['clear of it', 27, 7],
    ['cutting into it all along', 15, -5],
    ['cutting into it, close to the surface', 19.7, -0.3],
    ['through the axis', 0, -20],
  ])('%s', (_, y, gap) => {
    expect(gapOf(rod, 20, wall(y))!.gap).toBeCloseTo(gap, 2);
  });
  test('past the tube’s end is measured to the flat end', () => {
    const square = wall(0).map((t) => t.map(([x, , z]): Vec3 => [112, x - 50, z]) as unknown as Triangle);
    expect(gapOf(rod, 20, square)!.gap).toBeCloseTo(12, 3);
  });
  test('that reaches in through the flat end only is a clash', () => {
    expect(gapOf(rod, 20, wall(15, 98, 150))!.gap).toBeLessThan(-1);
    const tip: Triangle = [
      [96, 12, 0],
      [140, 30, 5],
      [140, 32, -5],
    ];
    expect(gapOf(rod, 20, [tip])!.gap).toBeLessThan(-1);
  });
  test('lying against the flat end is none', () => {
    const face = wall(0).map((t) => t.map(([x, , z]): Vec3 => [100, x - 50, z]) as unknown as Triangle);
    expect(gapOf(rod, 20, face)!.gap).toBeCloseTo(0, 3);
  });
});

describe('triangles without area', () => {
  const [a, b]: [Vec3, Vec3] = [
    [0, 30, -40],
    [10, 50, 60],
  ];
  const between = (t: number): Vec3 => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
  const toEdge = (p: Vec3): number =>
    Math.min(...Array.from({ length: 2001 }, (_, i) => distance(p, between(i / 2000))));
  test.each<[string, Triangle]>([
    ['two corners in one, first', [a, a, b]],
    ['two corners in one, last', [a, b, b]],
    ['first and last in one', [a, b, a]],
    ['a corner on the edge', [a, between(0.3), b]],
    ['a corner on the edge, last', [a, b, between(0.7)]],
    ['a sliver', [a, b, [between(0.4)[0] + 1e-6, between(0.4)[1], between(0.4)[2]]]],
  ])('%s: the distance of the edge that is left', (_, t) => {
    const next = random(7);
    const field = triangleField(...t);
    for (let i = 0; i < 60; i++) {
      const p = randomPoint(next, 80);
      expect(field(...p)).toBeCloseTo(toEdge(p), 2);
    }
  });
  test('three corners in one: a point', () => {
    expect(triangleField(a, a, a)(...b)).toBeCloseTo(distance(a, b), 9);
  });
  test('spoil nothing in a mesh that holds them', () => {
    const line = straight([0, 0, 0], [100, 0, 0]);
    const sound: Triangle = [
      [-50, 27, -80],
      [150, 27, -80],
      [50, 27, 80],
    ];
    const empty: Triangle = [sound[0], sound[0], sound[1]];
    expect(gapOf(line, 20, [empty, sound, empty])!.gap).toBeCloseTo(7, 3);
  });
});
