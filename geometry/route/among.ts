/** What a runner finds there already: the others' lines, and the length that its group has come to. */
import type { Design, Runner } from '../../shared/design/types';
import { type Centerline, centerline } from '../curve/centerline';
import { type Header, radiiOf, resolveHeader } from '../header/resolve';
import type { Barrier } from './crowd';
import { type Line, lineOf } from './line';
import { pathOf } from './sketch';
import { barriersOf, bundlesOf, type Stage, startOf } from './stage';
import type { RunnerTask, Task } from './task';

/** What one runner finds there: everything else as it lies in a design, roughly, and the length asked of it. */
export type Room = {
  readonly stage: Stage;
  readonly still: readonly Line[];
  readonly barriers: readonly Barrier[];
  readonly length: number | null;
};

export function roomOf(task: Task, design: Design, r: RunnerTask): Room {
  const header = resolveHeader(design);
  const stage = { design, header };
  return {
    stage,
    still: linesOf(task, design, header, (one) => one !== r),
    barriers: barriersOf(task, stage, r),
    length: lengthAmong(header, r),
  };
}

/** The length that the others of its group have come to, as this one's centerline. */
export function lengthAmong(header: Header, r: RunnerTask): number | null {
  if (r.group === null) return null;
  const mates = header.runners.filter((m, i) => m.runner.group === r.group && i !== r.index && m.centerline);
  const given = header.groups.get(r.group)?.length ?? null;
  if (given === null && mates.length === 0) return null;
  const mean = mates.reduce((sum, m) => sum + m.lengthInHead + m.centerline!.length, 0) / mates.length;
  return (given ?? mean) - r.resolved.lengthInHead;
}

/** Rough lines of runners as they lie in a design. */
export function linesOf(task: Task, design: Design, header: Header, which: (r: RunnerTask) => boolean): Line[] {
  const stage = { design, header };
  return task.runners.filter(which).flatMap((r) => {
    const resolved = header.runners[r.index]!;
    const line = resolved.centerline;
    if (!line || !resolved.end) return [];
    return [lineOf(pathOf(startOf(stage, r), resolved.end, line.points, line.radii), r, bundlesOf(stage, r))];
  });
}

/** The centerline of a runner that has points, whether or not it is in the header that the task was made of. */
export const centerlineOf = (runner: Runner, { resolved: { tooling } }: RunnerTask): Centerline =>
  centerline(runner.points!, radiiOf(runner, runner.points!, tooling));
