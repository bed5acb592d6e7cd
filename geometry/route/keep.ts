/**
 * A header laid again that keeps its character: every runner its bend count and its way round, the nearest layout to what
 * is drawn that holds. Only what is to blame is drawn anew, and what was not drawn is fitted in. mm.
 */
import type { Design, Runner } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { bends, isContinuous } from '../curve/bends';
import type { Centerline } from '../curve/centerline';
import { pointAt } from '../curve/pointAt';
import { resolveHeader } from '../header/resolve';
import { routedOnly } from '../layout/balance';
import { assignInlets } from '../layout/inlets';
import { designAt, type LayoutProblem, layoutProblem, place } from '../layout/layoutProblem';
import { solve } from '../layout/solve';
import { addScaled, distance, dot, norm, reject, sub, unit } from '../vector';
import { centerlineOf, roomOf } from './among';
import { byWeight } from './choose';
import { rejoined } from './continuousBend';
import { FEASIBLE, fittedBest, knocked, type Settled, settled, sharesOfBlame } from './drawing';
import { onRays, type Sketch } from './sketch';
import { rough } from './stock';
import type { RunnerTask, Task } from './task';

const STEPS = 60;
const NEAREST_STEPS = 40;
const REPAIRS = 12;
/** Knocks of a repair: the least, and how much more by chance, mm. */
const KNOCK = 8;
const MORE = 45;
/** Draws of a shape for one runner, how many of the best are looked at, and how many are fitted. */
const DRAWS = 80;
const KEPT = 24;
const FITTED = 4;
/** A middle this near to the line between its ends is on no side of it; it may stray so far, mm. */
const NO_SIDE = 25;
const STRAY = 120;

export type Leeway = {
  /** Knocks everything by up to so much before it begins, mm: 0 for the nearest, more for variants. Default 0. */
  readonly size?: number;
  /** Bends that a runner may have more than it has, where what moved leaves no other way. Default none. */
  readonly spare?: number;
};

/**
 * @param task made with `keeps`: lines stay as they are drawn to begin with
 * @returns what comes nearest where none holds; null where nothing is drawn that could be kept
 */
export function kept(
  task: Task,
  random: () => number,
  stopped: () => boolean,
  { size = 0, spare = 0 }: Leeway = {},
): Settled | null {
  const design = withUnlaid(task, carried(assignInlets(task.design)), random);
  if (!design) return null;
  const keeps = (found: Settled): boolean =>
    design.runners.every((r, i) => isSameWay(r, found.design.runners[i]!, task, spare));
  const effort = { steps: STEPS, stopped };
  const direct = size === 0 ? nearest(design, design, task, stopped) : null;
  if (direct && keeps(direct)) return direct;
  let now = settled(design, task, { steps: 0, stopped });
  const all = task.runners.map(() => 1);
  const first = size === 0 ? settled(design, task, effort) : settled(design, task, effort, knocked(all, size, random));
  if (keeps(first) && (first.cost < now.cost || first.miss <= FEASIBLE)) now = first;
  for (let k = 0; k < REPAIRS && now.miss > FEASIBLE && !stopped(); k++) {
    const next =
      k % 2 === 0 ? shaken(task, now, random, stopped) : laidAgain(task, design, now, spare, random, stopped);
    if (next && keeps(next) && (next.cost < now.cost || next.miss <= FEASIBLE)) now = next;
  }
  if (now.miss > FEASIBLE) return now;
  const nearer = nearest(design, now.design, task, stopped);
  return nearer && keeps(nearer) ? nearer : now;
}

/** Runners whose ends have moved go with them: the nearer to an end, the more. Continuous bends stay such. */
function carried(design: Design): Design {
  const header = resolveHeader(design);
  return {
    ...design,
    runners: design.runners.map((runner, i): Runner => {
      const { start, end, centerline: line } = header.runners[i]!;
      if (runner.locked || !runner.points || !line || !end) return runner;
      const atStart = sub(start.position, runner.points[0]!);
      const atEnd = sub(end.position, runner.points.at(-1)!);
      if (norm(atStart) === 0 && norm(atEnd) === 0) return runner;
      const last = runner.points.length - 1;
      const points = runner.points.map((p, k): Vec3 => addScaled(addScaled(p, atStart, 1 - k / last), atEnd, k / last));
      if (line.points.length !== points.length || last < 3) return { ...runner, points };
      const joined = line.radii.map((_, k) => isContinuous(line, k));
      return { ...runner, points: rejoined(onRays(points, start, end), line.radii, joined, start, end) };
    }),
  };
}

/** The nearest layout to `target` that holds, from where `from` lies; null where the steps do not lead to one. */
function nearest(target: Design, from: Design, task: Task, stopped: () => boolean): Settled | null {
  const problem = problemOf(from);
  const aim = from === target ? problem.start : problemOf(target).start;
  if (problem.unknowns === 0 || aim.length !== problem.unknowns) return null;
  const { x, miss } = solve(problem, task.obstacles, aim, problem.start, {
    maxIterations: NEAREST_STEPS,
    feasible: FEASIBLE,
    settled: 0.5,
    cancelled: stopped,
  });
  if (miss > FEASIBLE) return null;
  place(problem, x);
  return { design: designAt(problem), miss, cost: 0, blame: task.runners.map(() => 0) };
}

const problemOf = (design: Design): LayoutProblem => layoutProblem(routedOnly(resolveHeader(design)));

/** What is to blame is knocked out of its place. */
function shaken(task: Task, now: Settled, random: () => number, stopped: () => boolean): Settled {
  const size = KNOCK + MORE * random() ** 2;
  return settled(now.design, task, { steps: STEPS, stopped }, knocked(sharesOfBlame(now), size, random));
}

/** One of those to blame drawn anew, with as many bends, the same way round. */
function laidAgain(
  task: Task,
  drawn: Design,
  now: Settled,
  spare: number,
  random: () => number,
  stopped: () => boolean,
): Settled | null {
  const open = task.runners.filter((r) => !r.locked);
  if (open.length === 0) return null;
  const worst = byWeight(open, (r) => now.blame[r.index]!, random);
  const runner = drawn.runners[worst.index]!;
  const count = bends(centerlineOf(runner, worst)).length;
  const inlet = runner.to.inlet!;
  const counts = Array.from({ length: spare + 1 }, (_, k) => count + k);
  const most = worst.resolved.tooling.maxBends;
  const design = best(
    task,
    now.design,
    worst,
    [inlet],
    counts.filter((n) => n >= 2 && n <= most),
    random,
    (s) => isSameWay(runner, { ...runner, points: s.points, radii: s.radii }, task, spare),
  );
  return design && settled(design, task, { steps: STEPS, stopped });
}

/** Runners that have no line yet, each fitted among the others; null where none had one, or one finds no place at all. */
function withUnlaid(task: Task, drawn: Design, random: () => number): Design | null {
  if (task.runners.every((r) => r.locked || !drawn.runners[r.index]!.points)) return null;
  let design: Design | null = drawn;
  for (const r of task.runners) {
    if (!design || design.runners[r.index]!.points) continue;
    const taken = design.runners.filter((one) => one.to.merge === r.merge).map((one) => one.to.inlet);
    const free = task.design.merges.find((m) => m.id === r.merge)!.inlets;
    const inlets = Array.from({ length: free }, (_, k) => k + 1).filter((k) => !taken.includes(k));
    const counts = Array.from({ length: Math.max(0, r.resolved.tooling.maxBends - 1) }, (_, k) => k + 2);
    design = best(task, design, r, r.pinnedInlet === null ? inlets : [r.pinnedInlet], counts, random, () => true);
  }
  return design;
}

/** The design with the best of some shapes of one runner, fitted among the others. */
function best(
  task: Task,
  design: Design,
  r: RunnerTask,
  inlets: readonly number[],
  counts: readonly number[],
  random: () => number,
  suits: (s: Sketch) => boolean,
): Design | null {
  const { stage, still, barriers, length } = roomOf(task, design, r);
  const shapes = inlets
    .flatMap((k) => counts.flatMap((n) => rough(stage, r, k, n, length, barriers, random, DRAWS, KEPT)))
    .filter(suits);
  return fittedBest(design, task, r, shapes, still, FITTED)[0]?.design ?? null;
}

/** As many bends, or a few spare ones, and the middle on the same side of the line between the ends. */
function isSameWay(a: Runner, b: Runner, task: Task, spare: number): boolean {
  if (a.locked) return true;
  const r = task.runners.find((one) => one.resolved.runner.id === a.id)!;
  const [before, after] = [centerlineOf(a, r), centerlineOf(b, r)];
  const more = bends(after).length - bends(before).length;
  if (more < 0 || more > spare) return false;
  const [p, q] = [besideChord(before), besideChord(after)];
  if (norm(p) < NO_SIDE || norm(q) < NO_SIDE) return distance(p, q) < STRAY;
  return dot(p, q) > 0;
}

/** From the line between the ends to the middle. */
function besideChord(line: Centerline): Vec3 {
  const [first, last] = [line.points[0]!, line.points.at(-1)!];
  return reject(sub(pointAt(line, line.length / 2).position, first), unit(sub(last, first)));
}
