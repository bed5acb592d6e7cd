/**
 * A stretch of tube made ready for measuring: each segment as a row of points whose chords can be joined in halves,
 * so that a search starts from whole arcs and refines only where something is near. mm.
 *
 * A tube is the union of flat discs of its outside radius square to the centerline, so both ends of a stretch are flat.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Centerline, Segment } from '../curve/centerline';
import { chordCount } from '../curve/pointAt';
import { CHORD_SAGITTA, LENGTH_TOLERANCE } from '../tolerance';
import { scale } from '../vector';
import type { Disc } from './convexMinimum';

export type Link = {
  /** Points 0 … count, three numbers each, and the unit tangents there. */
  readonly points: Float64Array;
  readonly tangents: Float64Array;
  /** A power of two; 1 for a straight. */
  readonly count: number;
  /** 0 for a straight. */
  readonly radius: number;
  /** Angle of one chord, radians. */
  readonly step: number;
  readonly station: number;
  readonly length: number;
  /** Whether this link's first (last) point is the stretch's own end. */
  readonly isFirst: boolean;
  readonly isLast: boolean;
};

export type Chain = {
  /** Half the outside diameter. */
  readonly tubeRadius: number;
  readonly links: readonly Link[];
  /** First and last, their normals pointing out of the tube. */
  readonly ends: readonly [Disc, Disc];
};

/** By their place in `ends`. */
export type WhichEnds = readonly (0 | 1)[];
export const BOTH_ENDS: WhichEnds = [0, 1];

/**
 * @param from, to stations that bound the stretch; the whole centerline by default
 * @returns null where nothing is left between them
 */
export function chain(line: Centerline, tubeRadius: number, from = 0, to = line.length): Chain | null {
  const parts = line.segments
    .map((segment) => clip(segment, from, to))
    .filter((part): part is Part => part !== null && part.length > LENGTH_TOLERANCE);
  if (parts.length === 0) return null;
  const links = parts.map((part, i) => link(part, i === 0, i === parts.length - 1));
  return { tubeRadius, links, ends: [endDisc(links[0]!, 0, tubeRadius), endDisc(links.at(-1)!, -1, tubeRadius)] };
}

/** How far an arc strays from the chord that joins `count` steps of it. */
export const sagitta = (link: Link, count: number): number =>
  link.radius === 0 ? 0 : link.radius * (1 - Math.cos((link.step * count) / 2));

type Part = { readonly segment: Segment; readonly skip: number; readonly length: number };

function clip(segment: Segment, from: number, to: number): Part | null {
  const skip = Math.max(0, from - segment.station);
  const end = Math.min(segment.length, to - segment.station);
  return end > skip ? { segment, skip, length: end - skip } : null;
}

function link({ segment, skip, length }: Part, isFirst: boolean, isLast: boolean): Link {
  const radius = segment.kind === 'arc' ? segment.radius : 0;
  const angle = radius > 0 ? length / radius : 0;
  const count = radius > 0 ? 2 ** Math.ceil(Math.log2(chordCount(radius, angle, CHORD_SAGITTA))) : 1;
  const points = new Float64Array(3 * (count + 1));
  const tangents = new Float64Array(3 * (count + 1));
  for (let k = 0; k <= count; k++) writeStation(segment, skip + (length * k) / count, points, tangents, 3 * k);
  const station = segment.station + skip;
  return { points, tangents, count, radius, step: angle / count, station, length, isFirst, isLast };
}

/** As `pointOnSegment`, straight into the rows: a chain has hundreds, and is made anew for each step of a drag. */
function writeStation(segment: Segment, along: number, points: Float64Array, tangents: Float64Array, at: number): void {
  const { start, direction } = segment;
  if (segment.kind === 'straight') {
    for (let k = 0; k < 3; k++) {
      points[at + k] = start[k]! + along * direction[k]!;
      tangents[at + k] = direction[k]!;
    }
    return;
  }
  const { inward, radius } = segment;
  const c = Math.cos(along / radius);
  const s = Math.sin(along / radius);
  for (let k = 0; k < 3; k++) {
    points[at + k] = start[k]! + radius * (s * direction[k]! + (1 - c) * inward[k]!);
    tangents[at + k] = c * direction[k]! + s * inward[k]!;
  }
}

function endDisc(link: Link, which: 0 | -1, radius: number): Disc {
  const k = which === 0 ? 0 : link.count;
  const tangent = vectorAt(link.tangents, k);
  return { centre: vectorAt(link.points, k), normal: which === 0 ? scale(tangent, -1) : tangent, radius };
}

export const vectorAt = (array: Float64Array, k: number): Vec3 => [array[3 * k]!, array[3 * k + 1]!, array[3 * k + 2]!];
