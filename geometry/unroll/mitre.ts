/**
 * A bend welded up from straight pieces, and the plane cut at each of its joints, unrolled. The cut stands at
 * total / (2 · joints) from square, so that both tubes at a joint show the same ellipse. mm, radians.
 */
import type { WrapCut } from './wrapCut';

export type SegmentedBend = {
  /** Of the saw from square. */
  readonly cutAngle: number;
  /** How far the cut runs ahead on the outside of the bend, and stays behind on the inside, of the centerline. */
  readonly cutback: number;
  /** Along the centerline, the outside and the inside; end pieces are half as long and have one square end. */
  readonly middle: PieceLength;
  readonly end: PieceLength;
};
export type PieceLength = { readonly centerline: number; readonly long: number; readonly short: number };

/** @param radius of the centerline: of the circle that touches every piece in its middle */
export function segmentedBend(outsideDiameter: number, radius: number, total: number, joints: number): SegmentedBend {
  if (!(Number.isInteger(joints) && joints >= 1)) throw new RangeError(`A bend of ${joints} joints cannot be cut`);
  if (!(total > 0 && total / (2 * joints) < Math.PI / 2))
    throw new RangeError(`${joints} joints cannot turn ${total} rad`);
  if (!(radius > outsideDiameter / 2))
    throw new RangeError(`A radius of ${radius} mm leaves no inside to a tube of ${outsideDiameter} mm`);
  const cutAngle = total / (2 * joints);
  const t = Math.tan(cutAngle);
  const half = {
    centerline: radius * t,
    long: (radius + outsideDiameter / 2) * t,
    short: (radius - outsideDiameter / 2) * t,
  };
  return {
    cutAngle,
    cutback: (outsideDiameter / 2) * t,
    middle: { centerline: 2 * half.centerline, long: 2 * half.long, short: 2 * half.short },
    end: half,
  };
}

export type MitreOptions = {
  readonly id: string;
  readonly title: string;
  readonly outsideDiameter: number;
  readonly wall: number;
  /** Of the plane from square to the tube. */
  readonly cutAngle: number;
  readonly measuredOn?: 'outside' | 'bore';
  /** From the square line to the cut where the piece is shortest: room for writing. Default 30. */
  readonly leastHeight?: number;
  readonly notes?: readonly string[];
};

export const DEFAULT_LEAST_HEIGHT = 30;

/** The seam lies on the outside of the bend, where the piece is longest. */
export function mitreCut(options: MitreOptions): WrapCut {
  const { id, title, outsideDiameter, wall, cutAngle } = options;
  const { measuredOn = 'outside', leastHeight = DEFAULT_LEAST_HEIGHT, notes = [] } = options;
  if (!(Math.abs(cutAngle) < Math.PI / 2))
    throw new RangeError(`A plane at ${cutAngle} rad from square never crosses a tube`);
  const reach = (outsideDiameter / 2 - (measuredOn === 'bore' ? wall : 0)) * Math.tan(Math.abs(cutAngle));
  return {
    id,
    title,
    outsideDiameter,
    wall,
    measuredOn,
    height: (angle) => leastHeight + reach * (1 + Math.cos(angle)),
    corners: [],
    heel: 0,
    crotch: Math.PI,
    seam: 'outside of the bend, where the piece is longest',
    notes: [
      `Plane cut, ${degrees(cutAngle)} from square. The square line lies ${(leastHeight + reach).toFixed(2)} mm from where the cut crosses the tube's axis.`,
      ...notes,
    ],
  };
}

const degrees = (angle: number): string => `${Number(((Math.abs(angle) * 180) / Math.PI).toFixed(3))}°`;
