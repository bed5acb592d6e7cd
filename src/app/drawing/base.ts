/**
 * The plane that something is drawn on, and places on it. Where there is a surface under the pointer it is drawn on that;
 * else on the plane through the middle of the ports that faces the view most, of the three main ones. Pure; mm, the design's
 * frame.
 */
import { addScaled, cross, dot, RADIANS, scale, sub, unit } from '../../../geometry';
import type { NewShape } from '../../../shared/design/edit';
import type { Display } from '../../../shared/design/types';
import { MM_PER_INCH } from '../../../shared/units';
import type { Vec3 } from '../../../shared/vec3';
import type { Sight } from '../shape/pointer';

/** What lies under the pointer; `normal` is a unit vector on either side. */
export type Surface = { readonly at: Vec3; readonly normal: Vec3 };

export type Base = {
  readonly origin: Vec3;
  /** Unit vectors; the normal is on the side of the eye. */
  readonly normal: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  /** The main axis that the normal lies along; null: it leans. */
  readonly axis: 0 | 1 | 2 | null;
  /** Places are rounded to this. */
  readonly step: number;
};

/** Seen flatter than this, a plane's places run away under the pointer: another one is taken. */
const FLATTEST = Math.sin(12 * RADIANS);
/** A surface that leans less than this from a main plane is drawn on as if it lay in one. */
const NEARLY = Math.cos(8 * RADIANS);
/** Nothing of a header is farther from what is drawn; past it the pointer is close to the plane's horizon. */
const FARTHEST = 10_000;

/** Round steps, and the least that one must be on the picture, px: from far off the steps are greater. */
const STEPS: Readonly<Record<Display, readonly number[]>> = {
  mm: [1, 5, 10, 50, 100],
  in: [1 / 16, 1 / 4, 1 / 2, 2, 4].map((inches) => inches * MM_PER_INCH),
};
const LEAST_STEP_PX = 4;

export function stepFor(display: Display, mmPerPx: number): number {
  const steps = STEPS[display];
  return steps.find((step) => step >= LEAST_STEP_PX * mmPerPx) ?? steps.at(-1)!;
}

const AXES: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** The main axis that runs most nearly along a direction. */
export function mainAxis(way: Vec3): 0 | 1 | 2 {
  const [x, y, z] = way.map(Math.abs) as [number, number, number];
  return z >= x && z >= y ? 2 : y >= x ? 1 : 0;
}

/** @param ports their middle */
export function baseAt(shape: NewShape, sight: Sight, surface: Surface | null, ports: Vec3, display: Display): Base {
  const step = stepFor(display, sight.mmPerPx);
  if (!surface) {
    const axis = mainAxis(sight.back);
    return mainBase(axis, rounded(ports, step, axis), sight, step);
  }
  const { at, normal } = surface;
  const axis = mainAxis(normal);
  // A box has its faces square to the axes, so that it can only stand on a main plane.
  const isMain = shape === 'box' || Math.abs(normal[axis]) > NEARLY;
  const toEye = dot(normal, sight.way) > 0 ? scale(normal, -1) : normal;
  const seen = Math.abs(isMain ? sight.way[axis] : dot(toEye, sight.way));
  if (seen < FLATTEST) return mainBase(mainAxis(sight.back), at, sight, step);
  if (isMain) return mainBase(axis, at, sight, step);
  // One side level, as a rule reads it.
  const u = unit(cross(Math.abs(toEye[2]) > NEARLY ? AXES[1] : AXES[2], toEye));
  return { origin: at, normal: toEye, u, v: cross(toEye, u), axis: null, step };
}

function mainBase(axis: 0 | 1 | 2, origin: Vec3, sight: Sight, step: number): Base {
  const [u, v] = [AXES[(axis + 1) % 3]!, AXES[(axis + 2) % 3]!];
  const side = sight.way[axis] > 0 ? -1 : 1;
  const normal = AXES[axis].map((x) => (x === 0 ? 0 : side)) as unknown as Vec3;
  return { origin, normal, u, v, axis, step };
}

/** Rounded to whole steps, all but one coordinate or that one alone. */
function rounded(at: Vec3, step: number, only: 0 | 1 | 2): Vec3 {
  return at.map((x, i) => (i === only ? Math.round(x / step) * step : x)) as unknown as Vec3;
}

/** Where the line of sight meets the base; null where it does not, or too far off. */
export function onBase({ origin, normal }: Base, { from, way }: Sight): Vec3 | null {
  const slope = dot(way, normal);
  if (Math.abs(slope) < 1e-6) return null;
  const along = dot(sub(origin, from), normal) / slope;
  const at = addScaled(from, way, along);
  const isNear = [0, 1, 2].every((i) => Math.abs(at[i]! - origin[i]!) < FARTHEST);
  return along > 0 && isNear ? at : null;
}

/**
 * On a main plane places have round coordinates; on one that leans they are a round way from the first, which is where the
 * surface was touched.
 * @param first null for the first itself @param free as the hand has it
 */
export function roundOn(base: Base, at: Vec3, first: Vec3 | null, free: boolean): Vec3 {
  const { axis, step } = base;
  if (axis !== null) {
    if (free) return tidy(at);
    return tidy(at.map((x, i) => (i === axis ? base.origin[axis] : roundTo(x, step))) as unknown as Vec3);
  }
  if (free || !first) return tidy(at);
  const off = sub(at, first);
  const [u, v] = [roundTo(dot(off, base.u), step), roundTo(dot(off, base.v), step)];
  return tidy(addScaled(addScaled(first, base.u, u), base.v, v));
}

export const roundTo = (x: number, step: number): number => Math.round(x / step) * step;

/** Without the crumbs of arithmetic: a tenth of a micrometre is nothing, and reads as nothing. */
export const tidyLength = (x: number): number => Number(x.toFixed(4)) + 0;
export const tidy = (at: Vec3): Vec3 => at.map(tidyLength) as unknown as Vec3;
