/** The places that a surrounding is given by, whatever its shape: so that all kinds are moved in one way. mm. */
import type { Vec3 } from '../../vec3';
import type { Surrounding } from '../types';

/** A bar's two ends, a box's two corners, the one place of a plane or mesh. */
export function placesOf(s: Surrounding): readonly Vec3[] {
  switch (s.shape) {
    case 'capsule':
    case 'cylinder':
      return [s.a, s.b];
    case 'box':
      return [s.min, s.max];
    case 'plane':
      return [s.position];
    case 'mesh':
      return [s.pose?.position ?? [0, 0, 0]];
  }
}

/** @param places as many as `placesOf` gives */
export function withPlaces(s: Surrounding, places: readonly Vec3[]): Surrounding {
  const [one, two] = places as readonly [Vec3, Vec3];
  switch (s.shape) {
    case 'capsule':
    case 'cylinder':
      return { ...s, a: one, b: two };
    case 'box':
      return { ...s, min: one, max: two };
    case 'plane':
      return { ...s, position: one };
    case 'mesh':
      return { ...s, pose: { ...s.pose, position: one } };
  }
}

export const shiftedSurrounding = (s: Surrounding, by: Vec3): Surrounding =>
  withPlaces(
    s,
    placesOf(s).map((p): Vec3 => [p[0] + by[0], p[1] + by[1], p[2] + by[2]]),
  );

/** Where it is, as one place: for labels and handles. */
export function middleOfSurrounding(s: Surrounding): Vec3 {
  const places = placesOf(s);
  const mean = (k: 0 | 1 | 2): number => places.reduce((sum, p) => sum + p[k], 0) / places.length;
  return [mean(0), mean(1), mean(2)];
}
