/** One runner by itself, made to hold all its own rules: merges where they stand, the length given, no other runner there. */
import type { Group } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { centerline } from '../curve/centerline';
import type { Header, ResolvedMerge } from '../header/resolve';
import { layoutProblem, place } from '../layout/layoutProblem';
import { rejoined } from './continuousBend';
import type { Barrier } from './crowd';
import { relax } from './relax';
import { pathOf, type Sketch, sketched } from './sketch';
import { bundlesOf, endOf, type Stage, startOf } from './stage';
import type { RunnerTask, Task } from './task';

/** Missed by no more than this, all runners together will mend it, mm. */
const HOLDS = 0.5;

/** A stage as one runner sees it: its merges stay. */
export function stillHeader(header: Header): Header {
  const merges = new Map(
    [...header.merges].map(([id, m]): [string, ResolvedMerge] => {
      const { placement: _placement, ...merge } = m.merge;
      return [id, { ...m, merge }];
    }),
  );
  return { ...header, merges };
}

/** @returns the sketch with its rules held, or null where it does not come to that */
export function alone(
  task: Task,
  still: Header,
  stage: Stage,
  r: RunnerTask,
  sketch: Sketch,
  length: number | null,
  barriers: readonly Barrier[],
  steps: number,
): Sketch | null {
  const start = startOf(stage, r);
  const end = endOf(stage, r, sketch.inlet);
  const runner = { ...r.resolved.runner, to: { merge: r.merge, inlet: sketch.inlet } };
  const groups = new Map<string, Group>();
  if (r.group !== null && length !== null)
    groups.set(r.group, { length: length + r.resolved.lengthInHead, tolerance: 1 });
  const resolved = { ...r.resolved, runner, start, end, centerline: centerline(sketch.points, sketch.radii) };
  if (resolved.centerline.radii.length !== sketch.radii.length) return null;
  const problem = layoutProblem({ ...still, runners: [resolved], groups });
  const found = relax(problem, task.obstacles, problem.start, { steps, enough: HOLDS });
  if (found.greatest > HOLDS) return null;
  place(problem, found.x);
  const { path } = problem.runners[0]!;
  const joined = problem.runners[0]!.continuous;
  const relaxed = Array.from({ length: path.bends + 2 }, (_, i): Vec3 => {
    return [path.points[3 * i]!, path.points[3 * i + 1]!, path.points[3 * i + 2]!];
  });
  const points = joined.includes(true) ? rejoined(relaxed, sketch.radii, joined, start, end) : relaxed;
  return sketched(
    r,
    sketch.inlet,
    pathOf(start, end, points, sketch.radii),
    points,
    joined,
    bundlesOf(stage, r),
    barriers,
  );
}
