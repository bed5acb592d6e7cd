/**
 * One runner by itself in the space it stands in: no other runners, no merges whose own place is still open, no group. mm.
 */
import type { Merge } from '../../shared/design/types';
import { checkMergeBodies, checkSelf, checkSurroundings } from '../check/clearances';
import type { Obstacle } from '../check/obstacles';
import { checkPlacement } from '../check/placement';
import { checkShape } from '../check/shape';
import { sayIn } from '../check/words';
import { centerline } from '../curve/centerline';
import { mergeGeometry, type Pose } from '../header/merge';
import type { Header, ResolvedMerge, ResolvedRunner } from '../header/resolve';
import { type LayoutProblem, layoutProblem } from '../layout/layoutProblem';
import { randomNumbers } from '../layout/random';
import { originals } from '../motion/replicas';
import type { Line } from './sampled';

export type Alone = {
  readonly runner: ResolvedRunner;
  /** From 1. */
  readonly inlet: number;
  readonly start: Pose;
  readonly end: Pose;
  readonly header: Header;
  readonly obstacles: readonly Obstacle[];
};

/** A runner into each inlet that it may take. */
export function aloneIn(header: Header, runner: ResolvedRunner, obstacles: readonly Obstacle[]): Alone[] {
  const { from, to, id } = runner.runner;
  const own = new Set([to.merge, ...('merge' in from ? [from.merge] : [])]);
  // A merge that a locked runner stands on stays where it is.
  const pinned = new Set(
    header.runners
      .filter((r) => r.runner.locked)
      .flatMap((r) => [r.runner.to.merge, ...('merge' in r.runner.from ? [r.runner.from.merge] : [])]),
  );
  const merges = new Map<string, ResolvedMerge>();
  for (const [key, resolved] of header.merges) {
    const loose = resolved.merge.placement !== undefined && !pinned.has(key);
    if (loose && !own.has(key)) continue;
    merges.set(key, loose ? resolved : { ...resolved, merge: withoutPlacement(resolved.merge) });
  }
  const taken = new Set(
    header.runners
      .filter((r) => r.runner.id !== id && r.runner.to.merge === to.merge)
      .flatMap((r) => (r.runner.to.inlet === undefined ? [] : [r.runner.to.inlet])),
  );
  const loose = [...own].filter((key) => merges.get(key)!.merge.placement !== undefined);
  const random = randomNumbers(SEED);
  const stands = Array.from({ length: loose.length > 0 ? STANDS : 1 }, (_, k) =>
    k === 0 ? merges : new Map([...merges].map(([key, m]) => [key, loose.includes(key) ? elsewhere(m, random) : m])),
  );
  return stands.flatMap((standing) => {
    const bare: Header = { ...header, merges: standing, groups: new Map(), runners: [] };
    const start = 'merge' in from ? standing.get(from.merge)!.outlet : runner.start;
    return standing.get(to.merge)!.inlets.flatMap((end, i): Alone[] => {
      const inlet = i + 1;
      if (to.inlet === undefined ? taken.has(inlet) : to.inlet !== inlet) return [];
      return [{ runner, inlet, start, end, header: bare, obstacles }];
    });
  });
}

/** Where a merge that may move is stood to begin with: as drawn, and at places by chance in the space it has. */
const STANDS = 4;
const SEED = 104729;

function elsewhere(resolved: ResolvedMerge, random: () => number): ResolvedMerge {
  const { merge, pitch, inletOutsideDiameter } = resolved;
  const [p, q] = merge.placement!.within;
  const at = (k: 0 | 1 | 2): number => p[k] + random() * (q[k] - p[k]);
  const moved = { ...merge, position: [at(0), at(1), at(2)] as const };
  return { ...resolved, ...mergeGeometry(moved, pitch, inletOutsideDiameter), merge: moved };
}

function withoutPlacement(merge: Merge): Merge {
  const { placement: _placement, ...rest } = merge;
  return rest;
}

/** What the solver moves, starting from a line. */
export const problemOf = (alone: Alone, line: Line): LayoutProblem =>
  layoutProblem(headerWith(alone, line, alone.start, alone.end, alone.header.merges));

function headerWith(
  { runner: r, inlet, header }: Alone,
  { points, radii }: Line,
  start: Pose,
  end: Pose,
  merges: Header['merges'],
): Header {
  const runner = { ...r.runner, to: { ...r.runner.to, inlet }, points, radii };
  return { ...header, merges, runners: [{ ...r, runner, start, end, centerline: centerline(points, radii) }] };
}

/** Whether `check` finds every rule held by the line as the problem's paths stand now. */
export function holds(alone: Alone, problem: LayoutProblem): boolean {
  const [r] = problem.runners;
  const moved = new Map(problem.merges.map((m) => [m.resolved.merge.id, m]));
  const merges = new Map(
    [...alone.header.merges].map(([id, resolved]): [string, ResolvedMerge] => {
      const m = moved.get(id);
      return [id, m ? { ...resolved, ...m.geometry, merge: m.merge } : resolved];
    }),
  );
  const header = headerWith(alone, lineOf(problem), r!.from.pose, r!.to.pose, merges);
  const say = sayIn(header.design.display);
  const around = (merges: Header['merges'], obstacles: readonly Obstacle[]): boolean =>
    checkMergeBodies({ ...header, merges }, obstacles).problems.length === 0;
  return (
    checkShape(header.runners[0]!, say).length === 0 &&
    checkSurroundings(header, originals(alone.obstacles)).problems.length === 0 &&
    checkSelf(header).length === 0 &&
    checkPlacement(header).length === 0 &&
    // Each body by itself against the runner: what stands still between bodies is no fault of this runner.
    [...merges].every((entry) => around(new Map([entry]), [])) &&
    [...merges].every(
      (entry) =>
        !moved.has(entry[0]) ||
        (around(new Map([entry]), originals(alone.obstacles)) &&
          [...merges].every((other) => around(new Map([entry, other]), []))),
    )
  );
}

/** The path of a problem of one runner, as it stands now. */
export function lineOf({ runners: [r] }: LayoutProblem): Line {
  const { path } = r!;
  const P = path.points;
  return {
    points: Array.from({ length: path.bends + 2 }, (_, i) => [P[3 * i]!, P[3 * i + 1]!, P[3 * i + 2]!] as const),
    radii: [...path.radii],
  };
}
