/**
 * The nearest point to a target at which every rule holds: a sequence of least-distance programs over linearised rules.
 * At a fixed point the move from the target is a sum of the pressing rules' gradients with positive multipliers, which
 * is the condition for a (local) nearest point; lengths converge quadratically.
 */
import { bodyRows } from './bodyRows';
import { contactRows, type SolverObstacle } from './contactRows';
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
  /** Checked between iterations. */
  readonly cancelled?: () => boolean;
};

export type Solved = {
  readonly x: Float64Array;
  /** Greatest miss of any rule, mm. */
  readonly miss: number;
  readonly iterations: number;
};

/** Longest move of any unknown in one step, mm: linearised bends are good for about so far. */
const LONGEST_STEP = 30;
/** The springs that hold the rules (see leastDistance): a miss of 1e-6 mm for a pull of 10 mm. */
const STIFFNESS = 1e7;
/** Halvings of a step that made things worse. */
const HALVINGS = 3;

/**
 * @param target the vector to stay near
 * @param start where to begin, often the target itself
 */
export function solve(
  problem: LayoutProblem,
  obstacles: readonly SolverObstacle[],
  target: Float64Array,
  start: Float64Array,
  options: SolveOptions,
): Solved {
  const { unknowns, dearness } = problem;
  const rows = new RowBuilder(unknowns, dearness);
  const measure = (x: Float64Array): { squares: number; greatest: number } => {
    place(problem, x);
    rows.clear();
    shapeRows(problem, x, rows);
    const links = contactRows(problem, obstacles, rows);
    bodyRows(problem, x, obstacles, links, rows);
    return rows.violation();
  };

  let x = Float64Array.from(start);
  let now = measure(x);
  let best = { x, ...now };
  let warm = new Set<string>();
  let iterations = 0;
  while (iterations < options.maxIterations && !options.cancelled?.()) {
    iterations++;
    const y = scaledMove(x, target, dearness);
    const keys = [...rows.keys];
    const { y: next, multipliers } = leastDistance(
      rows.rows(y),
      STIFFNESS,
      keys.flatMap((key, i) => (warm.has(key) ? [i] : [])),
    );
    warm = new Set(keys.filter((_, i) => multipliers[i]! > 0));
    const step = new Float64Array(unknowns);
    let longest = 0;
    for (let k = 0; k < unknowns; k++) {
      step[k] = (next[k]! - y[k]!) / dearness[k]!;
      longest = Math.max(longest, Math.abs(next[k]! - y[k]!));
    }
    let share = Math.min(1, LONGEST_STEP / Math.max(longest, 1e-12));
    const from = x;
    for (let halving = 0; ; halving++) {
      x = from.map((value, k) => value + share * step[k]!);
      const after = measure(x);
      const better = after.squares <= now.squares * 1.0001 || after.greatest <= Math.max(options.feasible, 0.02);
      if (better || halving === HALVINGS) {
        now = after;
        break;
      }
      share /= 2;
    }
    if (now.greatest <= options.feasible || now.squares < best.squares) best = { x, ...now };
    if (now.greatest <= options.feasible && longest * share < options.settled) break;
  }
  return { x: best.x, miss: best.greatest, iterations };
}

function scaledMove(x: Float64Array, target: Float64Array, dearness: Float64Array): Float64Array {
  return x.map((value, k) => (value - target[k]!) * dearness[k]!);
}
