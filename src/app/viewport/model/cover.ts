/**
 * Whether a tube stands between the eye and a place: asked for every label at every step of a drag. Tubes are balls on
 * their axes, as wide as the tube and strung about that far apart; a ball round the whole runner clears most at once.
 * Flat arrays, kept with the runner they are of. mm, in the design's frame.
 */
import { dot, type Header, norm, pointAt, type ResolvedRunner, scale, sub } from '../../../../geometry';
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
export function isCovered(at: Vec3, id: string, covers: readonly Cover[], view: View): boolean {
  const sight = view.parallel ? scale(eyeAxes(view).back, -1) : sub(at, eyePosition(view));
  const length = norm(sight) || 1;
  const way = scale(sight, 1 / length);
  const farthest = view.parallel ? Number.POSITIVE_INFINITY : length;
  return covers.some((cover) => cover.id !== id && standsBefore(cover, at, way, farthest));
}

/** @param way unit vector from the eye to `at` @param farthest how far before `at` still lies before the eye */
function standsBefore({ centres, radius, around }: Cover, at: Vec3, way: Vec3, farthest: number): boolean {
  const off = sub(around.at, at);
  const along = dot(off, way);
  if (dot(off, off) - along * along > around.radius * around.radius) return false;
  // Plain numbers and no vectors: some ten thousand balls are asked about at each step.
  const x = at[0];
  const y = at[1];
  const z = at[2];
  const wx = way[0];
  const wy = way[1];
  const wz = way[2];
  for (let i = 0; i < centres.length; i += 3) {
    const dx = centres[i]! - x;
    const dy = centres[i + 1]! - y;
    const dz = centres[i + 2]! - z;
    const nearer = -(dx * wx + dy * wy + dz * wz);
    if (nearer < radius || nearer > farthest) continue;
    if (dx * dx + dy * dy + dz * dz - nearer * nearer < radius * radius) return true;
  }
  return false;
}
