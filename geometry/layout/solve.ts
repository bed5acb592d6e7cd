/**
 * The nearest point to a target at which every rule holds: a sequence of least-distance programs over linearised rules.
 * At a fixed point the move from the target is a sum of the pressing rules' gradients with positive multipliers, which
 * is the condition for a (local) nearest point; lengths converge quadratically.
 */

import type { Obstacle } from '../check/obstacles';
import { bodyRows } from './bodyRows';
import { contactRows } from './contactRows';
import { endRows } from './endRows';
import { type LayoutProblem, place } from './layoutProblem';
import { leastDistance } from './leastDistanceProgram';
import { RowBuilder } from './rowBuilder';
import { shapeRows } from './shapeRows';

export type SolveOptions = {
  readonly maxIterations: number;
  /** Rules missed by less than this hold, mm. */
  readonly feasible: number;
  /** A step smaller than this is no longer worth taking for nearness alone, mm. */
  readonly settled: number;
  /** Steps that are pulled toward the target; after these only rules count. Fewer for a drag, whose next ask goes on. */
  readonly nearing?: number;
  /** Rules that pressed last time, by key: tried first. */
  readonly warm?: ReadonlySet<string>;
  /** Checked between iterations. */
  readonly cancelled?: () => boolean;
};

export type Solved = {
  readonly x: Float64Array;
  /** Greatest miss of any rule, mm. */
  readonly miss: number;
  readonly iterations: number;
  /** Whether the pull toward the target ended for want of steps: from `x` it might come nearer. */
  readonly isCutShort: boolean;
  /** Keys of the rules that pressed in the last step. */
  readonly warm: ReadonlySet<string>;
};

/** Longest move of any unknown in one step, mm: linearised bends are good for about so far. */
const LONGEST_STEP = 30;
/** The springs that hold the rules (see leastDistance): a miss of 1e-6 mm for a pull of 1000 mm. */
export const STIFFNESS = 1e9;
const NEARING = 12;
/** Rules missed by no more than this are as good as held while stepping, mm. */
const NEARLY = 0.02;
/** Rules must be held this well before swinging ends the pull, mm. */
const SWINGING = 0.5;
/** Halvings of a step that made things worse. */
const HALVINGS = 3;

/**
 * @param target the vector to stay near
 * @param start where to begin, often the target itself
 */
export function solve(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  target: Float64Array,
  start: Float64Array,
  options: SolveOptions,
): Solved {
  const { unknowns, dearness, lever } = problem;
  const rows = new RowBuilder(unknowns, dearness);
  const measure = (x: Float64Array): { squares: number; greatest: number } => {
    gatherRows(problem, obstacles, x, rows);
    return rows.violation();
  };

  let x = Float64Array.from(start);
  let anchor = target;
  let now = measure(x);
  let best = { x, ...now };
  let warm: ReadonlySet<string> = options.warm ?? new Set();
  let previous = new Float64Array(unknowns);
  let iterations = 0;
  let isCutShort = false;
  while (iterations < options.maxIterations && !options.cancelled?.()) {
    iterations++;
    const y = scaledMove(x, anchor, dearness);
    const keys = [...rows.keys];
    const warmRows = keys.flatMap((key, i) => (warm.has(key) ? [i] : []));
    const { y: next, multipliers } = leastDistance(rows.rows(y), STIFFNESS, warmRows);
    warm = new Set(keys.filter((_, i) => multipliers[i]! > 0));
    const step = next.map((value, k) => value - y[k]!);
    const longest = step.reduce((most, s, k) => Math.max(most, (Math.abs(s) / dearness[k]!) * lever[k]!), 0);
    let share = Math.min(1, LONGEST_STEP / Math.max(longest, Number.MIN_VALUE));
    const from = x;
    for (let halving = 0; ; halving++) {
      x = from.map((value, k) => value + (share * step[k]!) / dearness[k]!);
      const after = measure(x);
      const better = after.squares <= now.squares || after.greatest <= NEARLY;
      if (better || halving === HALVINGS) {
        now = after;
        break;
      }
      share /= 2;
    }
    if (now.greatest <= options.feasible || now.squares < best.squares) best = { x, ...now };
    const settled = longest * share < options.settled;
    if (now.greatest <= options.feasible && (settled || anchor !== target)) break;
    // Rules curve more than the linearised step knows: where it swings back and forth, or takes long, the pull toward
    // the target ends and only the shortest corrections remain, which converge quadratically.
    const swings = now.greatest <= SWINGING && product(step, previous) < 0;
    if (anchor === target) isCutShort = !settled && !swings;
    if (settled || swings || iterations >= (options.nearing ?? NEARING) || anchor !== target) anchor = x;
    previous = step;
  }
  return { x: best.x, miss: best.greatest, iterations, isCutShort, warm };
}

/** Every rule as rows about `x`; leaves the problem's paths there. */
export function gatherRows(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  x: Float64Array,
  rows: RowBuilder,
): void {
  place(problem, x);
  rows.clear();
  shapeRows(problem, x, rows);
  const links = contactRows(problem, obstacles, rows);
  endRows(problem, obstacles, links, rows);
  bodyRows(problem, x, obstacles, links, rows);
}

const product = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, k) => sum + value * b[k]!, 0);

/** From `target` to `x`, each unknown weighed by how dear it is. */
export function scaledMove(x: Float64Array, target: Float64Array, dearness: Float64Array): Float64Array {
  return x.map((value, k) => (value - target[k]!) * dearness[k]!);
}
