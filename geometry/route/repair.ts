/** A header that does not hold yet, changed in one of a few ways at the runners that are to blame, and settled again. */
import type { Runner } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { bends } from '../curve/bends';
import { type Header, resolveHeader } from '../header/resolve';
import { addScaled, anySquareTo, cross, distance, lerp, sub, unit } from '../vector';
import { lengthAmong, linesOf } from './among';
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

/** Shares of the ways: knocked out of place, one runner laid again, two that change inlets, two laid again. */
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
    const bent = withBendMore(task, ground, worst, options, random);
    if (bent) return bent;
  }
  if (way === 'again') return laidAgain(task, ground, worst, options, random);
  const inletOf = (r: RunnerTask): number => now.design.runners[r.index]!.to.inlet!;
  const others = open.filter((r) => r !== worst);
  if (others.length === 0) return laidAgain(task, ground, worst, options, random);
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

/** One bend more on one of its straights, a long one rather: what is squeezed may give way there. */
function withBendMore(
  task: Task,
  { now, header }: Ground,
  r: RunnerTask,
  options: RepairOptions,
  random: () => number,
): Settled | null {
  const line = header.runners[r.index]!.centerline;
  if (!line || bends(line).length >= r.resolved.tooling.maxBends) return null;
  const { points, radii } = line;
  const last = points.length - 2;
  const legs = points.slice(1).map((_, i) => i);
  const leg = byWeight(legs, (i) => distance(points[i]!, points[i + 1]!) ** 2, random);
  const along = unit(sub(points[leg + 1]!, points[leg]!));
  const side = anySquareTo(along);
  const phi = 2 * Math.PI * random();
  const off = BULGE * (0.2 + random());
  const out = (p: Vec3): Vec3 =>
    addScaled(addScaled(p, side, off * Math.cos(phi)), cross(along, side), off * Math.sin(phi));
  const middle = lerp(points[leg]!, points[leg + 1]!, 0.3 + 0.4 * random());
  // Bends next to an end lie on its ray: there the new one does, and the old one is free to leave it.
  const pair: readonly Vec3[] =
    leg === 0 && last > 1
      ? [middle, out(points[1]!)]
      : leg === last && last > 1
        ? [out(points[last]!), middle]
        : [out(middle)];
  const from = leg === last && last > 1 ? last : leg + 1;
  const until = leg === 0 && last > 1 ? 2 : leg + 1;
  const at = Math.min(Math.max(leg, 1), last);
  const runners = now.design.runners.map((runner, i): Runner => {
    if (i !== r.index) return runner;
    const own = runner.radii ? { radii: [...radii.slice(0, at - 1), radii[at - 1]!, ...radii.slice(at - 1)] } : {};
    return { ...runner, points: [...points.slice(0, from), ...pair, ...points.slice(until)], ...own };
  });
  return settled({ ...now.design, runners }, task, options);
}

/** How far out, mm. */
const BULGE = 25;

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
