/**
 * The end of a branch coped to sit on a header tube, unrolled. From where the axes cross (or pass), along the branch:
 * t = (√(Rh² − (rb sin φ + e)²) − rb cos φ cos a) / sin a, φ from the obtuse (heel) side, a the angle between the axes, e how
 * far they pass each other. mm, radians. Published tables hold it in the tests.
 */
import { LENGTH_TOLERANCE } from '../tolerance';
import { extremes } from './extremes';
import { DEFAULT_LEAST_HEIGHT } from './mitre';
import type { WrapCut } from './wrapCut';

export type SaddleOptions = {
  readonly id: string;
  readonly title: string;
  readonly outsideDiameter: number;
  readonly wall: number;
  /** Of the tube it sits on: half its outside diameter. */
  readonly headerRadius: number;
  /** Between the axes, in (0, π/2] for the acute one. */
  readonly angle: number;
  /** How far the branch's axis passes the header's, toward a quarter turn past the heel, as `WrapCut` turns. Default 0. */
  readonly offset?: number;
  /**
   * Outside: the outside of the branch touches, as a hole saw leaves it. Bore: the bore does and the cut is carried out
   * square to the axis, as pipe fitters do.
   */
  readonly measuredOn?: 'outside' | 'bore';
  readonly leastHeight?: number;
  readonly notes?: readonly string[];
};

/** From the crossing of the axes to the cut, along the branch. */
export const copeOrdinate = (
  headerRadius: number,
  branchRadius: number,
  angle: number,
  offset: number,
  phi: number,
): number =>
  // A branch as wide as its header grazes it: rounding must not make the root of nothing a root of less.
  (Math.sqrt(Math.max(0, headerRadius ** 2 - (branchRadius * Math.sin(phi) + offset) ** 2)) -
    branchRadius * Math.cos(phi) * Math.cos(angle)) /
  Math.sin(angle);

/** The seam lies in the plane of both axes, on the obtuse side. */
export function saddleCut(options: SaddleOptions): WrapCut {
  const { id, title, outsideDiameter, wall, headerRadius, angle } = options;
  const { offset = 0, measuredOn = 'outside', leastHeight = DEFAULT_LEAST_HEIGHT, notes = [] } = options;
  const radius = outsideDiameter / 2 - (measuredOn === 'bore' ? wall : 0);
  if (radius + Math.abs(offset) > headerRadius + LENGTH_TOLERANCE)
    throw new RangeError(
      `${title}: a branch of ${2 * radius} mm, ${offset} mm off centre, does not sit on a tube of ${2 * headerRadius} mm; make it smaller or bring it to the middle`,
    );
  if (!(angle > 0 && angle <= Math.PI / 2))
    throw new RangeError(`${title}: the angle between the axes must be above 0° and at most 90°`);
  const t = (phi: number): number => copeOrdinate(headerRadius, radius, angle, offset, phi);
  const corners = grazed(radius, offset, headerRadius);
  const { min: least, max: most, highest, lowest } = extremes(t, corners);
  return {
    id,
    title,
    outsideDiameter,
    wall,
    measuredOn,
    height: (phi) => leastHeight + most - t(phi),
    corners,
    heel: lowest[0]!,
    crotch: highest[0]!,
    seam:
      angle === Math.PI / 2 ? 'in the plane of both tubes' : 'in the plane of both tubes, on the obtuse (heel) side',
    notes: [
      `Sits on a tube of ${fixed(2 * headerRadius)} mm at ${fixed((angle * 180) / Math.PI)}°${offset === 0 ? '' : `, axes ${fixed(Math.abs(offset))} mm apart`}. The square line lies ${(leastHeight + most).toFixed(2)} mm from that tube's axis along the branch, the deepest cut ${(most - least).toFixed(2)} mm below the highest.`,
      ...notes,
    ],
  };
}

/** Where the branch's side just touches the header's, the curve has a corner. */
function grazed(radius: number, offset: number, headerRadius: number): number[] {
  const touches = (side: 1 | -1): boolean => radius + side * offset > headerRadius - LENGTH_TOLERANCE;
  return [...(touches(1) ? [Math.PI / 2] : []), ...(touches(-1) ? [(3 * Math.PI) / 2] : [])];
}

const fixed = (value: number): string => String(Number(value.toFixed(3)));
