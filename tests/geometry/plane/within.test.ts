import { expect, test } from 'vitest';
import { circleLoop, type Loop, loopCentre, sampleLoop } from '../../../geometry';
import { fitCircle } from '../../../geometry/plane/fitCircle';
import { edges } from '../../../geometry/plane/loop';
import { distanceToEdge, isInPolygon } from '../../../geometry/plane/within';
import { random } from '../../random';

test('the middle of a circle is its centre, far from the origin too', () => {
  const [x, y] = loopCentre(circleLoop([5000, -3000], 4.5));
  expect(x).toBeCloseTo(5000, 9);
  expect(y).toBeCloseTo(-3000, 9);
});

test('the middle of half a disc lies 4r/3π from its straight side', () => {
  const half: Loop = [
    [10, 0, 1],
    [-10, 0, 0],
  ];
  const [x, y] = loopCentre(half);
  expect(x).toBeCloseTo(0, 9);
  expect(y).toBeCloseTo(40 / (3 * Math.PI), 9);
});

test('the middle of a loop with arcs both ways is that of its fine polygon', () => {
  const loop: Loop = [
    [0, 0, 0.3],
    [30, 2, -0.4],
    [34, 20, 0],
    [5, 25, 0.9],
  ];
  const points = sampleLoop(loop, 1e-6);
  let [area, sx, sy] = [0, 0, 0];
  for (const [k, [ax, ay]] of points.entries()) {
    const [bx, by] = points[(k + 1) % points.length]!;
    const twice = ax * by - bx * ay;
    area += twice / 2;
    sx += (twice * (ax + bx)) / 6;
    sy += (twice * (ay + by)) / 6;
  }
  const [x, y] = loopCentre(loop);
  expect(x).toBeCloseTo(sx / area, 5);
  expect(y).toBeCloseTo(sy / area, 5);
});

test('distance from an edge agrees with its finest samples, seed 4', () => {
  const chance = random(4);
  for (let k = 0; k < 200; k++) {
    const bulge = k % 3 === 0 ? 0 : 3 * (chance() - 0.5);
    const loop: Loop = [
      [10 * chance(), 10 * chance(), bulge],
      [20 + 10 * chance(), 10 * chance(), 0],
    ];
    const [edge] = edges(loop);
    const point = [40 * chance() - 5, 40 * chance() - 15] as const;
    const samples = Array.from({ length: 20001 }, (_, i): readonly [number, number] => {
      const t = i / 20000;
      if (!edge!.arc)
        return [edge!.from[0] + t * (edge!.to[0] - edge!.from[0]), edge!.from[1] + t * (edge!.to[1] - edge!.from[1])];
      const a = edge!.arc.start + t * edge!.arc.turn;
      return [
        edge!.arc.centre[0] + edge!.arc.radius * Math.cos(a),
        edge!.arc.centre[1] + edge!.arc.radius * Math.sin(a),
      ];
    });
    const least = Math.min(...samples.map(([x, y]) => Math.hypot(x - point[0], y - point[1])));
    expect(distanceToEdge(point, edge!)).toBeCloseTo(least, 2);
  }
});

test('a circle is found again from a noisy tenth of it, seed 8; points on a line have none', () => {
  const chance = random(8);
  const points = Array.from({ length: 400 }, (_, k): readonly [number, number] => {
    const a = (k / 400) * 0.2 * Math.PI;
    const r = 32 + 0.004 * (chance() - 0.5);
    return [100 + r * Math.cos(a), 50 + r * Math.sin(a)];
  });
  const { centre, radius } = fitCircle(points)!;
  expect(radius).toBeCloseTo(32, 1);
  expect(Math.hypot(centre[0] - 100, centre[1] - 50)).toBeLessThan(0.1);
  expect(
    fitCircle([
      [0, 0],
      [1, 1],
      [2, 2],
      [7, 7],
    ]),
  ).toBeNull();
});

test('in a polygon or not', () => {
  const l = [
    [0, 0],
    [10, 0],
    [10, 10],
    [5, 10],
    [5, 5],
    [0, 5],
  ] as const;
  expect([isInPolygon([2, 2], l), isInPolygon([2, 7], l), isInPolygon([7, 7], l), isInPolygon([11, 2], l)]).toEqual([
    true,
    false,
    true,
    false,
  ]);
});
