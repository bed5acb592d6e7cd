/** Rules on each runner alone as rows: straights, bend angles, continuous bends, closure; and the groups' lengths. mm. */

import type { Vec3 } from '../../shared/vec3';
import { anySquareTo, cross, reject, scale, unit } from '../vector';
import { type BendPath, pushLean, pushLength, pushSetback, pushStraight, pushTurn } from './bendPath';
import { pathOf } from './contactRows';
import { type LayoutProblem, pull, type SolverGroup, type SolverRunner } from './layoutProblem';
import { type MovableMerge, TILT_LEVER } from './movableMerge';
import type { RowBuilder } from './rowBuilder';

/** Rules with more room than this cannot be reached in one step, mm. */
const NEAR = 40;
/** Aimed inside the limit, so that rounding never shows, mm. */
const INSIDE = 0.001;
/** No single point turns further than this: its tangents would run away. Radians. */
const WIDEST_POINT = (175 * Math.PI) / 180;
/** Turns smaller than this may vanish or turn about within a step, radians. */
const SLIGHT = 0.3;
/** Turns smaller than this have no direction. */
const VANISHED = 1e-6;

export function shapeRows(problem: LayoutProblem, x: Float64Array, rows: RowBuilder): void {
  for (const r of problem.runners) {
    if (r.at < 0) continue;
    straightRows(r, rows);
    angleRows(r, rows);
    continuousRows(r, rows);
    if (r.path.bends === 1) closureRows(r, rows);
  }
  lengthRows(problem, x, rows);
  placementRows(problem, x, rows);
}

const straightKey = (r: SolverRunner, _: null, k: number): string => `straight|${pathOf(r)}/straights/${k}||`;

function straightRows(r: SolverRunner, rows: RowBuilder): void {
  const { firstStraight, betweenStraight, lastStraight } = r.resolved.tooling;
  const n = r.path.bends;
  for (let k = 0; k <= n; k++) {
    if (k > 0 && r.continuous[k - 1]) continue;
    const least = k === 0 ? firstStraight : k === n ? lastStraight : betweenStraight;
    const value = r.path.straights[k]! - least - INSIDE;
    if (value > NEAR) continue;
    const offset = rows.addOf(value, false, INSIDE, straightKey, r, null, k);
    pushStraight(r.path, k, 1);
    pull(r, rows.array, offset);
    if (k > 0) slightBendRows(r, k, k - 1, value, rows);
    if (k < n) slightBendRows(r, k, k, value, rows);
  }
}

/**
 * A turn is the length of a small vector, which has no slope at nothing: a bend that almost vanishes may come out of a
 * step bent any other way. Its tangent length is therefore held for leaning either side and back, as well as onward.
 */
function slightBendRows(r: SolverRunner, k: number, bend: number, value: number, rows: RowBuilder): void {
  const { turns, directions: D } = r.path;
  const turn = turns[bend]!;
  if (turn > SLIGHT) return;
  const from: Vec3 = [D[3 * bend]!, D[3 * bend + 1]!, D[3 * bend + 2]!];
  const to: Vec3 = [D[3 * bend + 3]!, D[3 * bend + 4]!, D[3 * bend + 5]!];
  const lean = reject(to, from);
  const onward = turn > VANISHED ? unit(lean) : anySquareTo(from);
  const aside = cross(from, onward);
  leanRow(r, k, bend, value, 0, aside, 0, rows);
  leanRow(r, k, bend, value, 1, scale(aside, -1), 0, rows);
  leanRow(r, k, bend, value, 2, scale(onward, -1), -turn, rows);
  if (turn <= VANISHED) leanRow(r, k, bend, value, 3, onward, turn, rows);
}

/** Four ways to lean of each bend. */
const leanKey = (r: SolverRunner, _: null, k: number, way: number): string =>
  `straight|${pathOf(r)}/straights/${k}||${way >> 2} ${way & 3}`;

function leanRow(
  r: SolverRunner,
  k: number,
  bend: number,
  value: number,
  way: number,
  u: Vec3,
  leans: number,
  rows: RowBuilder,
): void {
  const { setbacks, radii } = r.path;
  const half = radii[bend]! / 2;
  const room = value + setbacks[bend]! - half * leans;
  const offset = rows.addOf(room, false, INSIDE, leanKey, r, null, k, 4 * bend + way);
  pushStraight(r.path, k, 1);
  pushSetback(r.path, bend, 1);
  pushLean(r.path, bend, u, -half);
  pull(r, rows.array, offset);
}

const angleKey = (r: SolverRunner, _: null, first: number): string => `angle|${pathOf(r)}/bends/${first}||`;

function angleRows(r: SolverRunner, rows: RowBuilder): void {
  const { turns, radii, bends } = r.path;
  for (let first = 0; first < bends; ) {
    let last = first;
    while (r.continuous[last]) last++;
    let angle = 0;
    for (let k = first; k <= last; k++) angle += turns[k]!;
    const limit = first === last ? Math.min(r.maxBendAngle, WIDEST_POINT) : r.maxBendAngle;
    // Aimed at the limit itself: between opposed ends a U-bend has no angle to spare, and the bender's scale reads no finer.
    const value = radii[first]! * (limit - angle);
    if (value < NEAR) {
      const offset = rows.addOf(value, false, INSIDE, angleKey, r, null, first);
      for (let k = first; k <= last; k++) pushTurn(r.path, k, -radii[first]!);
      pull(r, rows.array, offset);
    }
    first = last + 1;
  }
}

const joinedKey = (r: SolverRunner, _: null, k: number): string => `straight|${pathOf(r)}/straights/${k}||continuous`;
const planeKey = (r: SolverRunner, _: null, k: number): string => `bends|${pathOf(r)}||plane ${k}`;

/** Parts of one bend: no straight between them, and both in one plane. */
function continuousRows(r: SolverRunner, rows: RowBuilder): void {
  for (let k = 0; k + 1 < r.path.bends; k++) {
    if (!r.continuous[k]) continue;
    const offset = rows.addOf(r.path.straights[k + 1]!, true, 0, joinedKey, r, null, k + 1);
    pushStraight(r.path, k + 1, 1);
    pull(r, rows.array, offset);
    const plane = rows.addOf(pushTriple(r.path, k), true, 0, planeKey, r, null, k);
    pull(r, rows.array, plane);
  }
}

/** R·(d0 × d1)·d2, zero where three legs lie in one plane; adds its adjoint. */
function pushTriple(path: BendPath, k: number): number {
  const { directions: D, directionsBar: bar, radii } = path;
  const leg = (i: number): [number, number, number] => [D[3 * i]!, D[3 * i + 1]!, D[3 * i + 2]!];
  const d = [leg(k), leg(k + 1), leg(k + 2)] as const;
  const R = radii[k]!;
  let value = 0;
  for (let j = 0; j < 3; j++) {
    const normal = cross(d[(j + 1) % 3]!, d[(j + 2) % 3]!);
    for (let axis = 0; axis < 3; axis++) {
      bar[3 * (k + j) + axis] = bar[3 * (k + j) + axis]! + R * normal[axis]!;
      if (j === 0) value += R * normal[axis]! * d[0][axis]!;
    }
  }
  return value;
}

const closureKey = (r: SolverRunner, _: null, j: number): string => `end|${pathOf(r)}/end||${j}`;

/** With one bend, the end must lie on the ray that leaves it: two sideways distances are zero. */
function closureRows(r: SolverRunner, rows: RowBuilder): void {
  const { points: P, pointsBar } = r.path;
  const e = anySquareTo(r.to.pose.direction);
  for (const [j, side] of [e, cross(r.to.pose.direction, e)].entries()) {
    let value = 0;
    for (let k = 0; k < 3; k++) value += (P[6 + k]! - P[3 + k]!) * side[k]!;
    const offset = rows.addOf(value, true, 0, closureKey, r, null, j);
    for (let k = 0; k < 3; k++) {
      pointsBar[6 + k] = pointsBar[6 + k]! + side[k]!;
      pointsBar[3 + k] = pointsBar[3 + k]! - side[k]!;
    }
    pull(r, rows.array, offset);
  }
}

const lengthKey = (group: SolverGroup, r: SolverRunner): string => `balance|groups/${group.id}|${pathOf(r)}|`;

function lengthRows(problem: LayoutProblem, x: Float64Array, rows: RowBuilder): void {
  for (const group of problem.groups)
    for (const r of group.members) {
      const free = group.at >= 0;
      if (r.at < 0 && !free) continue;
      const target = free ? x[group.at]! : group.length;
      const offset = rows.addOf(r.resolved.lengthInHead + r.path.length - target, true, 0, lengthKey, group, r);
      if (r.at >= 0) {
        pushLength(r.path, 1);
        pull(r, rows.array, offset);
      }
      if (free) rows.array[offset + group.at] = -1;
    }
}

const lowKey = ({ merge }: MovableMerge, _: null, k: number): string =>
  `placement|merges/${merge.id}/position||low ${k}`;
const highKey = ({ merge }: MovableMerge, _: null, k: number): string =>
  `placement|merges/${merge.id}/position||high ${k}`;
const tiltKey = ({ merge }: MovableMerge, _: null, k: number): string => `placement|merges/${merge.id}/axis||${k}`;
const reachKey = ({ merge }: MovableMerge): string => `placement|merges/${merge.id}/axis||`;

/** A movable merge keeps to its box and its tilt. */
function placementRows(problem: LayoutProblem, x: Float64Array, rows: RowBuilder): void {
  for (const m of problem.merges) {
    for (let k = 0; k < 3; k++) {
      const at = m.at + k;
      const value = x[at]!;
      if (!Number.isFinite(m.low[k]!)) continue;
      rows.addSingle(value - m.low[k]!, false, lowKey, m, k, at, 1);
      rows.addSingle(m.high[k]! - value, false, highKey, m, k, at, -1);
    }
    const [s, t] = [x[m.at + 3]!, x[m.at + 4]!];
    const tilt = Math.hypot(s, t);
    if (tilt < 1e-9 && m.reach > 0) continue;
    if (m.reach === 0) {
      rows.addSingle(TILT_LEVER * s, true, tiltKey, m, 0, m.at + 3, TILT_LEVER);
      rows.addSingle(TILT_LEVER * t, true, tiltKey, m, 1, m.at + 4, TILT_LEVER);
      continue;
    }
    const offset = rows.addOf(TILT_LEVER * (m.reach - tilt), false, 0, reachKey, m, null);
    rows.array[offset + m.at + 3] = (-TILT_LEVER * s) / tilt;
    rows.array[offset + m.at + 4] = (-TILT_LEVER * t) / tilt;
  }
}
