/** A whole header as drawn in one try: the design with every line, made exact by the solver, and who is to blame where it is not. */
import type { Design, Runner } from '../../shared/design/types';
import { resolveHeader } from '../header/resolve';
import { routedOnly } from '../layout/balance';
import { designAt, type LayoutProblem, layoutProblem, place } from '../layout/layoutProblem';
import { MERGE_UNKNOWNS } from '../layout/movableMerge';
import { RowBuilder } from '../layout/rowBuilder';
import { gatherRows, solve } from '../layout/solve';
import { rejoined } from './continuousBend';
import { crowdingAmong } from './crowd';
import type { Line } from './line';
import { relax } from './relax';
import type { Sketch } from './sketch';
import type { RunnerTask, Task } from './task';

/** The design with a sketch for each of some runners, in their order. */
export function withSketches(design: Design, runners: readonly RunnerTask[], sketches: readonly Sketch[]): Design {
  const drawn = new Map(runners.map((r, i) => [r.index, { r, s: sketches[i]! }]));
  return {
    ...design,
    runners: design.runners.map((runner, i): Runner => {
      const found = drawn.get(i);
      if (!found) return runner;
      const { r, s } = found;
      const usual = r.resolved.tooling.centerlineRadius;
      const { radii: _radii, ...rest } = runner;
      const own = s.radii.some((radius) => radius !== usual) ? { radii: s.radii } : {};
      return { ...rest, to: { ...runner.to, inlet: s.inlet }, points: s.points, ...own };
    }),
  };
}

export type Settled = {
  readonly design: Design;
  /** Greatest miss, mm. */
  readonly miss: number;
  /** Half the sum of squares of what is missed, mm². */
  readonly cost: number;
  /** Of each runner, what it has part in. */
  readonly blame: readonly number[];
};

export type Effort = { readonly steps: number; readonly stopped: () => boolean };

/** Missed by no more than this, the exact solver takes over, mm. */
const NEAR = 0.1;
/** Lengths end far inside the promised 0.001 mm. */
export const FEASIBLE = 2e-5;
/** A bend more than the tooling allows weighs as much as this, mm². */
const TOO_MANY = 1000;
const EXACT_STEPS = 12;
const PRESSES = 4;

/** @param begin where to begin instead of where the design lies */
export function settled(
  design: Design,
  task: Task,
  { steps, stopped }: Effort,
  begin: (problem: LayoutProblem) => Float64Array = (problem) => problem.start,
): Settled {
  const problem = layoutProblem(routedOnly(resolveHeader(design)));
  const rough = relax(problem, task.obstacles, begin(problem), { steps, enough: NEAR, presses: PRESSES, stopped });
  if (rough.greatest > NEAR) return told(problem, task, rough.x, rough.cost, rough.greatest);
  const exact = solve(problem, task.obstacles, rough.x, rough.x, {
    maxIterations: EXACT_STEPS,
    feasible: FEASIBLE,
    settled: 0.5,
    cancelled: stopped,
  });
  return told(problem, task, exact.x, Math.max(rough.cost, exact.miss ** 2), exact.miss);
}

/** Of each runner, its part in what is missed beside the one most to blame. */
export function sharesOfBlame({ blame }: Settled): number[] {
  const most = Math.max(...blame, 1e-9);
  return blame.map((b) => Math.sqrt(b / most));
}

/** Knocks each runner out of its place by up to its own share of `size`, mm, and merges by a little. */
export function knocked(shares: readonly number[], size: number, random: () => number) {
  return (problem: LayoutProblem): Float64Array => {
    const x = Float64Array.from(problem.start);
    const knock = (at: number, count: number, by: number): void => {
      for (let k = at; k < at + count; k++) x[k] = x[k]! + (by * (2 * random() - 1)) / Math.max(1, problem.lever[k]!);
    };
    for (const [i, r] of problem.runners.entries()) if (r.at >= 0) knock(r.at, r.unknowns, size * shares[i]!);
    for (const m of problem.merges) knock(m.at, MERGE_UNKNOWNS, size / 2);
    return x;
  };
}

/** Steps for one runner among others that stay. */
const FITTING_STEPS = 14;

export type Fitted = { readonly design: Design; readonly cost: number };

/** What is missed once one runner has been fitted, from a sketch, among the others as they lie; with its design. */
export function fitted(design: Design, task: Task, r: RunnerTask, sketch: Sketch): Fitted {
  const only = { runners: new Set([r.resolved.runner.id]), merges: new Set<string>(), held: NOTHING };
  const problem = layoutProblem(routedOnly(resolveHeader(withSketches(design, [r], [sketch]))), only);
  const found = relax(problem, task.obstacles, problem.start, { steps: FITTING_STEPS, enough: NEAR });
  place(problem, found.x);
  return { design: rejoinedDesign(problem), cost: found.cost };
}

/** Of some shapes of one runner the likeliest few, by what is in their way, fitted among the others; the best first. */
export function fittedBest(
  design: Design,
  task: Task,
  r: RunnerTask,
  shapes: readonly Sketch[],
  still: readonly Line[],
  count: number,
): Fitted[] {
  return shapes
    .map((s) => ({ s, cost: s.blocked + crowdingAmong(s.line, still, task.header.tubeToTube) }))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, count)
    .map(({ s }) => fitted(design, task, r, s))
    .sort((a, b) => a.cost - b.cost);
}

const NOTHING = { kind: 'surrounding', id: '' } as const;

function told(problem: LayoutProblem, task: Task, x: Float64Array, cost: number, miss: number): Settled {
  const blame = task.runners.map(() => 0);
  if (miss > FEASIBLE) {
    const rows = new RowBuilder(problem.unknowns, problem.lever);
    gatherRows(problem, task.obstacles, x, rows);
    const numbers = new Map(task.runners.map((r) => [`runners/${r.resolved.runner.id}`, r.index]));
    for (const [i, key] of rows.keys.entries()) {
      const r = rows.residual(i);
      if (r === 0) continue;
      const [, where = '', other = ''] = key.split('|');
      for (const path of [where.split('/').slice(0, 2).join('/'), other]) {
        const k = numbers.get(path);
        if (k !== undefined) blame[k] = blame[k]! + r * r;
      }
    }
  }
  // A continuous bend that came apart is one bend too many, which no row counts.
  let excess = 0;
  for (const r of problem.runners) {
    const over = r.at < 0 ? 0 : r.path.bends - r.continuous.filter(Boolean).length - r.resolved.tooling.maxBends;
    if (over <= 0) continue;
    excess += over * TOO_MANY;
    blame[task.runners.find((one) => one.resolved.runner.id === r.resolved.runner.id)!.index]! += over * TOO_MANY;
  }
  place(problem, x);
  if (excess > 0) return { design: designAt(problem), miss: Math.max(miss, 1), cost: cost + excess, blame };
  // What does not hold yet is drawn again from its points: continuous bends must be known there again.
  return { design: miss > FEASIBLE ? rejoinedDesign(problem) : designAt(problem), miss, cost, blame };
}

/** The design of the paths as they stand, with continuous bends set exactly again. */
function rejoinedDesign(problem: LayoutProblem): Design {
  const design = designAt(problem);
  const broken = problem.runners.filter((r) => r.at >= 0 && r.continuous.includes(true));
  if (broken.length === 0) return design;
  const points = new Map(
    broken.map((r) => {
      const { runner } = r.resolved;
      const drawn = design.runners.find(({ id }) => id === runner.id)!.points!;
      return [runner.id, rejoined(drawn, [...r.path.radii], r.continuous, r.from.pose, r.to.pose)] as const;
    }),
  );
  const exact = (runner: Runner): Runner => ({ ...runner, points: points.get(runner.id)! });
  return { ...design, runners: design.runners.map((runner) => (points.has(runner.id) ? exact(runner) : runner)) };
}
