/** A whole header as drawn in one try: the design with every line, made exact by the solver, and who is to blame where it is not. */
import type { Design, Runner } from '../../shared/design/types';
import { resolveHeader } from '../header/resolve';
import { designAt, type LayoutProblem, layoutProblem, place } from '../layout/layoutProblem';
import { RowBuilder } from '../layout/rowBuilder';
import { gatherRows, solve } from '../layout/solve';
import { relax } from './relax';
import type { Sketch } from './sketch';
import type { Task } from './task';

/** The design with one sketch for each runner that is not locked. */
export function withSketches(design: Design, task: Task, sketches: readonly (Sketch | null)[]): Design {
  return {
    ...design,
    runners: design.runners.map((runner, i): Runner => {
      const s = sketches[i];
      if (!s) return runner;
      const usual = task.runners[i]!.resolved.tooling.centerlineRadius;
      const { radii: _radii, ...rest } = runner;
      const own = s.radii.some((r) => r !== usual) ? { radii: s.radii } : {};
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
const NEAR = 0.5;
/** Lengths end far inside the promised 0.001 mm. */
export const FEASIBLE = 2e-5;
const EXACT_STEPS = 12;

export function settled(design: Design, task: Task, { steps, stopped }: Effort): Settled {
  const problem = layoutProblem(resolveHeader(design));
  const rough = relax(problem, task.obstacles, problem.start, { steps, enough: NEAR, stopped });
  if (rough.greatest > NEAR) return told(problem, task, rough.x, rough.cost, rough.greatest);
  const exact = solve(problem, task.obstacles, rough.x, rough.x, {
    maxIterations: EXACT_STEPS,
    feasible: FEASIBLE,
    settled: 0.5,
    cancelled: stopped,
  });
  return told(problem, task, exact.x, rough.cost, exact.miss);
}

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
  place(problem, x);
  return { design: designAt(problem), miss, cost, blame };
}
