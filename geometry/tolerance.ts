/**
 * One length tolerance, everything else derived from it or fixed by the contract. No bare 1e-6 elsewhere.
 */

/** Two lengths nearer than this are the same length, mm: far below any tool, far above rounding at header scale. */
export const LENGTH_TOLERANCE = 1e-6;

/** A direction error that moves the end of a metre of tube by the length tolerance, radians. */
export const ANGLE_TOLERANCE = LENGTH_TOLERANCE / 1000;

/** Contract: how near a runner's end must be to its port or inlet, mm. */
export const END_POSITION_TOLERANCE = 0.01;

/** Contract: how true a runner's end direction must be, degrees. */
export const END_DIRECTION_TOLERANCE_DEG = 0.01;

/** Contract: slack on the least straights, and the longest "no straight between", mm. */
export const STRAIGHT_TOLERANCE = 0.01;

/** Contract: a point that turns less than this is dropped, degrees. */
export const LEAST_TURN_DEG = 0.01;

/** Contract: two neighbouring bends are one where their planes agree to this, degrees. */
export const SAME_PLANE_TOLERANCE_DEG = 0.05;

/** Contract: radii nearer than this are the same die, mm. */
export const SAME_RADIUS_TOLERANCE = 1e-6;

/** Contract: bundled tubes may overlap by this, mm. */
export const BUNDLE_OVERLAP = 0.05;

/** Contract: parts of one runner farther apart along it than this many outside diameters must not touch. */
export const SELF_SEPARATION = 1.5;

/** How finely distances replace an arc by chords: the sagitta allowed, mm. Clearances are promised within 0.05 mm. */
export const CHORD_SAGITTA = 0.002;

/** Mesh vertices nearer than this are one, mm: well above the rounding of a single-precision file at header scale. */
export const LEAST_MESH_STEP = LENGTH_TOLERANCE * 1000;

export const RADIANS = Math.PI / 180;
export const DEGREES = 180 / Math.PI;
