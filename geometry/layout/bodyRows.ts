/**
 * Merge bodies as rows: against runners that neither enter nor leave, and, where a merge may move, against
 * surroundings and other bodies. mm.
 *
 * A disc of the body is held by its field's slope at the centre: value − radius·|slope across|. The field is convex, so
 * this never promises more room than there is, and it is exact against flat faces. A mesh is held at the places where it comes
 * nearest, one for each patch of the body's skin: exact there, and few however fine the mesh is.
 */
import { remembered } from '../../shared/remember';
import type { Vec3 } from '../../shared/vec3';
import { isTree, momentOf, type Obstacle } from '../check/obstacles';
import type { Field } from '../clearance/convexMinimum';
import { type ConvexShape, frustumShape } from '../clearance/shapes';
import { PLACE_NUMBERS, placesNear, SkinPlaces } from '../clearance/skinPlaces';
import type { TriangleTree } from '../clearance/triangleTree';
import type { Frustum } from '../header/merge';
import { addScaled } from '../vector';
import { addShapeContacts, INSIDE, pathOf, REACH, SLACK } from './contactRows';
import type { LayoutProblem, SolverRunner } from './layoutProblem';
import { placeAt } from './links';
import { bodyTilted, type MovableMerge, TILT_STEP, TILTS } from './movableMerge';
import type { KeyOf, RowBuilder } from './rowBuilder';
import { isClearOfBall, type RunnerLinks } from './runnerLinks';
import { nearestToShape, ShapeContacts } from './shapeContacts';

type Body = { readonly id: string; readonly frustum: Frustum; readonly movable: MovableMerge | null };

const runnerKey = (body: Body, r: SolverRunner, _: number, n: number): string =>
  `merge-body|merges/${body.id}|${pathOf(r)}|${n}`;

const aroundKey = (body: Body, id: string): string => `merge-body|merges/${body.id}|surroundings/${id}|`;
const momentKey = (body: Body, id: string, n: number): string => `${aroundKey(body, id)} ${n}`;
const patchKey = (body: Body, o: Obstacle, n: number): string =>
  `${aroundKey(body, o.surrounding.id)}${n}${momentOf(o)}`;
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
    for (let i = 0; i < problem.runners.length; i++) runnerRows(problem, x, body, shape, links[i]!, rows);
    if (body.movable) for (const o of obstacles) aroundRows(body, o, x, rows);
  }
  for (const [i, a] of bodies.entries())
    for (const b of bodies.slice(i + 1)) {
      const [mover, other] = a.movable ? [a, b] : [b, a];
      if (mover.movable)
        bodyToShapeRow(mover, frustumShape(other.frustum), bodiesKey, other.id, 0, x, rows, other.movable);
    }
}

function runnerRows(
  problem: LayoutProblem,
  x: Float64Array,
  body: Body,
  shape: ConvexShape,
  near: RunnerLinks,
  rows: RowBuilder,
): void {
  const { runner: r, links } = near;
  const touches = r.to.id === body.id || ('merge' in r.resolved.runner.from && r.from.id === body.id);
  if (touches || (r.at < 0 && !body.movable)) return;
  const { tubeRadius } = r.resolved;
  if (isClearOfBall(near, shape.centre, shape.reach, tubeRadius + REACH)) return;
  contacts.count = 0;
  for (let k = 0; k < links.length; k++) nearestToShape(links[k]!, shape, tubeRadius + REACH, contacts);
  if (contacts.count === 0) return;
  const first = addShapeContacts(r, contacts, tubeRadius, rows, SLACK, runnerKey, body, r, 0);
  if (body.movable) pullBodyAtContacts(body.movable, x, first, problem.unknowns, rows);
}

/** @param first where the row of the first contact begins */
function pullBodyAtContacts(m: MovableMerge, x: Float64Array, first: number, unknowns: number, rows: RowBuilder): void {
  const { count, links, numbers } = contacts;
  const tilted = tiltedFields(m, x);
  for (let k = 0; k < count; k++) {
    const o = 5 * k;
    const at = placeAt({ link: links[k]!, fraction: numbers[o]! });
    const normal: Vec3 = [numbers[o + 2]!, numbers[o + 3]!, numbers[o + 4]!];
    pullBody(m, tilted, at, normal, rows, first + k * unknowns);
  }
}

function aroundRows(body: Body, o: Obstacle, x: Float64Array, rows: RowBuilder): void {
  const { surrounding, shape, moment = 0 } = o;
  if (isTree(shape)) meshRows(body, o, shape, x, rows);
  else bodyToShapeRow(body, shape, moment > 0 ? momentKey : aroundKey, surrounding.id, moment, x, rows);
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
  if (least >= REACH) return;
  const offset = rows.addOf(least - INSIDE, false, SLACK, key, body, to, n);
  const m = body.movable!;
  const s = x[m.at + 3]!;
  const t = x[m.at + 4]!;
  const row = rows.array;
  const own = offset + m.at;
  row[own] = row[own]! + leastSlope[0]!;
  row[own + 1] = row[own + 1]! + leastSlope[1]!;
  row[own + 2] = row[own + 2]! + leastSlope[2]!;
  if (other) for (let k = 0; k < 3; k++) row[offset + other.at + k] = row[offset + other.at + k]! - leastSlope[k]!;
  for (const [k, [ds, dt]] of TILTS.entries()) {
    const ahead = heldLeast(bodyTilted(m, s + ds, t + dt), shape);
    row[own + 3 + k] = row[own + 3 + k]! + (ahead - least) / TILT_STEP;
  }
}

/** The slope of the disc that `heldLeast` found last. */
const leastSlope = new Float64Array(3);

/** Least of the held values of discs along a body. */
function heldLeast(f: Frustum, shape: ConvexShape): number {
  let best = Number.POSITIVE_INFINITY;
  let at = 0;
  const look = (h: number): void => {
    const along = h * f.length;
    const { position, axis } = f;
    const radius = f.startRadius + h * (f.endRadius - f.startRadius);
    const x = position[0] + along * axis[0];
    const y = position[1] + along * axis[1];
    const z = position[2] + along * axis[2];
    const value = heldDisc(x, y, z, axis, radius, shape.signedDistance);
    if (value >= best) return;
    best = value;
    for (let k = 0; k < 3; k++) leastSlope[k] = discSlope[k]!;
    at = h;
  };
  for (let k = 0; k <= SLICES; k++) look(k / SLICES);
  for (let k = 1, step = 0.5 / SLICES; k <= HALVINGS; k++, step /= 2) {
    const middle = at;
    if (middle - step > 0 && middle - step < 1) look(middle - step);
    if (middle + step > 0 && middle + step < 1) look(middle + step);
  }
  return best;
}

/** The field's slope at the centre of the disc that was held last. */
export const discSlope = new Float64Array(3);

/** Half the step of the slope's central differences, as `slopeOf` takes it. */
const PROBE = 1e-4;

/** A disc by the field's slope at its centre, left in `discSlope`: never more room than there is. */
export function heldDisc(x: number, y: number, z: number, normal: Vec3, radius: number, f: Field): number {
  const h = 2 * PROBE;
  const sx = (f(x + PROBE, y, z) - f(x - PROBE, y, z)) / h;
  const sy = (f(x, y + PROBE, z) - f(x, y - PROBE, z)) / h;
  const sz = (f(x, y, z + PROBE) - f(x, y, z - PROBE)) / h;
  const along = -(sx * normal[0] + sy * normal[1] + sz * normal[2]);
  const ax = sx + along * normal[0];
  const ay = sy + along * normal[1];
  const az = sz + along * normal[2];
  discSlope[0] = sx;
  discSlope[1] = sy;
  discSlope[2] = sz;
  return f(x, y, z) - radius * Math.sqrt(ax * ax + ay * ay + az * az);
}

const places = new SkinPlaces();

/** Where the mesh comes near the body, patch by patch of its skin. */
function meshRows(body: Body, o: Obstacle, tree: TriangleTree, x: Float64Array, rows: RowBuilder): void {
  placesNear({ frustum: body.frustum, until: Number.POSITIVE_INFINITY }, tree, REACH, places);
  if (places.count === 0) return;
  const m = body.movable!;
  const tilted = tiltedFields(m, x);
  const { numbers } = places;
  for (let k = 0; k < places.count; k++) {
    const at = PLACE_NUMBERS * k;
    const offset = rows.addOf(numbers[at + 1]! - INSIDE, false, SLACK, patchKey, body, o, numbers[at]!);
    const place: Vec3 = [numbers[at + 2]!, numbers[at + 3]!, numbers[at + 4]!];
    pullBody(m, tilted, place, [numbers[at + 5]!, numbers[at + 6]!, numbers[at + 7]!], rows, offset);
  }
}

type Tilted = { readonly ahead: Field; readonly behind: Field };

/** The body's field a step of each tilt on and back. */
function tiltedFields(m: MovableMerge, x: Float64Array): readonly Tilted[] {
  const [s, t] = [x[m.at + 3]!, x[m.at + 4]!];
  return TILTS.map(([ds, dt]) => ({
    ahead: frustumShape(bodyTilted(m, s + ds, t + dt)).signedDistance,
    behind: frustumShape(bodyTilted(m, s - ds, t - dt)).signedDistance,
  }));
}

/** A body's field at a fixed place falls as the body moves toward it; tilts by differences. */
function pullBody(
  m: MovableMerge,
  tilted: readonly Tilted[],
  p: Vec3,
  normal: Vec3,
  rows: RowBuilder,
  offset: number,
): void {
  for (let k = 0; k < 3; k++) rows.array[offset + m.at + k] = rows.array[offset + m.at + k]! - normal[k]!;
  for (const [k, { ahead, behind }] of tilted.entries()) {
    const slope = (ahead(...p) - behind(...p)) / (2 * TILT_STEP);
    rows.array[offset + m.at + 3 + k] = rows.array[offset + m.at + 3 + k]! + slope;
  }
}
