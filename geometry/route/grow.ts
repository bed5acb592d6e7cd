/**
 * A header grown runner by runner: each is fitted among those already there, then all of these, and the merges that may
 * move, give way together. What is tight is laid while there is room to choose.
 */
import { roomOf } from './among';
import { shuffled, TURN_COST } from './choose';
import { crowdingAmong } from './crowd';
import { FEASIBLE, type Fitted, fitted, type Settled, settled } from './drawing';
import { assigned } from './inletOrder';
import type { Plan } from './lay';
import type { Sketch } from './sketch';
import { endOf, startOf } from './stage';
import { ofPoints, rough } from './stock';
import type { RunnerTask, Task } from './task';

const STEPS = 40;
/** Draws of each number of points for one runner, and how many of the best are fitted. */
const DRAWS = [30, 60, 50, 50];
const KEPT = 8;
const FITTED = 5;
/** Missed by no more than this, there is no need that others give way, mm². */
const HOLDS = 0.15;
/** Fitted shapes for which all give way. */
const SETTLED = 2;

export function grown(task: Task, plan: Plan, random: () => number, stopped: () => boolean): Settled | null {
  const { shelf } = plan;
  const inlets = likelyInlets(task, plan, random);
  let now: Settled = { design: shelf.stage.design, miss: 0, cost: 0, blame: task.runners.map(() => 0) };
  for (const i of shuffled(task.runners.length, random)) {
    const r = task.runners[i]!;
    if (r.locked) continue;
    if (stopped()) return null;
    const next = withOneMore(task, plan, now, r, inlets[i]!, random, stopped);
    if (!next) return null;
    now = next;
  }
  return now;
}

function withOneMore(
  task: Task,
  { shelf, bendCost, noise }: Plan,
  now: Settled,
  r: RunnerTask,
  inlet: number,
  random: () => number,
  stopped: () => boolean,
): Settled | null {
  const { stage, still, barriers, length: asked } = roomOf(task, now.design, r);
  const length = asked ?? shelf.lengthOf(r);
  const gap = task.header.tubeToTube;
  const found: { s: Sketch; cost: number }[] = [];
  for (let points = 2; points <= r.resolved.tooling.maxBends; points++)
    for (const s of rough(stage, r, inlet, points, length, barriers, random, ofPoints(DRAWS, points), KEPT))
      found.push({
        s,
        cost:
          s.blocked +
          bendCost * (s.bends - 2) +
          TURN_COST * s.turned +
          noise * random() +
          crowdingAmong(s.line, still, gap),
      });
  found.sort((a, b) => a.cost - b.cost);
  const tries: Fitted[] = [];
  for (const { s } of found.slice(0, FITTED)) {
    const one = fitted(now.design, task, r, s);
    tries.push(one);
    if (one.cost < HOLDS) break;
  }
  tries.sort((a, b) => a.cost - b.cost);
  let best: Settled | null = null;
  for (const { design, cost } of tries.slice(0, SETTLED)) {
    const next = settled(design, task, { steps: STEPS, stopped });
    if (!best || next.cost < best.cost) best = next;
    if (best.miss <= FEASIBLE || cost < HOLDS) break;
  }
  return best;
}

function likelyInlets(task: Task, { shelf, heat }: Plan, random: () => number): number[] {
  const { stage } = shelf;
  const costs = task.runners.map((r) => {
    const start = startOf(stage, r);
    return stage.header.merges.get(r.merge)!.inlets.map((_, k) => {
      const end = endOf(stage, r, k + 1);
      const d = end.position.map((x, axis) => x - start.position[axis]!);
      return Math.hypot(...d) / 100 + heat * random();
    });
  });
  return assigned(task, costs);
}
