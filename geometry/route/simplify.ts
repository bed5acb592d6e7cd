/** A layout that holds, with bends taken out where one of fewer can be had, the others giving way. */
import { bends, isContinuous } from '../curve/bends';
import { centerlineOf, roomOf } from './among';
import type { Barrier } from './crowd';
import { FEASIBLE, fittedBest, type Settled, settled } from './drawing';
import { onRays, pathOf, type Sketch, sketched } from './sketch';
import { bundlesOf, endOf, type Stage, startOf } from './stage';
import type { Steps } from './steps';
import { ofPoints, rough } from './stock';
import type { RunnerTask, Task } from './task';

const STEPS = 40;
/** Draws of a shape with fewer points, and how many of the best are looked at, fitted and settled. */
const DRAWS = [40, 70, 60, 60];
const KEPT = 8;
const FITTED = 8;
const SETTLED = 3;
/** What still is missed once it is fitted may be mended by the others giving way, mm². */
const MENDABLE = 3000;

/** @param see called with each simpler layout */
export function* simplified(
  task: Task,
  from: Settled,
  random: () => number,
  stopped: () => boolean,
  see: (simpler: Settled) => void,
): Steps<Settled> {
  let now = from;
  for (let gained = true; gained && !stopped(); ) {
    gained = false;
    const bent = task.runners
      .filter((r) => !r.locked && bendsOf(now, r) > 2)
      .sort((a, b) => bendsOf(now, b) - bendsOf(now, a));
    for (const r of bent) {
      yield;
      if (stopped()) return now;
      const next = withFewer(task, now, r, bendsOf(now, r) - 1, random, stopped);
      if (!next) continue;
      now = next;
      gained = true;
      see(now);
    }
  }
  return now;
}

/** As the bender counts them: a continuous bend is one, though of several points. */
const bendsOf = ({ design }: Settled, r: RunnerTask): number => bends(centerlineOf(design.runners[r.index]!, r)).length;

function withFewer(
  task: Task,
  now: Settled,
  r: RunnerTask,
  points: number,
  random: () => number,
  stopped: () => boolean,
): Settled | null {
  const { stage, still, barriers, length } = roomOf(task, now.design, r);
  const inlet = now.design.runners[r.index]!.to.inlet!;
  const drawn = Array.from({ length: points - 1 }, (_, k) => k + 2).flatMap((n) =>
    rough(stage, r, inlet, n, length, barriers, random, ofPoints(DRAWS, n), KEPT),
  );
  const tries = fittedBest(now.design, task, r, [...withoutOne(stage, r, inlet, barriers), ...drawn], still, FITTED);
  for (const { design, cost } of tries.slice(0, SETTLED)) {
    if (cost > MENDABLE || stopped()) return null;
    const next = settled(design, task, { steps: STEPS, stopped });
    if (next.miss <= FEASIBLE) return next;
  }
  return null;
}

/** The shape as it lies but for one of its bends, each in turn; the next to it stand in for one that lay on an end's ray. */
function withoutOne(stage: Stage, r: RunnerTask, inlet: number, barriers: readonly Barrier[]): Sketch[] {
  const { centerline: line } = stage.header.runners[r.index]!;
  if (line!.radii.length < 3 || line!.radii.some((_, i) => isContinuous(line!, i))) return [];
  const start = startOf(stage, r);
  const end = endOf(stage, r, inlet);
  return line!.radii.map((_, i) => {
    const rest = line!.points.filter((_p, k) => k !== i + 1);
    const radii = line!.radii.filter((_r, k) => k !== i);
    const points = onRays(rest, start, end);
    const path = pathOf(start, end, points, radii);
    return sketched(r, inlet, path, points, [], bundlesOf(stage, r), barriers);
  });
}
