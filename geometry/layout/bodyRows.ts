/**
 * Merge bodies as rows: against runners that neither enter nor leave, and, where a merge may move, against
 * surroundings and other bodies. mm.
 *
 * A disc of the body is held by its field's slope at the centre: value − radius·|slope across|. The field is convex, so
 * this never promises more room than there is, and it is exact against flat faces.
 */
import type { Vec3 } from '../../shared/vec3';
import { type ConvexShape, frustumShape } from '../clearance/shapes';
import { triangleField } from '../clearance/triangleTree';
import type { Frustum } from '../header/merge';
import { addScaled, norm, reject } from '../vector';
import { addShapeContacts, INSIDE, REACH, SLACK, type SolverObstacle } from './contactRows';
import { nearestToShape, type ShapeContact } from './contacts';
import type { LayoutProblem } from './layoutProblem';
import type { SolverLink } from './links';
import { bodyTilted, type MovableMerge } from './movableMerge';
import type { RowBuilder } from './rowBuilder';

type Body = { readonly id: string; readonly frustum: Frustum; readonly movable: MovableMerge | null };

const TILT_STEP = 1e-5;
/** Discs along a body that are tried. */
const SLICES = 8;
const PROBE = 1e-4;

export function bodyRows(
  problem: LayoutProblem,
  x: Float64Array,
  obstacles: readonly SolverObstacle[],
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
        pullBody(body.movable, x, placeOf(contacts[k]!), contacts[k]!.normal, rows, offset);
    }
    if (!body.movable) continue;
    for (const o of obstacles) {
      if ('visit' in o.shape)
        meshRows(body, o.shape, `merge-body|merges/${body.id}|surroundings/${o.surrounding.id}|`, x, rows);
      else bodyToShapeRow(body, o.shape, `merge-body|merges/${body.id}|surroundings/${o.surrounding.id}|`, x, rows);
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
  for (let k = 0; k < 2; k++) {
    const ahead = heldLeast(bodyTilted(m, s + (k === 0 ? TILT_STEP : 0), t + (k === 1 ? TILT_STEP : 0)), shape).value;
    rows.array[offset + m.at + 3 + k] = rows.array[offset + m.at + 3 + k]! + (ahead - least.value) / TILT_STEP;
  }
  if (other)
    for (let k = 0; k < 3; k++)
      rows.array[offset + other.at + k] = rows.array[offset + other.at + k]! - least.slope[k]!;
}

function heldLeast(f: Frustum, shape: ConvexShape): { value: number; slope: Vec3 } {
  let best = { value: Number.POSITIVE_INFINITY, slope: [0, 0, 0] as Vec3 };
  for (let k = 0; k <= SLICES; k++) {
    const h = k / SLICES;
    const centre = addScaled(f.position, f.axis, h * f.length);
    const slope = slopeOf(shape, centre);
    const radius = f.startRadius + h * (f.endRadius - f.startRadius);
    const value = shape.signedDistance(...centre) - radius * norm(reject(slope, f.axis));
    if (value < best.value) best = { value, slope };
  }
  return best;
}

function slopeOf({ signedDistance: f }: ConvexShape, [x, y, z]: Vec3): Vec3 {
  const h = 2 * PROBE;
  return [
    (f(x + PROBE, y, z) - f(x - PROBE, y, z)) / h,
    (f(x, y + PROBE, z) - f(x, y - PROBE, z)) / h,
    (f(x, y, z + PROBE) - f(x, y, z - PROBE)) / h,
  ];
}

/** Each near triangle of a mesh is a convex shape of its own. */
function meshRows(
  body: Body,
  tree: Extract<SolverObstacle['shape'], { visit: unknown }>,
  key: string,
  x: Float64Array,
  rows: RowBuilder,
): void {
  const { position, axis, length, startRadius, endRadius } = body.frustum;
  const middle = addScaled(position, axis, length / 2);
  const reach = Math.hypot(length / 2, Math.max(startRadius, endRadius)) + REACH;
  let n = 0;
  tree.visit(
    middle,
    () => reach,
    (a, b, c) =>
      bodyToShapeRow(body, { signedDistance: triangleField(a, b, c), centre: a, reach: 0 }, `${key}${n++}`, x, rows),
  );
}

const placeOf = ({ p: { link, fraction } }: ShapeContact): Vec3 => {
  const k = ((fraction - link.low) / (link.high - link.low)) * link.count;
  const i = Math.min(link.count - 1, Math.floor(k));
  const f = k - i;
  const at = (axis: number): number => link.points[3 * i + axis]! * (1 - f) + link.points[3 * i + 3 + axis]! * f;
  return [at(0), at(1), at(2)];
};

/** A body's field at a fixed place falls as the body moves toward it; tilts by differences. */
function pullBody(m: MovableMerge, x: Float64Array, p: Vec3, normal: Vec3, rows: RowBuilder, offset: number): void {
  for (let k = 0; k < 3; k++) rows.array[offset + m.at + k] = rows.array[offset + m.at + k]! - normal[k]!;
  const [s, t] = [x[m.at + 3]!, x[m.at + 4]!];
  for (let k = 0; k < 2; k++) {
    const step = k === 0 ? ([TILT_STEP, 0] as const) : ([0, TILT_STEP] as const);
    const ahead = frustumShape(bodyTilted(m, s + step[0], t + step[1])).signedDistance(...p);
    const behind = frustumShape(bodyTilted(m, s - step[0], t - step[1])).signedDistance(...p);
    rows.array[offset + m.at + 3 + k] = rows.array[offset + m.at + 3 + k]! + (ahead - behind) / (2 * TILT_STEP);
  }
}
