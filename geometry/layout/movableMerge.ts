/**
 * A merge whose `placement` lets it move: five unknowns, three of position and two of tilt about the axis it was given.
 * It is never turned about its axis: its `up` is projected anew. mm; tilts are tangents of angles.
 */
import type { Merge } from '../../shared/design/types';
import { remembered } from '../../shared/remember';
import type { Vec3 } from '../../shared/vec3';
import { type Frustum, type MergeGeometry, mergeAxes, mergeGeometry, type Pose } from '../header/merge';
import type { ResolvedMerge } from '../header/resolve';
import { RADIANS } from '../tolerance';
import { addScaled, dot, unit } from '../vector';

export type MovableMerge = {
  readonly resolved: ResolvedMerge;
  /** Offset of its five unknowns. */
  readonly at: number;
  /** The axis that tilt is measured from, with two directions square to it. */
  readonly reference: { readonly u: Vec3; readonly v: Vec3; readonly w: Vec3 };
  readonly low: Vec3;
  readonly high: Vec3;
  /** Tangent of the tilt allowed. */
  readonly reach: number;
  merge: Merge;
  geometry: MergeGeometry;
  /** d(inlet or outlet position, direction)/d(tilt): for place k, entries 12k …: position by both tilts, direction by both. */
  slopes: Float64Array;
};

export const MERGE_UNKNOWNS = 5;
/** Step of the central differences over tilt: the formulas are smooth, so the error is near 1e-10. */
export const TILT_STEP = 1e-5;
/** Turns a tilt into the movement of a place this far out, mm: how it counts beside movement. */
export const TILT_LEVER = 150;

/** For a merge that a hand moves though its design grants it no space of its own. */
const ANYWHERE: readonly [Vec3, Vec3] = [
  [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY],
  [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
];

export function movableMerge(resolved: ResolvedMerge, at: number): MovableMerge {
  const { merge } = resolved;
  const [p, q] = merge.placement?.within ?? ANYWHERE;
  const reference = mergeAxes({ axis: merge.placement?.axis ?? merge.axis, up: merge.up });
  return {
    resolved,
    at,
    reference,
    low: [Math.min(p[0], q[0]), Math.min(p[1], q[1]), Math.min(p[2], q[2])],
    high: [Math.max(p[0], q[0]), Math.max(p[1], q[1]), Math.max(p[2], q[2])],
    reach: Math.tan((merge.placement?.tilt ?? 0) * RADIANS),
    merge,
    geometry: resolved,
    slopes: new Float64Array(12 * (merge.inlets + 1)),
  };
}

/** The unknowns of the merge as it stands in the document. */
export function mergeUnknowns({ merge, reference: { u, v, w } }: MovableMerge): readonly number[] {
  const axis = unit(merge.axis);
  const along = dot(axis, w);
  return [...merge.position, dot(axis, u) / along, dot(axis, v) / along];
}

/** Stands the merge where `x` says, with the slopes of its places. */
export function moveMerge(m: MovableMerge, x: Float64Array): void {
  const position: Vec3 = [x[m.at]!, x[m.at + 1]!, x[m.at + 2]!];
  const s = x[m.at + 3]!;
  const t = x[m.at + 4]!;
  const { axis } = m.resolved.merge;
  const unmoved = tiltAsGiven(m);
  // The given axis is kept to the last bit while it is not tilted.
  const tilted = s === unmoved[3] && t === unmoved[4] ? axis : tiltedAxis(m, s, t);
  m.merge = { ...m.resolved.merge, position, axis: tilted };
  m.geometry = geometryOf(m, m.merge);
  for (let k = 0; k < 2; k++) {
    const ds = TILTS[k]![0];
    const dt = TILTS[k]![1];
    const behind = tiltedPlaces(m, s - ds, t - dt);
    const ahead = tiltedPlaces(m, s + ds, t + dt);
    for (let i = 0; i < ahead.length; i++) {
      setSlope(m.slopes, 12 * i + 3 * k, ahead[i]!.position, behind[i]!.position);
      setSlope(m.slopes, 12 * i + 6 + 3 * k, ahead[i]!.direction, behind[i]!.direction);
    }
  }
}

/** The unknowns of a merge that has not moved. */
const tiltAsGiven = remembered((m: MovableMerge) => mergeUnknowns({ ...m, merge: m.resolved.merge }));

const tiltedPlaces = (m: MovableMerge, s: number, t: number): readonly Pose[] =>
  placesOf(geometryOf(m, { ...m.merge, axis: tiltedAxis(m, s, t) }));

function setSlope(slopes: Float64Array, at: number, ahead: Vec3, behind: Vec3): void {
  for (let k = 0; k < 3; k++) slopes[at + k] = (ahead[k]! - behind[k]!) * (1 / (2 * TILT_STEP));
}

/** A step of each tilt in turn. */
export const TILTS = [
  [TILT_STEP, 0],
  [0, TILT_STEP],
] as const;

/** The body as it would stand with other tilts, at the present position. */
export const bodyTilted = (m: MovableMerge, s: number, t: number): Frustum =>
  geometryOf(m, { ...m.merge, axis: tiltedAxis(m, s, t) }).body;

/** Inlets in order, then the outlet. */
const placesOf = (g: MergeGeometry): readonly Pose[] => [...g.inlets, g.outlet];

export const placeOf = (g: MergeGeometry, place: number): Pose => g.inlets[place] ?? g.outlet;

const tiltedAxis = ({ reference: { u, v, w } }: MovableMerge, s: number, t: number): Vec3 =>
  unit(addScaled(addScaled(w, u, s), v, t));

const geometryOf = (m: MovableMerge, merge: Merge): MergeGeometry =>
  mergeGeometry(merge, m.resolved.pitch, m.resolved.inletOutsideDiameter);

/**
 * Adds to `row` the share of a place's adjoint that falls on the merge's unknowns.
 * @param place inlet number from 0, or the number of inlets for the outlet
 */
export function pullPlace(
  m: MovableMerge,
  place: number,
  positionBar: Float64Array,
  directionBar: Float64Array,
  row: Float64Array,
  at: number,
): void {
  const { slopes } = m;
  const own = at + m.at;
  for (let k = 0; k < 3; k++) row[own + k] = row[own + k]! + positionBar[k]!;
  for (let tilt = 0; tilt < 2; tilt++) {
    const first = 12 * place + 3 * tilt;
    let sum = 0;
    for (let k = 0; k < 3; k++) sum += positionBar[k]! * slopes[first + k]! + directionBar[k]! * slopes[first + 6 + k]!;
    row[own + 3 + tilt] = row[own + 3 + tilt]! + sum;
  }
}
