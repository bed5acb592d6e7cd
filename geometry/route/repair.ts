/** A header that does not hold yet, changed in one of a few ways at the runners that are to blame, and settled again. */
import { type Header, resolveHeader } from '../header/resolve';
import { lengthAmong, linesOf } from './among';
import { withBendMore } from './bendMore';
import { byWeight, choose } from './choose';
import { crowdingAmong } from './crowd';
import { type Fitted, fitted, knocked, type Settled, settled, sharesOfBlame, withSketches } from './drawing';
import type { Line } from './line';
import type { Sketch } from './sketch';
import { barriersOf, type Stage } from './stage';
import { ofPoints, rough, type Shelf } from './stock';
import type { RunnerTask, Task } from './task';

export type RepairOptions = {
  readonly shelf: Shelf;
  readonly depth: number;
  /** What a bend more is worth, mm² of crowding. */
  readonly bendCost: number;
  /** How much chance may outweigh cost, mm². */
  readonly noise: number;
  readonly steps: number;
  readonly stopped: () => boolean;
};

/**
 * Shares of the ways: knocked out of place, one bend more, one runner laid again, two that change inlets, two laid again.
 * By what they gained in a second on hard headers one laid again is the poorest, but where collectors stand still.
 */
const WAYS = { knock: 0.15, bend: 0.25, again: 0.15, exchange: 0.2, two: 0.25 };
/** Shapes of one runner that are fitted among the others. */
const FITTED = 6;
/** Draws of 2, 3, 4 … points for a runner that is laid again, and how many of the best are looked at. */
const DRAWS = [24, 48, 36, 36];
const KEPT = 16;

type Ground = { readonly header: Header; readonly stage: Stage; readonly now: Settled };

export function repaired(task: Task, now: Settled, options: RepairOptions, random: () => number): Settled | null {
  const header = resolveHeader(now.design);
  const ground: Ground = { header, stage: { design: now.design, header }, now };
  const open = task.runners.filter((r) => !r.locked);
  const way = wayOf(random());
  if (way === 'knock') {
    return settled(now.design, task, options, knocked(sharesOfBlame(now), 10 + 70 * random() ** 2, random));
  }
  const worst = byWeight(open, (r) => now.blame[r.index]!, random);
  if (way === 'bend') {
    const bent = withBendMore(now.design, header, worst, random);
    if (bent) return settled(bent, task, options);
  }
  const others = open.filter((r) => r !== worst);
  if (way === 'again' || others.length === 0) return laidAgain(task, ground, worst, options, random);
  const inletOf = (r: RunnerTask): number => now.design.runners[r.index]!.to.inlet!;
  const partners = others.filter((r) => r.merge === worst.merge && r.pinnedInlet === null);
  if (way === 'exchange' && worst.pinnedInlet === null && partners.length > 0) {
    const partner = partners[Math.floor(random() * partners.length)]!;
    return bothLaidAgain(task, ground, [worst, partner], [inletOf(partner), inletOf(worst)], options, random);
  }
  const other = byWeight(others, (r) => now.blame[r.index]! + 1e-6, random);
  return bothLaidAgain(task, ground, [worst, other], [inletOf(worst), inletOf(other)], options, random);
}

function wayOf(chance: number): keyof typeof WAYS {
  let left = chance;
  for (const [way, share] of Object.entries(WAYS)) {
    left -= share;
    if (left < 0) return way as keyof typeof WAYS;
  }
  return 'again';
}

/** The likeliest few shapes are fitted among the others before all give way to each other. */
function laidAgain(
  task: Task,
  ground: Ground,
  r: RunnerTask,
  options: RepairOptions,
  random: () => number,
): Settled | null {
  const { now } = ground;
  const still = linesOf(task, now.design, ground.header, (one) => one !== r);
  const rated = poolOf(task, ground, r, now.design.runners[r.index]!.to.inlet!, options, random)
    .map((s) => ({ s, cost: costAmong(task, s, still, options) + options.noise * random() }))
    .sort((a, b) => a.cost - b.cost);
  let best: Fitted | null = null;
  for (const { s } of rated.slice(0, FITTED)) {
    const one = fitted(now.design, task, r, s);
    if (!best || one.cost < best.cost) best = one;
  }
  if (!best) return null;
  return settled(best.design, task, options);
}

const costAmong = (task: Task, s: Sketch, still: readonly Line[], { bendCost }: RepairOptions): number =>
  s.blocked + bendCost * (s.bends - 2) + crowdingAmong(s.line, still, task.header.tubeToTube);

function bothLaidAgain(
  task: Task,
  ground: Ground,
  out: readonly RunnerTask[],
  inlets: readonly number[],
  options: RepairOptions,
  random: () => number,
): Settled | null {
  const { now } = ground;
  const still = linesOf(task, now.design, ground.header, (r) => !out.includes(r));
  const pools = out.map((r, i) => poolOf(task, ground, r, inlets[i]!, options, random));
  if (pools.some((p) => p.length === 0)) return null;
  const chosen = choose(pools, still, task.header.tubeToTube, options.bendCost, options.noise, random);
  return settled(withSketches(now.design, out, chosen), task, options);
}

function poolOf(
  task: Task,
  { header, stage }: Ground,
  r: RunnerTask,
  inlet: number,
  { shelf, depth }: RepairOptions,
  random: () => number,
): Sketch[] {
  const barriers = barriersOf(task, stage, r);
  const length = lengthAmong(header, r) ?? shelf.lengthOf(r);
  const found = task.movable.length > 0 ? [] : [...shelf.shapes(r, inlet, depth)];
  for (let points = 2; points <= r.resolved.tooling.maxBends; points++)
    found.push(...rough(stage, r, inlet, points, length, barriers, random, ofPoints(DRAWS, points), KEPT));
  return found;
}
