/**
 * Makes one runner as short, or as long, as it goes from where it is. Each step is the least-distance program of the layout
 * solver about the present place, pulled along the length's slope (sequential quadratic programming); it is taken where length
 * and missed rules together gain, else the pull is shortened. A place that no pull leaves is a local least: exact where
 * rules meet in a corner, as they mostly do. mm.
 */
import type { Obstacle } from '../check/obstacles';
import { pushLength } from '../layout/bendPath';
import { type LayoutProblem, place, pull } from '../layout/layoutProblem';
import { leastDistance, type Rows } from '../layout/leastDistanceProgram';
import { RowBuilder } from '../layout/rowBuilder';
import { gatherRows, STIFFNESS, solve } from '../layout/solve';

/** Rules missed by less than this hold. */
export const FEASIBLE = 2e-5;
/** Worth a last few corrections. */
const NEARLY = 0.5;
/** A step shorter than this ends it. */
const SETTLED = 0.002;
const FIRST_PULL = 60;
const LAST_PULL = 0.05;
const LONGER = 3;
const SHORTER = 1 / 5;
/** Longest move of any unknown in one step: linearised bends are good for about so far. */
const LONGEST_STEP = 40;
const SHORTEST_STEP = 1;
/** What a millimetre of missed rule weighs against one of length: twice what the rules that press give back, within these. */
const LEAST_PENALTY = 2;
const MOST_PENALTY = 12;
/** Less is no gain. */
const GAIN = 1e-4;
const LAST_CORRECTIONS = 8;
/** So many steps that gain less than asked end it. */
const STALLED = 8;

export type Cancelled = () => boolean;

export type Stretched = { readonly x: Float64Array; readonly length: number };

export type Way = -1 | 0 | 1;

export type Stretch = {
  /** −1 for shorter, 1 for longer, 0 only to where every rule holds. */
  readonly way: Way;
  readonly steps: number;
  /** What several steps together must gain for it to go on. */
  readonly gain?: number;
  /** Ends it early. */
  readonly enough?: (length: number) => boolean;
  readonly cancelled?: Cancelled | undefined;
};

/** @returns null where not every rule comes to hold */
export function stretch(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  from: Float64Array,
  { way, steps, gain = 0, enough = () => false, cancelled = () => false }: Stretch,
): Stretched | null {
  const { unknowns, dearness, lever } = problem;
  const rows = new RowBuilder(unknowns, dearness);
  const look = (x: Float64Array) => {
    gatherRows(problem, obstacles, x, rows);
    const { length } = problem.runners[0]!.path;
    const { squares, greatest } = rows.violation();
    return { x, length, greatest, missed: Math.sqrt(squares) };
  };
  type Place = ReturnType<typeof look>;
  const cost = ({ length, missed }: Place, penalty: number): number => penalty * missed - way * length;
  let now = look(from);
  let slope = way === 0 ? new Float64Array(unknowns) : slopeHere(problem, dearness);
  let program = linearised(rows, unknowns);
  let warm: ReadonlySet<string> = new Set();
  let reach = FIRST_PULL;
  let longestStep = LONGEST_STEP;
  const trail: number[] = [];
  for (let k = 0; k < steps && reach > LAST_PULL && !cancelled(); k++) {
    if (now.greatest <= FEASIBLE && (way === 0 || enough(now.length))) break;
    const y = slope.map((g) => -way * reach * g);
    const active = program.keys.flatMap((key, i) => (warm.has(key) ? [i] : []));
    const { y: next, multipliers } = leastDistance(about(program.rows, y), STIFFNESS, active);
    const step = next.map((value, i) => (value - y[i]!) / dearness[i]!);
    const longest = step.reduce((most, s, i) => Math.max(most, Math.abs(s) * lever[i]!), 0);
    if (longest < SETTLED && now.greatest < NEARLY) break;
    const share = Math.min(1, longestStep / longest);
    const after = look(now.x.map((value, i) => value + share * step[i]!));
    const pressing = Math.sqrt(multipliers.reduce((sum, m) => sum + m * m, 0)) / reach;
    const penalty = way === 0 ? 1 : Math.min(MOST_PENALTY, Math.max(LEAST_PENALTY, 2 * pressing));
    trail.push(cost(now, penalty));
    if (now.greatest < NEARLY && trail.length > STALLED && trail.at(-1 - STALLED)! - trail.at(-1)! < gain) break;
    if (cost(after, penalty) > cost(now, penalty) - GAIN) {
      // A step that is all correction, or was cut short already, is shortened itself.
      if (way === 0) longestStep = Math.min(longest, longestStep) / 2;
      else reach *= SHORTER;
      if (longestStep < SHORTEST_STEP) break;
      continue;
    }
    now = after;
    longestStep = Math.min(LONGEST_STEP, 2 * longestStep);
    reach = Math.min(reach * LONGER, 10 * FIRST_PULL);
    if (way !== 0) slope = slopeHere(problem, dearness);
    warm = new Set(program.keys.filter((_, i) => multipliers[i]! > 0));
    program = linearised(rows, unknowns);
  }
  if (now.greatest > NEARLY) return null;
  if (now.greatest <= FEASIBLE) return now;
  const last = solve(problem, obstacles, now.x, now.x, {
    maxIterations: LAST_CORRECTIONS,
    nearing: 0,
    feasible: FEASIBLE,
    settled: SETTLED,
  });
  return last.miss <= FEASIBLE ? { x: last.x, length: lengthAt(problem, last.x) } : null;
}

type Program = { readonly rows: Rows; readonly keys: readonly string[] };

/** The rows as they are now, kept while the builder goes on: about the place itself, so that bounds are what is missing. */
function linearised(rows: RowBuilder, unknowns: number): Program {
  const found = rows.rows(new Float64Array(unknowns));
  return {
    rows: { ...found, gradients: found.gradients.slice(0, found.count * found.columns) },
    keys: [...rows.keys],
  };
}

/** The same rows for a target that lies `y` behind. */
function about(rows: Rows, y: Float64Array): Rows {
  const { columns, gradients } = rows;
  const bounds = rows.bounds.map((bound, i) => {
    let along = bound;
    for (let k = 0; k < columns; k++) along += gradients[i * columns + k]! * y[k]!;
    return along;
  });
  return { ...rows, bounds };
}

export function lengthAt(problem: LayoutProblem, x: Float64Array): number {
  place(problem, x);
  return problem.runners[0]!.path.length;
}

/** The length's slope where the paths stand, over scaled unknowns. */
function slopeHere(problem: LayoutProblem, dearness: Float64Array): Float64Array {
  const [r] = problem.runners;
  const slope = new Float64Array(problem.unknowns);
  pushLength(r!.path, 1);
  pull(r!, slope, 0);
  return slope.map((g, i) => g / dearness[i]!);
}
