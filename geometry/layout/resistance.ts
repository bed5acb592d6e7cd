/**
 * What keeps a held thing from where it is asked to be. At the nearest place that every rule allows, the way still
 * missing is a sum of the pressing rules' gradients times their multipliers: each rule's share of it says how much it
 * resists (the condition of Karush, Kuhn and Tucker). mm.
 */
import type { Obstacle } from '../check/obstacles';
import type { CheckReport, Margin, RuleName } from '../check/report';
import type { Limit } from './balance';
import type { LayoutProblem } from './layoutProblem';
import { leastDistance } from './leastDistanceProgram';
import { RowBuilder } from './rowBuilder';
import { gatherRows, STIFFNESS, scaledMove } from './solve';

/** Shares smaller than this part of the whole are left unsaid. */
const SAID = 0.02;
const MOST_NAMED = 3;

/** The rules that resist at `x`, the strongest first; empty where nothing is held among the unknowns. */
export function resistingRules(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  target: Float64Array,
  x: Float64Array,
): Limit[] {
  const { held, unknowns, dearness } = problem;
  if (held.length === 0) return [];
  const rows = new RowBuilder(unknowns, dearness);
  gatherRows(problem, obstacles, x, rows);
  const linear = rows.rows(scaledMove(x, target, dearness));
  const { y, multipliers } = leastDistance(linear, STIFFNESS, []);
  const pressing = new Map<string, { limit: Limit; share: number; force: number }>();
  let whole = 0;
  for (const [i, key] of rows.keys.entries()) {
    if (multipliers[i] === 0) continue;
    let along = 0;
    for (const k of held) along += linear.gradients[i * unknowns + k]! * y[k]!;
    whole += multipliers[i]! * along;
    const [rule, where = '', other = ''] = key.split('|');
    const limit: Limit = { rule: rule as Limit['rule'], where, other };
    const name = `${rule}|${where}|${other}`;
    const { share, force } = pressing.get(name) ?? { share: 0, force: 0 };
    pressing.set(name, { limit, share: share + multipliers[i]! * along, force: force + Math.abs(multipliers[i]!) });
  }
  const found = [...pressing.values()];
  const resisting = found.filter(({ share }) => share > SAID * whole).sort((a, b) => b.share - a.share);
  // Where no straight step shows what is in the way, the way bends: whatever presses hardest bends it.
  const named = resisting.length > 0 ? resisting : found.sort((a, b) => b.force - a.force).slice(0, MOST_NAMED);
  return named.map(({ limit }) => limit);
}

/** The rules that are missed at `x`: what stands in the way where no place was found at all. */
export function missedRules(problem: LayoutProblem, obstacles: readonly Obstacle[], x: Float64Array): Limit[] {
  const rows = new RowBuilder(problem.unknowns, problem.dearness);
  gatherRows(problem, obstacles, x, rows);
  return rows.missed() as Limit[];
}

/** The rules that `check` found broken, with the other thing where that is the tightest place and so is named. */
export function brokenRules({ problems, clearance: { tubeToTube, surroundings } }: CheckReport): Limit[] {
  const tightest: { readonly [Rule in RuleName]?: Limit } = {
    ...(tubeToTube && { 'tube-to-tube': between('tube-to-tube', 'runners', tubeToTube) }),
    ...(surroundings && { surroundings: between('surroundings', 'surroundings', surroundings) }),
  };
  return problems.map(({ rule, where }) => {
    const found = tightest[rule];
    return found?.where === where ? found : { rule, where, other: '' };
  });
}

const between = (rule: RuleName, kind: string, { between: [one, other] }: Margin): Limit => ({
  rule,
  where: `runners/${one}`,
  other: `${kind}/${other}`,
});
