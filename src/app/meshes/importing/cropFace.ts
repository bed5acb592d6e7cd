/**
 * Pulling a face of the crop in the picture: how far along its axis the pointer has it, and the crop that comes of it. Pure.
 * Places in the file's frame, in any one unit; px.
 */
import { addScaled, withAxis } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Corners } from '../facts';

export type Px = readonly [x: number, y: number];
export type See = (place: Vec3) => Px;

/** A face of the crop: the least or the greatest one along an axis. */
export type Face = { readonly corner: 0 | 1; readonly axis: 0 | 1 | 2 };

export const FACES: readonly Face[] = ([0, 1, 2] as const).flatMap((axis) =>
  ([0, 1] as const).map((corner): Face => ({ corner, axis })),
);

export const middleOfFace = (crop: Corners, { corner, axis }: Face): Vec3 =>
  withAxis(crop[0].map((x, i) => (x + crop[1][i]!) / 2) as unknown as Vec3, axis, crop[corner][axis]);

const wayOf = (axis: 0 | 1 | 2): Vec3 => withAxis([0, 0, 0], axis, 1);
const longest = ([a, b]: Corners): number => Math.max(...a.map((x, i) => Math.abs(b[i]! - x)), 1e-9);

/** How many px one unit along the face's axis is there, and which way it goes on the picture. */
export function slope(see: See, crop: Corners, face: Face): { readonly way: Px; readonly size: number } {
  const h = longest(crop) * 1e-3;
  const at = middleOfFace(crop, face);
  const [p, q] = [see(at), see(addScaled(at, wayOf(face.axis), h))];
  const way: Px = [(q[0] - p[0]) / h, (q[1] - p[1]) / h];
  return { way, size: Math.hypot(...way) };
}

/** Where the face is when its middle is as near to the pointer as its axis lets it be. */
export function faceAt(see: See, crop: Corners, face: Face, pointer: Px): number {
  let now = crop;
  // A few steps: in perspective a unit farther off is fewer px.
  for (let k = 0; k < 6; k++) {
    const { way, size } = slope(see, now, face);
    if (size === 0) break;
    const [x, y] = see(middleOfFace(now, face));
    const by = ((pointer[0] - x) * way[0] + (pointer[1] - y) * way[1]) / (size * size);
    const most = longest(crop);
    now = moved(now, face, now[face.corner][face.axis] + Math.max(-most, Math.min(most, by)));
  }
  return now[face.corner][face.axis];
}

const moved = (crop: Corners, { corner, axis }: Face, to: number): Corners => {
  const at = withAxis(crop[corner], axis, to);
  return corner === 0 ? [at, crop[1]] : [crop[0], at];
};

/** The crop with a face at a round place, at least a step from the other. */
export function withFace(crop: Corners, face: Face, to: number, step: number): Corners {
  const round = Number((Math.round(to / step) * step).toFixed(4)) + 0;
  const other = crop[1 - face.corner]![face.axis];
  return moved(crop, face, face.corner === 0 ? Math.min(round, other - step) : Math.max(round, other + step));
}
