/**
 * Merge bodies as rows: against runners that neither enter nor leave, and, where a merge may move, against
 * surroundings and other bodies. mm.
 *
 * A disc of the body is held by its field's slope at the centre: value − radius·|slope across|. The field is convex, so
 * this never promises more room than there is, and it is exact against flat faces.
 */
import type { Vec3 } from '../../shared/vec3';
import { isTree, type Obstacle } from '../check/obstacles';
import { type ConvexShape, frustumShape, slopeOf } from '../clearance/shapes';
import type { TriangleTree } from '../clearance/triangleTree';
import type { Frustum } from '../header/merge';
import { addScaled, norm, reject } from '../vector';
import { addShapeContacts, INSIDE, REACH, SLACK } from './contactRows';
import { nearestToShape, type ShapeContact } from './contacts';
import type { LayoutProblem } from './layoutProblem';
import { placeAt, type SolverLink } from './links';
import { bodyTilted, type MovableMerge, TILT_STEP, TILTS } from './movableMerge';
import type { RowBuilder } from './rowBuilder';

type Body = { readonly id: string; readonly frustum: Frustum; readonly movable: MovableMerge | null };

/** Discs along a body that are tried, and how often the stretch about the least is halved then. */
const SLICES = 8;
const HALVINGS = 4;

export function bodyRows(
  problem: LayoutProblem,
  x: Float64Array,
  obstacles: readonly Obstacle[],
  links: readonly (readonly SolverLink[])[],
  rows: RowBuilder,
): void {
  const movable = new Map(problem.merges.map((m) => [m.resolved.merge.id, m]));
  const bodies = [...problem.header.merges.values()].map((resolved): Body => {
    const m = movable.get(resolved.merge.id) ?? null;
    return { id: resolved.merge.id, frustum: m ? m.geometry.body : resolved.body, movable: m };
  });
  for (const body of bodies) {
    const shape = frustumShape(body.frustum);
    for (const [i, r] of problem.runners.entries()) {
      const touches = r.to.id === body.id || ('merge' in r.resolved.runner.from && r.from.id === body.id);
      if (touches || (r.at < 0 && !body.movable)) continue;
      const contacts: ShapeContact[] = [];
      for (const link of links[i]!) nearestToShape(link, shape, r.resolved.tubeRadius + REACH, contacts);
      const offsets = addShapeContacts(
        r,
        contacts,
        r.resolved.tubeRadius,
        `merge-body|merges/${body.id}|runners/${r.resolved.runner.id}|`,
        rows,
      );
      if (!body.movable) continue;
      for (const [k, offset] of offsets.entries())
        pullBody(body.movable, x, placeAt(contacts[k]!.p), contacts[k]!.normal, rows, offset);
    }
    if (!body.movable) continue;
    for (const { surrounding, shape: other } of obstacles) {
      const key = `merge-body|merges/${body.id}|surroundings/${surrounding.id}|`;
      if (isTree(other)) meshRows(body, other, key, x, rows);
      else bodyToShapeRow(body, other, key, x, rows);
    }
  }
  for (const [i, a] of bodies.entries())
    for (const b of bodies.slice(i + 1)) {
      const [mover, other] = a.movable ? [a, b] : [b, a];
      if (mover.movable)
        bodyToShapeRow(
          mover,
          frustumShape(other.frustum),
          `merge-body|merges/${mover.id}|merges/${other.id}|`,
          x,
          rows,
          other.movable,
        );
    }
}

/** Least of the held values along the body, as one row; with the other body's share where that moves too. */
function bodyToShapeRow(
  body: Body,
  shape: ConvexShape,
  key: string,
  x: Float64Array,
  rows: RowBuilder,
  other: MovableMerge | null = null,
): void {
  const { position, axis, length, startRadius, endRadius } = body.frustum;
  const reach = Math.hypot(length / 2, Math.max(startRadius, endRadius));
  const middle = addScaled(position, axis, length / 2);
  if (shape.signedDistance(...middle) - reach >= REACH) return;
  const least = heldLeast(body.frustum, shape);
  if (least.value >= REACH) return;
  const offset = rows.add(least.value - INSIDE, false, key, SLACK);
  const m = body.movable!;
  const [s, t] = [x[m.at + 3]!, x[m.at + 4]!];
  for (let k = 0; k < 3; k++) rows.array[offset + m.at + k] = rows.array[offset + m.at + k]! + least.slope[k]!;
  for (const [k, [ds, dt]] of TILTS.entries()) {
    const ahead = heldLeast(bodyTilted(m, s + ds, t + dt), shape).value;
    rows.array[offset + m.at + 3 + k] = rows.array[offset + m.at + 3 + k]! + (ahead - least.value) / TILT_STEP;
  }
  if (other)
    for (let k = 0; k < 3; k++)
      rows.array[offset + other.at + k] = rows.array[offset + other.at + k]! - least.slope[k]!;
}

function heldLeast(f: Frustum, shape: ConvexShape): { value: number; slope: Vec3 } {
  let best = { value: Number.POSITIVE_INFINITY, slope: [0, 0, 0] as Vec3 };
  let at = 0;
  const look = (h: number): void => {
    const centre = addScaled(f.position, f.axis, h * f.length);
    const radius = f.startRadius + h * (f.endRadius - f.startRadius);
    const held = heldDisc(centre, f.axis, radius, shape);
    if (held.value >= best.value) return;
    best = held;
    at = h;
  };
  for (let k = 0; k <= SLICES; k++) look(k / SLICES);
  for (let k = 1, step = 0.5 / SLICES; k <= HALVINGS; k++, step /= 2)
    for (const h of [at - step, at + step]) if (h > 0 && h < 1) look(h);
  return best;
}

/** A disc by the field's slope at its centre: never more room than there is. */
export function heldDisc(
  centre: Vec3,
  normal: Vec3,
  radius: number,
  shape: Pick<ConvexShape, 'signedDistance'>,
): { value: number; slope: Vec3 } {
  const slope = slopeOf(shape.signedDistance, ...centre);
  return { value: shape.signedDistance(...centre) - radius * norm(reject(slope, normal)), slope };
}

/** Each near triangle of a mesh is a convex shape of its own. */
function meshRows(body: Body, tree: TriangleTree, key: string, x: Float64Array, rows: RowBuilder): void {
  const { position, axis, length, startRadius, endRadius } = body.frustum;
  const middle = addScaled(position, axis, length / 2);
  const reach = Math.hypot(length / 2, Math.max(startRadius, endRadius)) + REACH;
  tree.visit(
    middle,
    () => reach,
    (a, _b, _c, field, index) =>
      bodyToShapeRow(body, { signedDistance: field, centre: a, reach: 0 }, `${key}${index}`, x, rows),
  );
}

/** A body's field at a fixed place falls as the body moves toward it; tilts by differences. */
function pullBody(m: MovableMerge, x: Float64Array, p: Vec3, normal: Vec3, rows: RowBuilder, offset: number): void {
  for (let k = 0; k < 3; k++) rows.array[offset + m.at + k] = rows.array[offset + m.at + k]! - normal[k]!;
  const [s, t] = [x[m.at + 3]!, x[m.at + 4]!];
  for (const [k, [ds, dt]] of TILTS.entries()) {
    const ahead = frustumShape(bodyTilted(m, s + ds, t + dt)).signedDistance(...p);
    const behind = frustumShape(bodyTilted(m, s - ds, t - dt)).signedDistance(...p);
    rows.array[offset + m.at + 3 + k] = rows.array[offset + m.at + 3 + k]! + (ahead - behind) / (2 * TILT_STEP);
  }
}
