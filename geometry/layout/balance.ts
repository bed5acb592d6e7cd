/**
 * The nearest design in which every rule holds and each group's lengths are equal: what a builder wants after pulling a
 * bend by hand. Deterministic: restarts are drawn from a fixed seed.
 */
import type { Design } from '../../shared/design/types';
import { check } from '../check/check';
import type { Meshes } from '../check/meshes';
import type { Obstacle } from '../check/obstacles';
import type { CheckReport, RuleName } from '../check/report';
import { type Header, resolveHeader } from '../header/resolve';
import { solverObstacles } from '../motion/replicas';
import { roomForTools } from '../reach/keepOuts';
import { LEAST_TURN_DEG, RADIANS } from '../tolerance';
import { distance } from '../vector';
import { assignInlets } from './inlets';
import { designAt, type LayoutProblem, layoutProblem, place } from './layoutProblem';
import { nearestLengths } from './nearestLengths';
import { randomNumbers } from './random';
import { RowBuilder } from './rowBuilder';
import { gatherRows, type Solved, solve } from './solve';

export type BalanceResult = {
  /** The design given, with new `points` (and inlets, where they were left out). */
  readonly design: Design;
  /** `check` of that design: `ok`, or which rules stop it and by how much. */
  readonly report: CheckReport;
  readonly iterations: number;
  /** How far each runner's points moved at most, mm. */
  readonly moved: readonly { readonly id: string; readonly distance: number }[];
  /** Where not every rule could be held: the rules that stand at their limit and so stop it. */
  readonly limits: readonly Limit[];
};

/**
 * A rule at its limit: paths as in a problem's `where`; `other` is empty where it concerns one thing alone. Not a rule of
 * the contract but as firm: a runner that its user locked.
 */
export type Limit = { readonly rule: RuleName | 'locked'; readonly where: string; readonly other: string };

export type BalanceOptions = {
  /** Further starting points tried where the first leads nowhere; 0 for a live drag. Default 12. */
  readonly restarts?: number;
  /** Asked now and then; true ends the search with the best so far. */
  readonly cancelled?: () => boolean;
};

/** Lengths end far inside the promised 0.001 mm. */
const FEASIBLE = 2e-5;
/** Nearness is settled to this; rules do not wait for it. */
const SETTLED = 0.05;
const MAX_ITERATIONS = 40;
const SEED = 20;

/**
 * @param design routed; runners without points stay as they are and fail `routed`
 * @param meshes by file name, as for `check`
 */
export function balance(design: Design, meshes: Meshes = new Map(), options: BalanceOptions = {}): BalanceResult {
  const { design: balanced, iterations, limits } = balancePoints(design, meshes, options, roomForTools);
  const report = check(balanced, meshes);
  return {
    design: balanced,
    report,
    iterations,
    moved: movesBetween(design, balanced),
    limits: report.ok ? [] : limits,
  };
}

/** What else is kept clear of: room for tools, unless a hand is waiting. */
export type AlsoAround = (header: Header, meshes: Meshes) => readonly Obstacle[];
const nothing: AlsoAround = () => [];

/** Without the final check: what a live drag calls every frame. */
export function balancePoints(
  design: Design,
  meshes: Meshes = new Map(),
  { restarts = 12, cancelled }: BalanceOptions = {},
  alsoAround: AlsoAround = nothing,
): { design: Design; iterations: number; miss: number; limits: Limit[] } {
  const header = routedOnly(resolveHeader(assignInlets(design)));
  const obstacles = [...solverObstacles(header, meshes), ...alsoAround(header, meshes)];
  const problem = layoutProblem(header);
  if (problem.unknowns === 0) return { design, iterations: 0, miss: 0, limits: [] };
  const target = problem.start;
  const options = {
    maxIterations: MAX_ITERATIONS,
    feasible: FEASIBLE,
    settled: SETTLED,
    ...(cancelled ? { cancelled } : {}),
  };
  let best = solve(problem, obstacles, target, target, options);
  let iterations = best.iterations;
  const random = randomNumbers(SEED);
  for (let k = 0; k < restarts && best.miss > FEASIBLE && !cancelled?.(); k++) {
    const start = shaken(target, problem.dearness, 15 * (1 + k), random);
    const found = fromAfar(start);
    iterations += found.iterations;
    if (found.miss < best.miss) best = found;
  }
  if (restarts > 0 && best.miss > FEASIBLE && !cancelled?.()) {
    const reached = nearestLengths(problem, obstacles, options);
    iterations += reached.iterations;
    if (reached.solved) best = reached.solved;
  }
  const settled = withoutVanished(best);
  const rows = new RowBuilder(settled.problem.unknowns, settled.problem.dearness);
  gatherRows(settled.problem, obstacles, settled.x, rows);
  return { design: designAt(settled.problem), iterations, miss: settled.miss, limits: rows.atLimit() as Limit[] };

  /**
   * A bend may vanish on the way. The contract then drops its point, which turns its neighbours by up to 0.01° and
   * shifts their lengths by some 0.001 mm: so it is dropped here, and the rest made exact again.
   */
  function withoutVanished(found: Solved): Solved & { problem: LayoutProblem } {
    place(problem, found.x);
    const slight = problem.runners.some((r) => r.at >= 0 && r.path.turns.some((t) => t < LEAST_TURN_DEG * RADIANS));
    if (!slight) return { ...found, problem };
    const fewer = layoutProblem(routedOnly(resolveHeader(designAt(problem))));
    const again = solve(fewer, obstacles, fewer.start, fewer.start, options);
    iterations += again.iterations;
    return { ...again, problem: fewer };
  }

  /** First any place where the rules hold, by shortest steps from here to there; then the nearest to what was asked. */
  function fromAfar(start: Float64Array): Solved {
    const any = solve(problem, obstacles, start, start, options);
    if (any.miss > FEASIBLE) return any;
    const near = solve(problem, obstacles, target, any.x, options);
    const iterations = any.iterations + near.iterations;
    return near.miss <= FEASIBLE ? { ...near, iterations } : { ...any, iterations };
  }
}

/** Only runners that have a line and an inlet can be solved; the others are reported by `check`. */
export const routedOnly = (header: Header): Header => ({
  ...header,
  runners: header.runners.filter((r) => r.centerline && r.end),
});

const shaken = (x: Float64Array, dearness: Float64Array, size: number, random: () => number): Float64Array =>
  x.map((value, k) => value + (size * (2 * random() - 1)) / Math.max(1, dearness[k]! ** 2));

function movesBetween(before: Design, after: Design): { id: string; distance: number }[] {
  return after.runners.flatMap((runner, i) => {
    const old = before.runners[i]?.points;
    if (!runner.points || !old) return [];
    const moved = runner.points.map((p) => Math.min(...old.map((q) => distance(p, q))));
    const byIndex = runner.points.map((p, k) => (old[k] ? distance(p, old[k]) : moved[k]!));
    const far = Math.max(0, ...(old.length === runner.points.length ? byIndex : moved));
    return [{ id: runner.id, distance: far }];
  });
}
