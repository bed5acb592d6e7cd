/**
 * Whether a tube stands between the eye and a place: asked for every label at every step of a drag. Tubes are balls on
 * their axes, as wide as the tube and strung about that far apart; a ball round the whole runner clears most at once.
 * Flat arrays, kept with the runner they are of. mm, in the design's frame.
 */
import { type Header, pointAt, type ResolvedRunner, scale, sub } from '../../../../geometry';
import { remembered } from '../../../../shared/remember';
import type { Vec3 } from '../../../../shared/vec3';
import { eyeAxes, eyePosition, type View } from '../camera/view';
import { middleOf } from './content';

/** The balls of one runner: three numbers each, all of one radius, and a ball round them all. */
export type Cover = {
  readonly id: string;
  readonly centres: Float64Array;
  readonly radius: number;
  readonly around: { readonly at: Vec3; readonly radius: number };
};

const coverOf = remembered(({ runner, centerline, tubeRadius }: ResolvedRunner): Cover | null => {
  if (!centerline) return null;
  const count = Math.ceil(centerline.length / tubeRadius);
  const at = Array.from({ length: count + 1 }, (_, i) => pointAt(centerline, (centerline.length * i) / count).position);
  const around = middleOf(at.map((p) => ({ at: p, radius: tubeRadius })));
  return { id: runner.id, centres: Float64Array.from(at.flat()), radius: tubeRadius, around };
});

export const coversOf = (header: Header): Cover[] => header.runners.map(coverOf).filter((cover) => cover !== null);

/** Whether another runner's tube stands between the eye and `at`, a place on runner `id`. */
export function isCovered([x, y, z]: Vec3, id: string, covers: readonly Cover[], view: View): boolean {
  const sight = view.parallel ? scale(eyeAxes(view).back, -1) : sub([x, y, z], eyePosition(view));
  const length = Math.hypot(...sight) || 1;
  const [wx, wy, wz] = scale(sight, 1 / length);
  const farthest = view.parallel ? Number.POSITIVE_INFINITY : length;
  for (const { id: other, centres, radius, around } of covers) {
    if (other === id) continue;
    const [ox, oy, oz] = [around.at[0] - x, around.at[1] - y, around.at[2] - z];
    const along = ox * wx + oy * wy + oz * wz;
    if (ox * ox + oy * oy + oz * oz - along * along > around.radius * around.radius) continue;
    for (let i = 0; i < centres.length; i += 3) {
      const [dx, dy, dz] = [centres[i]! - x, centres[i + 1]! - y, centres[i + 2]! - z];
      const nearer = -(dx * wx + dy * wy + dz * wz);
      if (nearer < radius || nearer > farthest) continue;
      if (dx * dx + dy * dy + dz * dz - nearer * nearer < radius * radius) return true;
    }
  }
  return false;
}
