/** A merge's body, closed with two flat discs: the shape the rules measure, for drawing; not yet the collector as a part. */
import type { Frustum } from '../header/merge';
import { addScaled, anySquareTo, cross } from '../vector';
import type { Mesh } from './mesh';
import { ringSides } from './sections';
import { DEFAULT_CHORD_ERROR } from './tube';

/** Vertices on the true circles. Both radii and the length must be more than 0. */
export function frustumSolid(body: Frustum, options: { readonly chordError?: number } = {}): Mesh {
  const { position, axis, length, startRadius, endRadius } = body;
  const sides = ringSides(Math.max(startRadius, endRadius), options.chordError ?? DEFAULT_CHORD_ERROR);
  const u = anySquareTo(axis);
  const v = cross(axis, u);
  const end = addScaled(position, axis, length);

  const positions = new Float64Array(3 * (2 * sides + 2));
  const startCentre = 2 * sides;
  const endCentre = startCentre + 1;
  positions.set(position, 3 * startCentre);
  positions.set(end, 3 * endCentre);
  const triangles = new Uint32Array(3 * 4 * sides);
  for (let i = 0; i < sides; i++) {
    const angle = (2 * Math.PI * i) / sides;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    positions.set(addScaled(addScaled(position, u, startRadius * c), v, startRadius * s), 3 * i);
    positions.set(addScaled(addScaled(end, u, endRadius * c), v, endRadius * s), 3 * (sides + i));
    const j = (i + 1) % sides;
    triangles.set(
      [i, j, sides + j, i, sides + j, sides + i, startCentre, j, i, endCentre, sides + i, sides + j],
      12 * i,
    );
  }
  return { positions, triangles };
}
