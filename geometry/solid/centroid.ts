/** The middle of what a closed mesh encloses, by signed tetrahedra from one of its own points. mm. */
import type { Vec3 } from '../../shared/vec3';
import { add, cross, dot, scale, sub } from '../vector';
import type { Mesh } from './mesh';

/** @throws RangeError where it encloses nothing */
export function meshCentroid({ positions, triangles }: Mesh): Vec3 {
  const at = (corner: number): Vec3 => {
    const i = 3 * triangles[corner]!;
    return [positions[i]!, positions[i + 1]!, positions[i + 2]!];
  };
  const from = at(0);
  let volume = 0;
  let moment: Vec3 = [0, 0, 0];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [sub(at(t), from), sub(at(t + 1), from), sub(at(t + 2), from)];
    const v = dot(a, cross(b, c)) / 6;
    volume += v;
    moment = add(moment, scale(add(a, add(b, c)), v / 4));
  }
  if (!(Math.abs(volume) > 0)) throw new RangeError('a mesh that encloses nothing has no middle');
  return add(from, scale(moment, 1 / volume));
}
