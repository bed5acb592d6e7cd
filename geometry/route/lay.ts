/** One try at a header: inlets, shapes that have room together, all settled jointly, and what is stuck laid again. */
import { linesOf } from './among';
import { choose, TURN_COST } from './choose';
import { combinations } from './combine';
import { FEASIBLE, type Settled, settled, withSketches } from './drawing';
import { grown } from './grow';
import { assigned } from './inletOrder';
import { repaired } from './repair';
import type { Sketch } from './sketch';
import { barriersOf, endOf, startOf } from './stage';
import type { Steps } from './steps';
import { rough, type Shelf } from './stock';
import type { RunnerTask, Task } from './task';

export type Plan = {
  /**
   * guessed: likely inlets, shapes chosen together; combined: the best of all that the shelf has; grown: one runner after
   * another, those already there giving way; drawn: from what was drawn beforehand, tubes through each other.
   */
  readonly kind: 'guessed' | 'combined' | 'grown' | 'drawn';
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
  /** Good enough to end with though not all holds, mm². Default: all is to hold. */
  readonly enough?: number;
};

const STEPS = 60;
/** Beginnings from which shapes are combined, and how many of the results are laid. */
const BEGINNINGS = 6;
const LAID = 5;
/** A repair that leaves more than this part of what was missed is no gain. */
const GAIN = 0.95;
/** A repair may make it worse by up to this part, by chance: there may be a way out on the other side. */
const DETOUR = 0.2;
/** Repairs in a row without gain after which it is better to begin anew: the less is missed, the later. */
const patience = (cost: number): number => (cost < 20 ? 45 : cost < 100 ? 25 : 12);
/** A runner that has no shape of its own into an inlet would need this many radians more there. */
const HOPELESS = 30;

export function* lay(task: Task, plan: Plan, random: () => number, stopped: () => boolean): Steps<Settled | null> {
  const { shelf, bendCost, repairs, enough = 0 } = plan;
  let now: Settled | null = null;
  if (plan.kind === 'grown') now = grown(task, plan, random, stopped);
  if (plan.kind === 'drawn' && shelf.drawn) now = settled(shelf.drawn, task, { steps: STEPS, stopped });
  if (now && now.miss <= FEASIBLE) return now;
  for (const sketches of beginnings(task, plan, random)) {
    if (stopped()) break;
    const next = settled(withSketches(shelf.stage.design, openRunners(task), sketches), task, {
      steps: STEPS,
      stopped,
    });
    if (!now || next.cost < now.cost) now = next;
    if (now.miss <= FEASIBLE) return now;
    yield;
  }
  let lastGain = 0;
  for (let k = 0; k < repairs && now && now.miss > FEASIBLE && now.cost > enough && !stopped(); k++) {
    const options = {
      shelf,
      depth: plan.depth,
      bendCost: bendCost * 0.6 ** (Math.min(k, 12) / 3),
      noise: 200 * Math.min(k, 15) * random(),
      steps: STEPS,
      stopped,
    };
    yield;
    const next = repaired(task, now, options, random);
    if (!next) continue;
    if (next.cost < now.cost * GAIN) lastGain = k;
    if (next.cost < now.cost * (1 + DETOUR * random())) now = next;
    if (k - lastGain > patience(now.cost)) break;
  }
  return now;
}

const openRunners = (task: Task): RunnerTask[] => task.runners.filter((r) => !r.locked);

/** Sketches to begin with, of each runner that is not locked: a quick guess, or the best of what the shelf has to combine. */
function beginnings(task: Task, plan: Plan, random: () => number): (readonly Sketch[])[] {
  const { shelf, bendCost, noise, depth, kind } = plan;
  if (kind === 'grown' || (kind === 'drawn' && shelf.drawn)) return [];
  const open = openRunners(task);
  const gap = task.header.tubeToTube;
  const still = linesOf(task, shelf.stage.design, shelf.stage.header, (r) => r.locked);
  if (kind === 'guessed') {
    const inlets = inletsFor(task, plan, random);
    const pools = open.map((r) => {
      const own = shapesNow(task, plan, r, inlets[r.index]!);
      return own.length > 0 ? own : anyShapes(task, shelf, r, inlets[r.index]!, random);
    });
    if (pools.some((p) => p.length === 0)) return [];
    return [choose(pools, still, gap, bendCost, noise, random)];
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
    .map((c) => c.sketches);
}

/**
 * Inlets by what the shapes into them cost, which is found out only for those that look best: an unknown one is taken to
 * be cheap until it is known.
 */
function inletsFor(task: Task, plan: Plan, random: () => number): number[] {
  const { shelf, bendCost, heat } = plan;
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
      const best = shapesNow(task, plan, r, k + 1)[0];
      known[r.index]![k] = true;
      if (best) costs[r.index]![k] = noise[r.index]![k]! + best.turned + perBend * (best.bends - 2);
      else if (task.movable.length === 0) costs[r.index]![k] = noise[r.index]![k]! + HOPELESS;
    }
  }
}

/** Shapes that hold by themselves; none yet where collectors may move, since what holds will change as they do. */
const shapesNow = (task: Task, { shelf, depth }: Plan, r: RunnerTask, inlet: number): readonly Sketch[] =>
  task.movable.length > 0 ? [] : shelf.shapes(r, inlet, depth);

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
