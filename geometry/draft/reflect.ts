/**
 * Parts of a header seen in a plane. Handedness turns over, so a merge's inlets are numbered the other way round for each
 * to stay where its mirror image is: with `up` turned to the other side, inlet k of a ring of N is N + 1 − k, and a line
 * keeps its numbers. mm, design frame.
 */
import type { Flange, Merge, Placement, Port, Surrounding } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { moveLoop } from '../plane/rigid';
import { addScaled, dot, scale, sub, unit } from '../vector';

export type Plane = { readonly point: Vec3; readonly normal: Vec3 };

export type Reflection = {
  point(p: Vec3): Vec3;
  vector(v: Vec3): Vec3;
  /** The plane's normal lies along an axis of the design: boxes stay boxes. */
  readonly square: boolean;
};

/** @param plane its normal has a direction, of any length */
export function reflection(plane: Plane): Reflection {
  const n = unit(plane.normal);
  // −0 would be written as such.
  const tidy = (v: Vec3): Vec3 => [v[0] + 0, v[1] + 0, v[2] + 0];
  return {
    point: (p) => tidy(addScaled(p, n, -2 * dot(sub(p, plane.point), n))),
    vector: (v) => tidy(addScaled(v, n, -2 * dot(v, n))),
    square: n.filter((x) => x !== 0).length === 1,
  };
}

export const reflectedInlet = (merge: Pick<Merge, 'pattern' | 'inlets'>, inlet: number): number =>
  merge.pattern === 'line' ? inlet : merge.inlets + 1 - inlet;

export const reflectedPort = (port: Port, r: Reflection): Port => ({
  ...port,
  position: r.point(port.position),
  direction: r.vector(port.direction),
  up: r.vector(port.up),
});

export const reflectedMerge = (merge: Merge, r: Reflection): Merge => ({
  ...merge,
  position: r.point(merge.position),
  axis: r.vector(merge.axis),
  up: scale(r.vector(merge.up), -1),
  ...(merge.placement ? { placement: reflectedPlacement(merge.placement, r) } : {}),
});

/** In a slanting plane the box's image is no box along the axes: the box around it then. */
function reflectedPlacement({ within: [p, q], ...placement }: Placement, r: Reflection): Placement {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((k): Vec3 => {
    const pick = (axis: 0 | 1 | 2): number => ((k >> axis) & 1 ? q : p)[axis];
    return r.point([pick(0), pick(1), pick(2)]);
  });
  const bound = (pick: (...xs: number[]) => number): Vec3 => [
    pick(...corners.map((c) => c[0])),
    pick(...corners.map((c) => c[1])),
    pick(...corners.map((c) => c[2])),
  ];
  return {
    ...placement,
    within: [bound(Math.min), bound(Math.max)],
    ...(placement.axis ? { axis: r.vector(placement.axis) } : {}),
  };
}

export const reflectedFlange = (flange: Flange, r: Reflection): Flange => ({
  ...flange,
  ...(flange.fasteners ? { fasteners: flange.fasteners.map((f) => ({ ...f, position: r.point(f.position) })) } : {}),
  // Across is up × direction, which turns over with them: the outline, drawn in it, is seen from its other side.
  ...(flange.outline ? { outline: moveLoop(flange.outline, TURNED_OVER) } : {}),
});

const TURNED_OVER = { mirrored: true, turn: 0, shift: [0, 0] } as const;

/** Null where it has no mirror image in the document's terms: a mesh, or a box in a slanting plane. */
export function reflectedSurrounding(s: Surrounding, r: Reflection): Surrounding | null {
  if (s.shape === 'capsule' || s.shape === 'cylinder') return { ...s, a: r.point(s.a), b: r.point(s.b) };
  if (s.shape === 'plane') return { ...s, position: r.point(s.position), normal: r.vector(s.normal) };
  if (s.shape === 'mesh' || !r.square) return null;
  const [a, b] = [r.point(s.min), r.point(s.max)];
  const bound = (pick: (x: number, y: number) => number): Vec3 => [
    pick(a[0], b[0]),
    pick(a[1], b[1]),
    pick(a[2], b[2]),
  ];
  return { ...s, min: bound(Math.min), max: bound(Math.max) };
}
