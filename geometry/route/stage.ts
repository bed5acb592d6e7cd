/**
 * The places between which runners are laid in one try: merges set somewhere within their `placement`, lengths chosen for
 * groups that leave them open, and what stands in each runner's way.
 */
import type { Design, Merge } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { frustumShape } from '../clearance/shapes';
import type { Pose } from '../header/merge';
import { type Header, resolveHeader } from '../header/resolve';
import { RADIANS } from '../tolerance';
import { addScaled, anySquareTo, cross, unit } from '../vector';
import type { Barrier } from './crowd';
import type { RunnerTask, Task } from './task';

export type Stage = {
  readonly design: Design;
  readonly header: Header;
};

/** @param spread 0: every merge as it is given; 1: anywhere it may be */
export function stageOf(task: Task, spread: number, random: () => number): Stage {
  if (task.movable.length === 0 || spread === 0) return { design: task.design, header: task.header };
  const moved = new Map(task.movable.map((m) => [m.id, somewhere(m, spread, random)]));
  const design = { ...task.design, merges: task.design.merges.map((m) => moved.get(m.id) ?? m) };
  return { design, header: resolveHeader(design) };
}

/** Chance that a merge stands at one border of its space, and at the other. */
const AT_BORDER = 0.3;

function somewhere(merge: Merge, spread: number, random: () => number): Merge {
  const { within, tilt = 0, axis = merge.axis } = merge.placement!;
  const [p, q] = within;
  const position = merge.position.map((given, k) => {
    // Room is scarce where it is asked for at all, so the borders of the space are tried as often as its inside.
    const draw = random();
    const anywhere = p[k]! + (q[k]! - p[k]!) * (draw < AT_BORDER ? 0 : draw > 1 - AT_BORDER ? 1 : random());
    return given + spread * (anywhere - given);
  });
  if (tilt === 0) return { ...merge, position: position as unknown as Vec3 };
  const w = unit(axis);
  const u = anySquareTo(w);
  const v = cross(w, u);
  const phi = 2 * Math.PI * random();
  const lean = Math.tan(tilt * RADIANS) * 0.98 * spread * Math.min(1, 1.3 * Math.sqrt(random()));
  const tilted = addScaled(addScaled(w, u, lean * Math.cos(phi)), v, lean * Math.sin(phi));
  return { ...merge, position: position as unknown as Vec3, axis: tilted, placement: { ...merge.placement!, axis } };
}

export const startOf = ({ header }: Stage, r: RunnerTask): Pose =>
  r.fromMerge === null ? r.resolved.start : header.merges.get(r.fromMerge)!.outlet;

/** @param inlet from 1 */
export const endOf = ({ header }: Stage, r: RunnerTask, inlet: number): Pose =>
  header.merges.get(r.merge)!.inlets[inlet - 1]!;

/** How far along it from its start and from its end a runner may touch its neighbours, mm. */
export function bundlesOf({ header }: Stage, { resolved: { runner } }: RunnerTask): [number, number] {
  const { from, to } = runner;
  return ['port' in from ? header.ports.get(from.port)!.bundle : 0, header.merges.get(to.merge)!.bundle];
}

/** Surroundings, and the bodies of merges that it neither enters nor leaves. */
export function barriersOf(task: Task, { header }: Stage, r: RunnerTask): Barrier[] {
  const around = task.obstacles.map(({ shape, surrounding }) => ({ shape, clearance: surrounding.clearance ?? 0 }));
  const bodies = [...header.merges].flatMap(([id, { body }]) =>
    id === r.merge || id === r.fromMerge ? [] : [{ shape: frustumShape(body), clearance: 0 }],
  );
  return [...around, ...bodies];
}
