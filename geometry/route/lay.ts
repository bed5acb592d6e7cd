/** One try at a header: inlets, shapes that have room together, all settled jointly, and what is stuck laid again. */
import type { Design } from '../../shared/design/types';
import { type Header, resolveHeader } from '../header/resolve';
import { choose } from './choose';
import { combinations } from './combine';
import { crowding } from './crowd';
import { FEASIBLE, fitted, knocked, type Settled, settled, withSketches } from './drawing';
import { assigned } from './inletOrder';
import { type Line, lineOf } from './line';
import { pathOf, type Sketch } from './sketch';
import { barriersOf, bundlesOf, endOf, type Stage, startOf } from './stage';
import { rough, type Shelf } from './stock';
import type { RunnerTask, Task } from './task';

export type Plan = {
  /** One guess without looking at every inlet. */
  readonly isQuick: boolean;
  readonly shelf: Shelf;
  /** How well shapes are known before they are chosen. */
  readonly depth: number;
  /** What a bend more is worth, mm² of crowding. */
  readonly bendCost: number;
  /** How much chance may outweigh cost where inlets are given out, radians. */
  readonly heat: number;
  /** The same where shapes are chosen, mm² of crowding. */
  readonly noise: number;
  readonly repairs: number;
};

const STEPS = 40;
/** What a radian of turning is worth, mm² of crowding. */
const TURN_COST = 60;
/** Beginnings from which shapes are combined, and how many of the results are laid. */
const BEGINNINGS = 6;
const LAID = 5;
/** Part of the repairs that only knock what is stuck out of its place. */
const KNOCKS = 0.4;
/** Shapes of one runner that are fitted among the others. */
const FITTED = 6;
/** A runner that has no shape of its own into an inlet would need this many radians more there. */
const HOPELESS = 30;

export const stats = { relax: 0, tries: 0, repairs: 0 };

export function lay(task: Task, plan: Plan, random: () => number, stopped: () => boolean): Settled | null {
  const { shelf, bendCost, repairs } = plan;
  let now: Settled | null = null;
  for (const sketches of beginnings(task, plan, random)) {
    if (stopped()) break;
    stats.tries++;
    stats.relax++;
    const next = settled(withSketches(shelf.stage.design, task, sketches), task, { steps: STEPS, stopped });
    if (!now || next.cost < now.cost) now = next;
    if (now.miss <= FEASIBLE) return now;
  }
  for (let k = 0; k < repairs && now && now.miss > FEASIBLE && !stopped(); k++) {
    stats.repairs++;
    const next = repaired(task, plan, now, bendCost * 0.6 ** (k / 3), 200 * k * random(), random, stopped);
    if (next && next.cost < now.cost * (1 + 0.2 * random())) now = next;
  }
  return now;
}

/** Sketches by runner to begin with: a quick guess, or the best of what the shelf has to combine. */
function beginnings(task: Task, plan: Plan, random: () => number): (Sketch | null)[][] {
  const { shelf, bendCost, noise, depth, isQuick } = plan;
  const open = task.runners.filter((r) => !r.locked);
  const gap = task.header.tubeToTube;
  const still = linesOf(task, shelf.stage.design, shelf.stage.header, (r) => r.locked);
  const byRunner = (chosen: readonly Sketch[]): (Sketch | null)[] => {
    const sketches: (Sketch | null)[] = task.runners.map(() => null);
    for (const [i, r] of open.entries()) sketches[r.index] = chosen[i]!;
    return sketches;
  };
  if (isQuick) {
    const inlets = inletsFor(task, plan, random);
    const pools = open.map((r) => {
      const own = shelf.shapes(r, inlets[r.index]!, depth);
      return own.length > 0 && task.movable.length === 0
        ? own
        : [...own, ...anyShapes(task, shelf, r, inlets[r.index]!, random)];
    });
    if (pools.some((p) => p.length === 0)) return [];
    return [byRunner(choose(pools, still, gap, bendCost, noise, random))];
  }
  const options = open.map((r) => {
    const { inlets } = shelf.stage.header.merges.get(r.merge)!;
    const allowed = inlets.map((_, i) => i + 1).filter((k) => r.pinnedInlet === null || r.pinnedInlet === k);
    const found = allowed.flatMap((k) => shelf.shapes(r, k, depth));
    return found.length > 0 ? found : allowed.flatMap((k) => anyShapes(task, shelf, r, k, random));
  });
  const weights = { bend: bendCost, turn: TURN_COST, noise };
  return combinations(open, options, still, gap, shelf.crowd, weights, BEGINNINGS, random)
    .slice(0, LAID)
    .map((c) => byRunner(c.sketches));
}

/**
 * Inlets by what the shapes into them cost, which is found out only for those that look best: an unknown one is taken to
 * be cheap until it is known.
 */
function inletsFor(task: Task, { shelf, depth, bendCost, heat }: Plan, random: () => number): number[] {
  const perBend = bendCost / 120;
  const noise = task.runners.map((r) => shelf.stage.header.merges.get(r.merge)!.inlets.map(() => heat * random()));
  const known = task.runners.map((r) => noise[r.index]!.map(() => false));
  const costs = task.runners.map((r) => noise[r.index]!.map((n, i) => n + straightAway(shelf, r, i + 1)));
  for (;;) {
    const inlets = assigned(task, costs);
    const unknown = task.runners.filter((r) => !r.locked && !known[r.index]![inlets[r.index]! - 1]);
    if (unknown.length === 0) return inlets;
    for (const r of unknown) {
      const k = inlets[r.index]! - 1;
      const best = shelf.shapes(r, k + 1, depth)[0];
      known[r.index]![k] = true;
      costs[r.index]![k] = noise[r.index]![k]! + (best ? best.turned + perBend * (best.bends - 2) : HOPELESS);
    }
  }
}

/** The least that a way from start to inlet must turn, radians. */
function straightAway({ stage }: Shelf, r: RunnerTask, inlet: number): number {
  const from = startOf(stage, r).direction;
  const to = endOf(stage, r, inlet).direction;
  return Math.acos(Math.min(1, Math.max(-1, from[0] * to[0] + from[1] * to[1] + from[2] * to[2])));
}

function anyShapes(
  task: Task,
  { stage, lengthOf }: Shelf,
  r: RunnerTask,
  inlet: number,
  random: () => number,
): Sketch[] {
  const barriers = barriersOf(task, stage, r);
  const found: Sketch[] = [];
  for (let points = 2; points <= r.resolved.tooling.maxBends; points++)
    found.push(...rough(stage, r, inlet, points, lengthOf(r), barriers, random));
  return found;
}

function repaired(
  task: Task,
  { shelf, depth }: Plan,
  now: Settled,
  bendCost: number,
  noise: number,
  random: () => number,
  stopped: () => boolean,
): Settled | null {
  const header = resolveHeader(now.design);
  const stage: Stage = { design: now.design, header };
  const open = task.runners.filter((r) => !r.locked);
  if (random() < KNOCKS) {
    stats.relax++;
    const most = Math.max(...now.blame, 1e-9);
    const shares = now.blame.map((b) => Math.sqrt(b / most));
    return settled(now.design, task, { steps: STEPS, stopped }, knocked(shares, 10 + 70 * random() ** 2, random));
  }
  const worst = drawn(open, (r) => now.blame[r.index]!, random);
  const out = [worst];
  const inlets = new Map(open.map((r) => [r.index, now.design.runners[r.index]!.to.inlet!]));
  const kind = random();
  if (kind < 0.3) {
    const partners = open.filter((r) => r !== worst && r.merge === worst.merge && r.pinnedInlet === null);
    if (partners.length > 0 && worst.pinnedInlet === null) {
      const other = partners[Math.floor(random() * partners.length)]!;
      const mine = inlets.get(worst.index)!;
      inlets.set(worst.index, inlets.get(other.index)!);
      inlets.set(other.index, mine);
      out.push(other);
    }
  } else if (kind < 0.6 && open.length > 1) {
    const others = open.filter((r) => r !== worst);
    out.push(drawn(others, (r) => now.blame[r.index]! + 1e-6, random));
  }
  const still = linesOf(task, now.design, header, (r) => !out.includes(r));
  const pools = out.map((r) => {
    const inlet = inlets.get(r.index)!;
    const barriers = barriersOf(task, stage, r);
    const length = lengthAmong(header, r) ?? shelf.lengthOf(r);
    const found = task.movable.length > 0 ? [] : [...shelf.shapes(r, inlet, depth)];
    for (const [k, draws] of [24, 36, 20].entries())
      if (k + 2 <= r.resolved.tooling.maxBends)
        found.push(...rough(stage, r, inlet, k + 2, length, barriers, random, draws, 16));
    return found;
  });
  if (pools.some((p) => p.length === 0)) return null;
  const gap = task.header.tubeToTube;
  if (out.length === 1) {
    // One runner: the likeliest few are fitted among the others before all give way to each other.
    const own = pools[0]!.map((s) => ({
      s,
      cost:
        s.blocked +
        bendCost * (s.bends - 2) +
        noise * random() +
        still.reduce((sum, line) => sum + crowding(s.line, line, gap), 0),
    }));
    own.sort((a, b) => a.cost - b.cost);
    let best: { design: Design; cost: number } | null = null;
    for (const { s } of own.slice(0, FITTED)) {
      const one = fitted(withSketches(now.design, task, only(task, worst, s)), task, worst.index);
      if (!best || one.cost < best.cost) best = one;
    }
    if (!best) return null;
    stats.relax++;
    return settled(best.design, task, { steps: STEPS, stopped });
  }
  const chosen = choose(pools, still, gap, bendCost, noise, random);
  const sketches: (Sketch | null)[] = task.runners.map(() => null);
  for (const [i, r] of out.entries()) sketches[r.index] = chosen[i]!;
  stats.relax++;
  return settled(withSketches(now.design, task, sketches), task, { steps: STEPS, stopped });
}

const only = (task: Task, r: RunnerTask, s: Sketch): (Sketch | null)[] =>
  task.runners.map((one) => (one === r ? s : null));

/** The length that the others of its group have come to, as this one's centerline. */
function lengthAmong(header: Header, r: RunnerTask): number | null {
  if (r.group === null) return null;
  const mates = header.runners.filter((m, i) => m.runner.group === r.group && i !== r.index && m.centerline);
  const given = header.groups.get(r.group)?.length ?? null;
  if (given === null && mates.length === 0) return null;
  const mean = mates.reduce((sum, m) => sum + m.lengthInHead + m.centerline!.length, 0) / mates.length;
  return (given ?? mean) - r.resolved.lengthInHead;
}

/** One of them, by chance in proportion to its weight. */
function drawn<T>(from: readonly T[], weight: (one: T) => number, random: () => number): T {
  const total = from.reduce((sum, one) => sum + weight(one), 0);
  let left = random() * total;
  for (const one of from) {
    left -= weight(one);
    if (left <= 0) return one;
  }
  return from.at(-1)!;
}

/** Rough lines of runners as they lie in a design. */
function linesOf(task: Task, design: Design, header: Header, which: (r: RunnerTask) => boolean): Line[] {
  const stage = { design, header };
  return task.runners.filter(which).flatMap((r) => {
    const resolved = header.runners[r.index]!;
    const line = resolved.centerline;
    if (!line || !resolved.end) return [];
    return [lineOf(pathOf(startOf(stage, r), resolved.end, line.points, line.radii), r, bundlesOf(stage, r))];
  });
}
