/**
 * A layout that holds, with less turning in all: pulled along the slope of its bend angles, and back to where every rule
 * holds, step by step while it gains. A bend that comes to nothing on the way is left out.
 */
import { resolveHeader } from '../header/resolve';
import { routedOnly } from '../layout/balance';
import { pushTurn } from '../layout/bendPath';
import { designAt, type LayoutProblem, layoutProblem, place, pull } from '../layout/layoutProblem';
import { solve } from '../layout/solve';
import { FEASIBLE, type Settled } from './drawing';
import type { Task } from './task';

/** Pulls: the first one's length, what it grows and shrinks by, and where it is too short to go on, mm. */
const FIRST = 12;
const GROWN = 1.6;
const SHRUNK = 0.4;
const LEAST = 0.6;
const MOST = 24;
/** A pull that gains less than this was the last, radians. */
const GAIN = 0.004;
const MOST_PULLS = 25;
const STEPS = 8;

export function smoothed(task: Task, from: Settled, stopped: () => boolean): Settled {
  const problem = layoutProblem(routedOnly(resolveHeader(from.design)));
  if (problem.unknowns === 0) return from;
  let x = problem.start;
  let turned = turning(problem, x);
  let length = FIRST;
  for (let k = 0; k < MOST_PULLS && length >= LEAST && !stopped(); k++) {
    const slope = slopeOfTurning(problem, x);
    const steepest = slope.reduce((most, s, i) => Math.max(most, Math.abs(s) / problem.lever[i]!), 0);
    if (steepest === 0) break;
    const target = x.map((value, i) => value - (length * slope[i]!) / (steepest * problem.lever[i]! ** 2));
    const found = solve(problem, task.obstacles, target, x, {
      maxIterations: STEPS,
      nearing: 3,
      feasible: FEASIBLE,
      settled: 0.2,
      cancelled: stopped,
    });
    const now = found.miss <= FEASIBLE ? turning(problem, found.x) : Infinity;
    const gain = turned - now;
    if (gain > 0) {
      x = found.x;
      turned = now;
      length = Math.min(MOST, length * GROWN);
      if (gain < GAIN) break;
    } else length *= SHRUNK;
  }
  place(problem, x);
  return { ...from, design: designAt(problem) };
}

/** All turns together, radians. */
function turning(problem: LayoutProblem, x: Float64Array): number {
  place(problem, x);
  let sum = 0;
  for (const { path, at } of problem.runners) if (at >= 0) for (const turn of path.turns) sum += turn;
  return sum;
}

function slopeOfTurning(problem: LayoutProblem, x: Float64Array): Float64Array {
  place(problem, x);
  const slope = new Float64Array(problem.unknowns);
  for (const r of problem.runners) {
    if (r.at < 0) continue;
    for (let i = 0; i < r.path.bends; i++) pushTurn(r.path, i, 1);
    pull(r, slope, 0);
  }
  return slope;
}
