/** Random bent tubes near the origin, so that pairs of them pass close to each other, end near each other or clash. */
import { type Centerline, centerline, fromBendTable } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import type { Random } from '../../random';

export const LIMIT = 0.05;

export const randomPoint = (next: Random, size: number): Vec3 => [
  next.between(-size, size),
  next.between(-size, size),
  next.between(-size, size),
];

/** None to three bends of a die that the tube can take. */
export function randomLine(next: Random, radius: number, spread = 120): Centerline {
  const die = radius * next.between(2, 4);
  const rows = Array.from({ length: next.whole(0, 3) }, () => ({
    length: next() < 0.3 ? 0 : next.between(5, 80),
    rotation: next.between(-180, 180),
    angle: next.between(10, 150),
    radius: die,
  }));
  const table = { clocking: 0, rows: [...rows, { length: next.between(20, 120), rotation: 0, angle: 0, radius: 0 }] };
  const direction = randomPoint(next, 1);
  const start = { position: randomPoint(next, spread), direction, up: randomPoint(next, 1) };
  const { points, radii } = fromBendTable(start, table);
  return centerline(points, radii);
}

export const straight = (from: Vec3, to: Vec3): Centerline => centerline([from, to], []);
