/** Random tubes that a shop could bend: any angles and planes, a straight of none to some between. */
import { type Centerline, centerline, fromBendTable, type TubeShape } from '../../../geometry';
import type { Random } from '../../random';

export function randomLine(next: Random): { line: Centerline; shape: TubeShape } {
  const outsideDiameter = next.between(25, 76);
  const shape = { outsideDiameter, wall: next.between(1, 3), chordError: next.between(0.02, 0.3) };
  const rows = Array.from({ length: next.whole(0, 5) }, (_, i) => ({
    length: next() < 0.2 ? 0 : next.between(0.5, 150),
    rotation: i === 0 ? 0 : next.between(-180, 180),
    angle: next.between(0.5, 175),
    radius: outsideDiameter * next.between(0.8, 3),
  }));
  const table = {
    clocking: next.between(-180, 180),
    rows: [...rows, { length: next.between(10, 100), rotation: 0, angle: 0, radius: 0 }],
  };
  const place = () => next.between(-600, 600);
  const start = {
    position: [place(), place(), place()] as const,
    direction: [next.between(-1, 1), 1, next.between(-1, 1)] as const,
    up: [0, 0, 1] as const,
  };
  const { points, radii } = fromBendTable(start, table);
  return { line: centerline(points, radii), shape };
}
