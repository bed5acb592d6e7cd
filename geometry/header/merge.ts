/**
 * Where a merge's inlets lie and the body it fills, by the contract's formulas. mm; unit vectors; design frame.
 */
import type { Merge } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { RADIANS } from '../tolerance';
import { addScaled, cross, distance, norm, reject, scale, sub, unit } from '../vector';

/** Position and direction of travel, with an up square to it. */
export type Pose = { readonly position: Vec3; readonly direction: Vec3; readonly up: Vec3 };

/** A truncated cone with flat ends: `startRadius` at `position`, `endRadius` at `length` along `axis`. */
export type Frustum = {
  readonly position: Vec3;
  readonly axis: Vec3;
  readonly length: number;
  readonly startRadius: number;
  readonly endRadius: number;
};

export type MergeGeometry = {
  /** Inlet k (counted from 1 in the document) is entry k − 1. */
  readonly inlets: readonly Pose[];
  readonly outlet: Pose;
  readonly body: Frustum;
};

/** w along the flow, u the up projected square to it, v = w × u. */
export function mergeAxes(merge: Pick<Merge, 'axis' | 'up'>): { u: Vec3; v: Vec3; w: Vec3 } {
  const w = unit(merge.axis);
  const u = unit(reject(merge.up, w));
  return { u, v: cross(w, u), w };
}

/**
 * @param pitch centre distance of neighbouring inlets
 * @param inletOutsideDiameter the largest tube that enters
 */
export function mergeGeometry(merge: Merge, pitch: number, inletOutsideDiameter: number): MergeGeometry {
  const { u, v, w } = mergeAxes(merge);
  const inlets = Array.from({ length: merge.inlets }, (_, i): Pose => {
    const position = inletPosition(merge, pitch, i, u, v);
    return { position, direction: lean(position, merge.position, w, merge.convergence ?? 0), up: u };
  });
  const reach = Math.max(0, ...inlets.map((p) => distance(p.position, merge.position)));
  return {
    inlets,
    outlet: { position: addScaled(merge.position, w, merge.length), direction: w, up: u },
    body: {
      position: merge.position,
      axis: w,
      length: merge.length,
      startRadius: reach + inletOutsideDiameter / 2,
      endRadius: merge.outletDiameter / 2,
    },
  };
}

function inletPosition(merge: Merge, pitch: number, i: number, u: Vec3, v: Vec3): Vec3 {
  const n = merge.inlets;
  if (n === 1) return merge.position;
  if (merge.pattern === 'line') return addScaled(merge.position, v, (i - (n - 1) / 2) * pitch);
  const radius = pitch / (2 * Math.sin(Math.PI / n));
  const angle = (2 * Math.PI * i + Math.PI) / n;
  const onCircle = addScaled(scale(v, Math.cos(angle)), u, Math.sin(angle));
  return addScaled(merge.position, onCircle, radius);
}

function lean(inlet: Vec3, centre: Vec3, w: Vec3, convergence: number): Vec3 {
  const outward = sub(inlet, centre);
  if (convergence === 0 || norm(outward) === 0) return w;
  const c = convergence * RADIANS;
  return unit(addScaled(scale(w, Math.cos(c)), unit(outward), -Math.sin(c)));
}
