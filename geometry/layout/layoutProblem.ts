/**
 * A header as the solver sees it: one vector of unknowns, and the paths, merges and groups that it moves.
 * Built from a routed design; `place` moves everything to a vector, `designAt` writes it back as a document. mm.
 */
import type { Design, Merge } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { isContinuous } from '../curve/bends';
import type { Pose } from '../header/merge';
import type { Header, ResolvedRunner } from '../header/resolve';
import { RADIANS } from '../tolerance';
import { dot, sub } from '../vector';
import { type BendPath, bendPath, measurePath, settleDirections } from './bendPath';
import type { Held } from './held';
import {
  MERGE_UNKNOWNS,
  type MovableMerge,
  mergeUnknowns,
  movableMerge,
  moveMerge,
  placeOf,
  pullPlace,
  TILT_LEVER,
} from './movableMerge';

export type SolverRunner = {
  readonly resolved: ResolvedRunner;
  readonly path: BendPath;
  /** Offset of its unknowns; −1 for a runner that stays as it is. */
  readonly at: number;
  readonly unknowns: number;
  readonly from: Joint;
  readonly to: Joint;
  /** Whether bend i and bend i + 1 are one continuous bend and must stay so. */
  readonly continuous: readonly boolean[];
  readonly maxBendAngle: number;
  /** Stations, from the start and from the end, within which neighbours at the same port or merge may touch. */
  readonly bundleAtStart: number;
  readonly bundleAtEnd: number;
};

/** An end of a runner: where it stands, and which movable merge (if any) carries it. */
export type Joint = {
  readonly id: string;
  readonly merge: MovableMerge | null;
  /** Number among the merge's places (inlets, then the outlet). */
  readonly place: number;
  pose: Pose;
};

export type SolverGroup = {
  readonly id: string;
  /** Offset of its free length among the unknowns, or −1 where the length is given. */
  readonly at: number;
  readonly length: number;
  readonly members: readonly SolverRunner[];
};

export type LayoutProblem = {
  readonly header: Header;
  readonly unknowns: number;
  readonly start: Float64Array;
  /** How dear it is to move each unknown: the square root of its weight in the distance. */
  readonly dearness: Float64Array;
  /** What a step of each unknown moves, mm: one for a place, a lever for a tilt. */
  readonly lever: Float64Array;
  /** The unknowns that a hand holds. */
  readonly held: readonly number[];
  readonly runners: readonly SolverRunner[];
  readonly merges: readonly MovableMerge[];
  readonly groups: readonly SolverGroup[];
};

/** What may move, by id, and what a hand holds of it. Locked runners stay where they are in any case. */
export type Scope = {
  readonly runners: ReadonlySet<string>;
  readonly merges: ReadonlySet<string>;
  readonly held: Held;
};

/** The hand's word counts for far more than what must follow it; its square weighs against squares of distances. */
const HELD_DEARNESS = 100;
/** What is not itself held gives way last. */
const BYSTANDER_DEARNESS = 3;
/** Moving a merge drags all its runners: it counts more than moving one bend point. */
const MERGE_DEARNESS = 2;
/** A group's free length costs almost nothing: any length will do, but one must be nearest. */
const GROUP_DEARNESS = 0.01;

/**
 * Every runner must have a centerline and an inlet.
 * @param scope what may move; by default all that is not locked, and merges as far as their `placement` grants
 */
export function layoutProblem(header: Header, scope?: Scope): LayoutProblem {
  let unknowns = 0;
  const take = (n: number): number => {
    unknowns += n;
    return unknowns - n;
  };
  const pinned = new Set(
    header.runners
      .filter((r) => r.runner.locked)
      .flatMap((r) => [r.runner.to.merge, ...('merge' in r.runner.from ? [r.runner.from.merge] : [])]),
  );
  const merges = [...header.merges.values()]
    .filter(({ merge }) => (scope ? scope.merges.has(merge.id) : merge.placement) && !pinned.has(merge.id))
    .map((resolved) => movableMerge(resolved, take(MERGE_UNKNOWNS)));
  const movable = new Map(merges.map((m) => [m.resolved.merge.id, m]));
  const runners = header.runners.map((r) => {
    const stays = r.runner.locked || (scope !== undefined && !scope.runners.has(r.runner.id));
    return solverRunner(header, r, movable, stays, take);
  });
  const groups = [...header.groups].map(([id, group]): SolverGroup => {
    const members = runners.filter((r) => r.resolved.runner.group === id);
    if (group.length !== null) return { id, at: -1, length: group.length, members };
    // What stays sets the length that the others keep to.
    const staying = scope ? members.filter((r) => r.at < 0) : [];
    if (staying.length > 0) return { id, at: -1, length: meanLength({ members: staying }), members };
    return { id, at: take(1), length: 0, members };
  });

  const start = new Float64Array(unknowns);
  const dearness = new Float64Array(unknowns).fill(1);
  for (const m of merges) {
    start.set(mergeUnknowns(m), m.at);
    dearness.fill(MERGE_DEARNESS, m.at, m.at + 3);
    dearness.fill(TILT_LEVER, m.at + 3, m.at + 5);
  }
  for (const r of runners) if (r.at >= 0) start.set(startOf(r), r.at);
  const lever = Float64Array.from(dearness);
  const held = scope ? weigh(scope.held, runners, merges, dearness) : [];
  const problem: LayoutProblem = { header, unknowns, start, dearness, lever, held, runners, merges, groups };
  place(problem, start);
  for (const g of groups) {
    if (g.at < 0) continue;
    dearness[g.at] = GROUP_DEARNESS;
    lever[g.at] = GROUP_DEARNESS;
    start[g.at] = meanLength(g);
  }
  return problem;
}

/** Of a group as it stands, what lies in the head included; 0 of none. */
export function meanLength({ members }: Pick<SolverGroup, 'members'>): number {
  const total = members.reduce((sum, r) => sum + r.resolved.lengthInHead + r.path.length, 0);
  return total / Math.max(1, members.length);
}

/** Makes what is held dear and what only stands by dearer than what belongs to it; answers the unknowns that are held. */
function weigh(
  held: Held,
  runners: readonly SolverRunner[],
  merges: readonly MovableMerge[],
  dearness: Float64Array,
): number[] {
  const own = (r: SolverRunner): boolean =>
    held.kind === 'points'
      ? r.resolved.runner.id === held.runner
      : held.kind !== 'surrounding' && (r.from.id === held.id || r.to.id === held.id);
  for (const r of runners)
    if (r.at >= 0 && !own(r) && held.kind !== 'surrounding') dearness.fill(BYSTANDER_DEARNESS, r.at, r.at + r.unknowns);
  const unknowns = heldUnknowns(held, runners, merges);
  for (const k of unknowns) dearness[k] = dearness[k]! * HELD_DEARNESS;
  return unknowns;
}

function heldUnknowns(held: Held, runners: readonly SolverRunner[], merges: readonly MovableMerge[]): number[] {
  if (held.kind === 'merge') {
    const merge = merges.find((m) => m.resolved.merge.id === held.id);
    return merge ? Array.from({ length: MERGE_UNKNOWNS }, (_, k) => merge.at + k) : [];
  }
  if (held.kind !== 'points') return [];
  const r = runners.find((one) => one.resolved.runner.id === held.runner);
  if (!r || r.at < 0) return [];
  const { source } = r.resolved.centerline!;
  return held.points.flatMap((point) => unknownsOfPoint(r, source.indexOf(point)));
}

/** @param point among the path's own points, the start being 0 */
function unknownsOfPoint({ at, path: { bends: n } }: SolverRunner, point: number): number[] {
  if (point < 1 || point > n) return [];
  if (point === 1) return [at];
  const first = at + 1 + 3 * (point - 2);
  return point === n ? [first] : [first, first + 1, first + 2];
}

function solverRunner(
  header: Header,
  resolved: ResolvedRunner,
  movable: ReadonlyMap<string, MovableMerge>,
  stays: boolean,
  take: (n: number) => number,
): SolverRunner {
  const { runner, tooling } = resolved;
  const line = resolved.centerline!;
  const n = line.radii.length;
  const count = stays || n === 0 ? 0 : n === 1 ? 1 : 2 + 3 * (n - 2);
  const path = bendPath(line.radii);
  for (const [i, p] of line.points.entries()) path.points.set(p, 3 * i);
  const port = 'port' in runner.from ? header.ports.get(runner.from.port)! : null;
  const fromId = 'port' in runner.from ? runner.from.port : runner.from.merge;
  const fromMerge = movable.get(port ? '' : fromId) ?? null;
  const toMerge = movable.get(runner.to.merge) ?? null;
  return {
    resolved,
    path,
    at: count > 0 ? take(count) : -1,
    unknowns: count,
    from: { id: fromId, merge: fromMerge, place: fromMerge?.resolved.inlets.length ?? 0, pose: resolved.start },
    to: { id: runner.to.merge, merge: toMerge, place: runner.to.inlet! - 1, pose: resolved.end! },
    continuous: line.radii.map((_, i) => isContinuous(line, i)),
    maxBendAngle: tooling.maxBendAngle * RADIANS,
    bundleAtStart: port?.bundle ?? 0,
    bundleAtEnd: header.merges.get(runner.to.merge)!.bundle,
  };
}

/** The nearest unknowns to a runner's drawn points: end points projected onto their rays. */
function startOf(r: SolverRunner): number[] {
  const { points } = r.resolved.centerline!;
  const n = r.path.bends;
  const a = dot(sub(points[1]!, r.from.pose.position), r.from.pose.direction);
  if (n === 1) return [a];
  const b = dot(sub(r.to.pose.position, points[n]!), r.to.pose.direction);
  return [a, ...points.slice(2, n).flat(), b];
}

/** Moves every merge and path to the unknowns `x`. */
export function place(problem: LayoutProblem, x: Float64Array): void {
  for (const m of problem.merges) moveMerge(m, x);
  for (const r of problem.runners) {
    const { from, to, path } = r;
    // What stays was measured when it was first placed.
    if (r.at < 0 && !from.merge && !to.merge && path.length > 0) continue;
    if (from.merge) from.pose = placeOf(from.merge.geometry, from.place);
    if (to.merge) to.pose = placeOf(to.merge.geometry, to.place);
    placeRunner(r, x);
    measurePath(path);
  }
}

function placeRunner({ path, at, from, to }: SolverRunner, x: Float64Array): void {
  const { bends: n, points: P, directions: D } = path;
  const { position: start, direction: out } = from.pose;
  const { position: end, direction: into } = to.pose;
  for (let k = 0; k < 3; k++) {
    D[k] = out[k]!;
    D[3 * n + k] = into[k]!;
  }
  if (at < 0) return;
  const a = x[at]!;
  for (let k = 0; k < 3; k++) {
    P[k] = start[k]!;
    P[3 * n + 3 + k] = end[k]!;
    P[3 + k] = start[k]! + a * out[k]!;
  }
  for (let i = 0; i < 3 * (n - 2); i++) P[6 + i] = x[at + 1 + i]!;
  if (n < 2) return;
  const b = x[at + 1 + 3 * (n - 2)]!;
  for (let k = 0; k < 3; k++) P[3 * n + k] = end[k]! - b * into[k]!;
}

const positionBar = new Float64Array(3);
const directionBar = new Float64Array(3);

/** Adds what a path's gathered adjoints mean for the unknowns to a gradient row, and clears them. */
export function pull(r: SolverRunner, row: Float64Array, offset: number): void {
  const { path, at, from, to } = r;
  const { bends: n, pointsBar: P, directionsBar: D, endLegsBar } = path;
  settleDirections(path);
  if (at >= 0) {
    const ds = from.pose.direction;
    const de = to.pose.direction;
    const last = 3 * n;
    const own = offset + at;
    row[own] = row[own]! + endLegsBar[0]! + P[3]! * ds[0] + P[4]! * ds[1] + P[5]! * ds[2];
    for (let i = 0; i < 3 * (n - 2); i++) row[own + 1 + i] = row[own + 1 + i]! + P[6 + i]!;
    if (n > 1) {
      const b = own + 1 + 3 * (n - 2);
      row[b] = row[b]! + endLegsBar[1]! - P[last]! * de[0] - P[last + 1]! * de[1] - P[last + 2]! * de[2];
    } else {
      // One bend: the last leg is the end's distance along its own direction.
      row[own] = row[own]! - endLegsBar[1]! * dot(ds, de);
    }
    if (from.merge) {
      const a = path.legs[0]!;
      for (let k = 0; k < 3; k++) {
        positionBar[k] = P[k]! + P[3 + k]! - (n === 1 ? endLegsBar[1]! * de[k]! : 0);
        directionBar[k] = D[k]! + a * (P[3 + k]! - (n === 1 ? endLegsBar[1]! * de[k]! : 0));
      }
      pullPlace(from.merge, from.place, positionBar, directionBar, row, offset);
    }
    if (to.merge) {
      const b = path.legs[n]!;
      for (let k = 0; k < 3; k++) {
        positionBar[k] = P[last + 3 + k]! + (n > 1 ? P[last + k]! : endLegsBar[1]! * de[k]!);
        directionBar[k] = D[last + k]! + (n > 1 ? -b * P[last + k]! : 0);
      }
      pullPlace(to.merge, to.place, positionBar, directionBar, row, offset);
    }
  }
  // Loops, as `fill` costs more on rows so short.
  for (let k = 0; k < P.length; k++) P[k] = 0;
  for (let k = 0; k < D.length; k++) D[k] = 0;
  endLegsBar[0] = 0;
  endLegsBar[1] = 0;
}

/** The design with the points and merge poses of the paths as they stand. */
export function designAt(problem: LayoutProblem): Design {
  const { design } = problem.header;
  const moved = new Map<string, Merge>(problem.merges.map((m) => [m.resolved.merge.id, movedMerge(m)]));
  const paths = new Map(problem.runners.map((r) => [r.resolved.runner.id, r]));
  return {
    ...design,
    merges: design.merges.map((m) => moved.get(m.id) ?? m),
    runners: design.runners.map((runner) => {
      const r = paths.get(runner.id);
      if (!r || r.at < 0) return runner;
      const points = Array.from({ length: r.path.bends + 2 }, (_, i): Vec3 => {
        const P = r.path.points;
        return [P[3 * i]!, P[3 * i + 1]!, P[3 * i + 2]!];
      });
      const to = { ...runner.to, inlet: r.to.place + 1 };
      return { ...runner, to, points, ...(runner.radii ? { radii: [...r.path.radii] } : {}) };
    }),
  };
}

/** A merge that was tilted remembers the axis its tilt is measured from, so that a second move cannot add up. */
function movedMerge({ merge, resolved }: MovableMerge): Merge {
  const given = resolved.merge;
  if (merge.axis === given.axis || !given.placement) return merge;
  return { ...merge, placement: { ...given.placement, axis: given.placement.axis ?? given.axis } };
}
