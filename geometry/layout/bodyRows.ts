/**
 * Merge bodies as rows: against runners that neither enter nor leave, and, where a merge may move, against
 * surroundings and other bodies. mm.
 *
 * A disc of the body is held by its field's slope at the centre: value − radius·|slope across|. The field is convex, so
 * this never promises more room than there is, and it is exact against flat faces.
 */
import { remembered } from '../../shared/remember';
import type { Vec3 } from '../../shared/vec3';
import { isTree, type Obstacle } from '../check/obstacles';
import { type ConvexShape, frustumShape, slopeOf } from '../clearance/shapes';
import type { TriangleTree } from '../clearance/triangleTree';
import type { Frustum } from '../header/merge';
import { addScaled, norm, reject } from '../vector';
import { addShapeContacts, INSIDE, pathOf, REACH, SLACK } from './contactRows';
import { nearestToShape, ShapeContacts } from './contacts';
import type { LayoutProblem, SolverRunner } from './layoutProblem';
import { isClearOfBall, placeAt, type RunnerLinks } from './links';
import { bodyTilted, type MovableMerge, TILT_STEP, TILTS } from './movableMerge';
import type { KeyOf, RowBuilder } from './rowBuilder';

type Body = { readonly id: string; readonly frustum: Frustum; readonly movable: MovableMerge | null };

const runnerKey = (body: Body, r: SolverRunner, _: number, n: number): string =>
  `merge-body|merges/${body.id}|${pathOf(r)}|${n}`;

const aroundKey = (body: Body, id: string): string => `merge-body|merges/${body.id}|surroundings/${id}|`;
const triangleKey = (body: Body, id: string, n: number): string => `${aroundKey(body, id)}${n}`;
const bodiesKey = (body: Body, id: string): string => `merge-body|merges/${body.id}|merges/${id}|`;

const contacts = new ShapeContacts();

const shapeOfStill = remembered(frustumShape);

/** Discs along a body that are tried, and how often the stretch about the least is halved then. */
const SLICES = 8;
const HALVINGS = 4;

export function bodyRows(
  problem: LayoutProblem,
  x: Float64Array,
  obstacles: readonly Obstacle[],
  links: readonly RunnerLinks[],
  rows: RowBuilder,
): void {
  const movable = new Map(problem.merges.map((m) => [m.resolved.merge.id, m]));
  const bodies = [...problem.header.merges.values()].map((resolved): Body => {
    const m = movable.get(resolved.merge.id) ?? null;
    return { id: resolved.merge.id, frustum: m ? m.geometry.body : resolved.body, movable: m };
  });
  for (const body of bodies) {
    const shape = body.movable ? frustumShape(body.frustum) : shapeOfStill(body.frustum);
    for (let i = 0; i < problem.runners.length; i++) {
      const r = problem.runners[i]!;
      const touches = r.to.id === body.id || ('merge' in r.resolved.runner.from && r.from.id === body.id);
      if (touches || (r.at < 0 && !body.movable)) continue;
      const { tubeRadius } = r.resolved;
      if (isClearOfBall(links[i]!, shape.centre, shape.reach, tubeRadius + REACH)) continue;
      contacts.count = 0;
      for (const link of links[i]!.links) nearestToShape(link, shape, tubeRadius + REACH, contacts);
      if (contacts.count === 0) continue;
      const first = addShapeContacts(r, contacts, tubeRadius, rows, SLACK, runnerKey, body, r, 0);
      if (!body.movable) continue;
      for (let k = 0; k < contacts.count; k++) {
        const o = 5 * k;
        const { links, numbers } = contacts;
        const at = placeAt({ link: links[k]!, fraction: numbers[o]! });
        const normal: Vec3 = [numbers[o + 2]!, numbers[o + 3]!, numbers[o + 4]!];
        pullBody(body.movable, x, at, normal, rows, first + k * problem.unknowns);
      }
    }
    if (!body.movable) continue;
    for (const { surrounding, shape: other } of obstacles) {
      if (isTree(other)) meshRows(body, other, surrounding.id, x, rows);
      else bodyToShapeRow(body, other, aroundKey, surrounding.id, 0, x, rows);
    }
  }
  for (const [i, a] of bodies.entries())
    for (const b of bodies.slice(i + 1)) {
      const [mover, other] = a.movable ? [a, b] : [b, a];
      if (mover.movable)
        bodyToShapeRow(mover, frustumShape(other.frustum), bodiesKey, other.id, 0, x, rows, other.movable);
    }
}

/** Least of the held values along the body, as one row; with the other body's share where that moves too. */
function bodyToShapeRow(
  body: Body,
  shape: ConvexShape,
  key: KeyOf<Body, string>,
  to: string,
  n: number,
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
  const offset = rows.addOf(least.value - INSIDE, false, SLACK, key, body, to, n);
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
function meshRows(body: Body, tree: TriangleTree, surrounding: string, x: Float64Array, rows: RowBuilder): void {
  const { position, axis, length, startRadius, endRadius } = body.frustum;
  const middle = addScaled(position, axis, length / 2);
  const reach = Math.hypot(length / 2, Math.max(startRadius, endRadius)) + REACH;
  tree.visit(
    middle,
    () => reach,
    (a, _b, _c, field, index) =>
      bodyToShapeRow(body, { signedDistance: field, centre: a, reach: 0 }, triangleKey, surrounding, index, x, rows),
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
