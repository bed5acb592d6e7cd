/**
 * Where a group's length is out of reach: the header that comes nearest to it with every other rule holding and its
 * lengths still equal. Lengths are walked from those drawn toward those asked, each step starting from the last header
 * that held, and the step halved where none is found. mm.
 */
import type { Obstacle } from '../check/obstacles';
import { type LayoutProblem, meanLength, place } from './layoutProblem';
import { type Solved, type SolveOptions, solve } from './solve';

/** Parts of the way from drawn to asked lengths: the first step, and where halving stops. */
const FIRST_STEP = 1 / 4;
const LAST_STEP = 1 / 256;

/** @returns `solved` null where not even the drawn lengths, made equal, can be held */
export function nearestLengths(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  options: SolveOptions,
): { readonly solved: Solved | null; readonly iterations: number } {
  place(problem, problem.start);
  const drawn = problem.groups.map(meanLength);
  const toward = (part: number, from: Float64Array): Solved => {
    const groups = problem.groups.map((g, i) => ({ ...g, length: drawn[i]! + part * (g.length - drawn[i]!) }));
    return solve({ ...problem, groups }, obstacles, from, from, options);
  };
  let iterations = 0;
  let solved: Solved | null = null;
  let part = 0;
  for (let step = FIRST_STEP; step >= LAST_STEP && part < 1 && !options.cancelled?.(); ) {
    const next = solved ? Math.min(1, part + step) : 0;
    const found = toward(next, solved?.x ?? problem.start);
    iterations += found.iterations;
    if (found.miss <= options.feasible) {
      solved = found;
      part = next;
    } else if (solved) step /= 2;
    else break;
  }
  return { solved, iterations };
}
