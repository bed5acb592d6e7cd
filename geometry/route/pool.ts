/** Shapes worth trying for one runner at one inlet, cheapest first. */
import type { Barrier } from './crowd';
import { propose } from './propose';
import { pathOf, type Sketch, sketched } from './sketch';
import { bundlesOf, endOf, type Stage, startOf } from './stage';
import type { RunnerTask } from './task';

/** Costs in mm², as crowding is. */
export const BEND_COST = 600;
const TURN_COST = 60;

export type Draws = {
  /** How many shapes are drawn with 2, 3, 4 … points. */
  readonly ofPoints: readonly number[];
  readonly kept: number;
};

export const costOf = (s: Sketch, bendCost: number): number => s.blocked + bendCost * (s.bends - 2) + TURN_COST * s.turned;

export function pool(
  stage: Stage,
  r: RunnerTask,
  inlet: number,
  barriers: readonly Barrier[],
  length: number | null,
  { ofPoints, kept }: Draws,
  bendCost: number,
  random: () => number,
): Sketch[] {
  const start = startOf(stage, r);
  const end = endOf(stage, r, inlet);
  const bundles = bundlesOf(stage, r);
  const found: Sketch[] = [];
  for (const [k, count] of ofPoints.entries()) {
    const points = k + 2;
    if (points > r.resolved.tooling.maxBends) break;
    for (let i = 0; i < count; i++) {
      const drawn = propose(r, start, end, points, length, random);
      if (!drawn) continue;
      const path = pathOf(start, end, drawn.points, drawn.radii);
      found.push(sketched(r, inlet, path, drawn.points, drawn.joined, bundles, barriers));
    }
  }
  return found.sort((a, b) => costOf(a, bendCost) - costOf(b, bendCost)).slice(0, kept);
}
