/**
 * From a rough drawing to one in which every rule holds, or nearly: Levenberg and Marquardt's method on what the rules are
 * missed by, all runners and movable merges together. mm.
 */
import type { Obstacle } from '../check/obstacles';
import type { LayoutProblem } from '../layout/layoutProblem';
import { searchedTo } from '../layout/linkSearch';
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
  /** How often rules that hold each other up may be pressed. */
  readonly presses?: number;
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
/**
 * Stuck between rules that hold each other up, those that are missed are made to count more: what was a valley becomes a
 * slope, while a header in which all hold stays as good as it was. Weights grow by so much, up to the heaviest.
 */
const PRESSED = 2.5;
const HEAVIEST = 40;
/** Only where so little is missed is it worth pressing, mm². */
const PROMISING = 500;

/** Memory for one relaxing after another: there are thousands, and most are short. */
const spare: readonly [RowBuilder, RowBuilder] = [
  new RowBuilder(0, new Float64Array(0)),
  new RowBuilder(0, new Float64Array(0)),
];

/** Where along a tube something is nearest need not be found finer than this before all nearly holds, mm. */
const COARSE = 0.3;

export const relax = (
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  start: Float64Array,
  options: RelaxOptions,
): Relaxed => searchedTo(COARSE, () => relaxed(problem, obstacles, start, options));

function relaxed(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  start: Float64Array,
  { steps, enough, presses = 0, stopped }: RelaxOptions,
): Relaxed {
  const lever = Float64Array.from(problem.lever);
  // A group's free length must not run away to where only the straightened rules would have it.
  for (const g of problem.groups) if (g.at >= 0) lever[g.at] = 1;
  // The rules as they stand, and as they would after a step: one that is not taken leaves those that stand as they are.
  let [rows, then] = spare;
  rows.begin(problem.unknowns, lever);
  then.begin(problem.unknowns, lever);
  const step = new ElasticStep(lever);
  const weights = new Map<string, number>();
  let x = Float64Array.from(start);
  let now = measured(problem, obstacles, x, rows, weights);
  let best = { x, cost: now.cost, greatest: now.greatest };
  let damping = DAMPING;
  let mark = now.weighed;
  let taken = 0;
  let since = 0;
  let worse = 0;
  let pressed = 0;
  while (taken < steps && now.greatest > enough && !stopped?.()) {
    taken++;
    since++;
    const promised = step.solve(rows, damping);
    let longest = 0;
    for (let k = 0; k < x.length; k++) longest = Math.max(longest, Math.abs(step.y[k]!) * lever[k]!);
    const share = Math.min(1, LONGEST / Math.max(longest, 1e-12));
    const next = new Float64Array(x.length);
    for (let k = 0; k < x.length; k++) next[k] = x[k]! + share * step.y[k]!;
    const after = measured(problem, obstacles, next, then, weights);
    const ratio = (now.weighed - after.weighed) / Math.max(now.weighed - promised, 1e-12);
    let stuck = false;
    if (after.weighed < now.weighed) {
      x = next;
      [rows, then] = [then, rows];
      now = after;
      worse = 0;
      damping = Math.max(LEAST_DAMPING, damping * (ratio > 0.6 ? 0.25 : ratio > 0.2 ? 0.7 : 2));
      if (now.cost < best.cost) best = { x, cost: now.cost, greatest: now.greatest };
    } else {
      stuck = ++worse === SETBACKS;
      damping = Math.min(MOST_DAMPING, damping * 10);
    }
    if (since % PATIENCE === 0) {
      if (now.weighed > (1 - GAIN) * mark) stuck = true;
      mark = now.weighed;
    }
    if (!stuck) continue;
    if (pressed === presses || best.cost > PROMISING) break;
    pressed++;
    press(problem, obstacles, x, rows, weights);
    now = measured(problem, obstacles, x, rows, weights);
    mark = now.weighed;
    damping = DAMPING;
    since = 0;
    worse = 0;
  }
  return now.greatest <= enough
    ? { x, cost: now.cost, greatest: now.greatest, steps: taken }
    : { ...best, steps: taken };
}

function press(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  x: Float64Array,
  rows: RowBuilder,
  weights: Map<string, number>,
): void {
  gatherRows(problem, obstacles, x, rows);
  const missed = new Set<string>();
  for (const [i, key] of rows.keys.entries()) if (Math.abs(rows.residual(i)) > MISSED) missed.add(ruleOf(key));
  for (const rule of missed) weights.set(rule, Math.min(HEAVIEST, (weights.get(rule) ?? 1) * PRESSED));
}

/** Missed by less than this is nothing to press for, mm. */
const MISSED = 0.2;

const ruleOf = (key: string): string => key.slice(0, key.lastIndexOf('|'));

type Measured = {
  readonly cost: number;
  readonly greatest: number;
  /** The cost as the weights have it. */
  readonly weighed: number;
};

function measured(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  x: Float64Array,
  rows: RowBuilder,
  weights: ReadonlyMap<string, number>,
): Measured {
  gatherRows(problem, obstacles, x, rows);
  let cost = 0;
  let greatest = 0;
  let weighed = 0;
  for (let i = 0; i < rows.count; i++) {
    const r = rows.residual(i);
    const weight = weights.size > 0 ? (weights.get(ruleOf(rows.keys[i]!)) ?? 1) : 1;
    if (weight !== 1) rows.weigh(i, weight);
    cost += (r * r) / 2;
    weighed += (weight * weight * r * r) / 2;
    greatest = Math.max(greatest, Math.abs(r));
  }
  return { cost, greatest, weighed };
}
