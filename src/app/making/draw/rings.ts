/** Rings round a tube, where pieces are welded to each other: segments as pairs of points, standing a little proud. mm */
import { add, anySquareTo, cross, scale, unit } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';

const AROUND = 40;
/** So that the wall never swallows them. */
const PROUD = 0.6;

export function ring(position: Vec3, direction: Vec3, radius: number): number[] {
  const along = unit(direction);
  const a = unit(anySquareTo(along));
  const b = cross(along, a);
  const at = (i: number): Vec3 => {
    const angle = (2 * Math.PI * i) / AROUND;
    const r = radius + PROUD;
    return add(position, add(scale(a, r * Math.cos(angle)), scale(b, r * Math.sin(angle))));
  };
  return Array.from({ length: AROUND }, (_, i) => [...at(i), ...at(i + 1)]).flat();
}
