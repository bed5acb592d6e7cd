/** Centerline length that each runner is drawn to: its group's, or, where that is open, somewhat above the shortest for all. */
import { propose } from './propose';
import { misshapen, pathOf } from './sketch';
import { endOf, type Stage, startOf } from './stage';
import type { RunnerTask, Task } from './task';

const DRAWS = 40;
/** Shapes that miss their straights and angles by more than this are no shapes, mm². */
const SHAPELESS = 200;

/** @param stretch times the shortest that every runner of an open group can have */
export function drawnLengths(
  task: Task,
  stage: Stage,
  stretch: number,
  random: () => number,
): (r: RunnerTask) => number | null {
  const chosen = new Map<string, number>();
  for (const [id, { length }] of task.header.groups) {
    const members = task.runners.filter((r) => r.group === id);
    const given = length ?? lockedLength(members);
    if (given !== null) chosen.set(id, given);
    else if (members.length > 0) {
      const least = Math.max(...members.map((r) => r.resolved.lengthInHead + shortest(stage, r, random)));
      if (Number.isFinite(least)) chosen.set(id, stretch * least);
    }
  }
  return centerlineOf(chosen);
}

/** @param found of each group, what lies in the head included; those that are open are stretched a little */
export function knownLengths(
  task: Task,
  found: ReadonlyMap<string, number>,
  stretch: number,
): (r: RunnerTask) => number | null {
  const chosen = new Map<string, number>();
  for (const [id, { length }] of task.header.groups) {
    const given = length ?? lockedLength(task.runners.filter((r) => r.group === id));
    const wanted = given ?? (found.has(id) ? stretch * found.get(id)! : null);
    if (wanted !== null) chosen.set(id, wanted);
  }
  return centerlineOf(chosen);
}

function centerlineOf(chosen: ReadonlyMap<string, number>): (r: RunnerTask) => number | null {
  return (r) => {
    const length = r.group === null ? undefined : chosen.get(r.group);
    return length === undefined ? null : length - r.resolved.lengthInHead;
  };
}

/** What is locked sets the length that the others keep to. */
function lockedLength(members: readonly RunnerTask[]): number | null {
  const locked = members.find((r) => r.locked && r.resolved.centerline);
  return locked ? locked.resolved.lengthInHead + locked.resolved.centerline!.length : null;
}

function shortest(stage: Stage, r: RunnerTask, random: () => number): number {
  const start = startOf(stage, r);
  const { inlets } = stage.header.merges.get(r.merge)!;
  let least = Infinity;
  for (let inlet = 1; inlet <= inlets.length; inlet++) {
    if (r.pinnedInlet !== null && r.pinnedInlet !== inlet) continue;
    const end = endOf(stage, r, inlet);
    for (let k = 0; k < DRAWS; k++) {
      const points = Math.min(k % 4 === 3 ? 3 : 2, r.resolved.tooling.maxBends);
      const drawn = propose(r, start, end, points, null, random);
      if (!drawn) continue;
      const path = pathOf(start, end, drawn.points, drawn.radii);
      if (path.length < least && misshapen(path, r, drawn.joined) < SHAPELESS) least = path.length;
    }
  }
  return least;
}
