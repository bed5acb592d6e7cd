/**
 * From a rough drawing to one in which every rule holds, or nearly: Levenberg and Marquardt's method on what the rules are
 * missed by, all runners and movable merges together. mm.
 */
import type { Obstacle } from '../check/obstacles';
import type { LayoutProblem } from '../layout/layoutProblem';
import { RowBuilder } from '../layout/rowBuilder';
import { gatherRows } from '../layout/solve';
import { ElasticStep } from './elasticStep';

export type Relaxed = {
  readonly x: Float64Array;
  /** Half the sum of squares of what is missed, mm². */
  readonly cost: number;
  /** Greatest miss, mm. */
  readonly greatest: number;
  readonly steps: number;
};

export type RelaxOptions = {
  readonly steps: number;
  /** Good enough to hand over to the exact solver, mm. */
  readonly enough: number;
  readonly stopped?: () => boolean;
};

/** Of the damping: at the start, and its bounds. */
const DAMPING = 0.02;
const LEAST_DAMPING = 1e-6;
const MOST_DAMPING = 1e4;
/** Longest move of any unknown in one step, mm. */
const LONGEST = 80;
/** A run of steps that gains less than this part of the cost is stuck: what comes to hold does so within a few steps. */
const PATIENCE = 3;
const GAIN = 0.1;
/** Steps in a row that only make it worse. */
const SETBACKS = 2;

export const hist: any[] = [];
export function relax(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  start: Float64Array,
  { steps, enough, stopped }: RelaxOptions,
): Relaxed {
  const rows = new RowBuilder(problem.unknowns, problem.lever);
  const step = new ElasticStep(problem.lever);
  let x = Float64Array.from(start);
  gatherRows(problem, obstacles, x, rows);
  let now = missed(rows);
  let damping = DAMPING;
  let mark = now.cost;
  let taken = 0;
  let worse = 0;
  const trail: number[] = [];
  while (taken < steps && now.greatest > enough && !stopped?.()) {
    taken++;
    trail.push(now.cost);
    const promised = step.solve(rows, damping);
    let longest = 0;
    for (let k = 0; k < x.length; k++) longest = Math.max(longest, Math.abs(step.y[k]!) * problem.lever[k]!);
    const share = Math.min(1, LONGEST / Math.max(longest, 1e-12));
    const next = x.map((value, k) => value + share * step.y[k]!);
    gatherRows(problem, obstacles, next, rows);
    const after = missed(rows);
    const ratio = (now.cost - after.cost) / Math.max(now.cost - promised, 1e-12);
    if (after.cost < now.cost) {
      x = next;
      now = after;
      worse = 0;
      damping = Math.max(LEAST_DAMPING, damping * (ratio > 0.6 ? 0.25 : ratio > 0.2 ? 0.7 : 2));
    } else {
      if (++worse === SETBACKS) break;
      damping = Math.min(MOST_DAMPING, damping * 10);
      gatherRows(problem, obstacles, x, rows);
    }
    if (taken % PATIENCE === 0) {
      if (now.cost > (1 - GAIN) * mark) break;
      mark = now.cost;
    }
  }
  hist?.push([now.greatest <= enough ? 1 : 0, taken, problem.unknowns, trail]);
  return { x, ...now, steps: taken };
}

function missed(rows: RowBuilder): { cost: number; greatest: number } {
  let cost = 0;
  let greatest = 0;
  for (let i = 0; i < rows.count; i++) {
    const r = rows.residual(i);
    cost += (r * r) / 2;
    greatest = Math.max(greatest, Math.abs(r));
  }
  return { cost, greatest };
}
