/** What is to be laid: the design without the lines that will be drawn anew, with all that stays the same through a search. */
import type { Design, Merge } from '../../shared/design/types';
import type { Meshes } from '../check/meshes';
import type { Obstacle } from '../check/obstacles';
import { type Header, type ResolvedRunner, resolveHeader } from '../header/resolve';
import { solverObstacles } from '../motion/replicas';
import { roomForTools } from '../reach/keepOuts';

export type RunnerTask = {
  readonly index: number;
  readonly resolved: ResolvedRunner;
  readonly merge: string;
  /** The merge that it leaves, or null from a port. */
  readonly fromMerge: string | null;
  readonly group: string | null;
  /** Stays as it is. */
  readonly locked: boolean;
  /** From 1; null where the router chooses. */
  readonly pinnedInlet: number | null;
  /** Dies or stock bends that it may use, the usual one first. */
  readonly dies: readonly number[];
};

export type Task = {
  readonly design: Design;
  readonly header: Header;
  readonly meshes: Meshes;
  readonly obstacles: readonly Obstacle[];
  readonly runners: readonly RunnerTask[];
  /** Merges that may move: placed by `placement`, and nothing locked hangs on them. */
  readonly movable: readonly Merge[];
};

/** @param keeps whether lines already drawn stay to begin with */
export function taskOf(design: Design, meshes: Meshes, keeps = false): Task {
  const bare = keeps ? design : { ...design, runners: design.runners.map(withoutLine) };
  const header = resolveHeader(bare);
  const runners = header.runners.map((resolved, index): RunnerTask => {
    const { runner, tooling } = resolved;
    return {
      index,
      resolved,
      merge: runner.to.merge,
      fromMerge: 'merge' in runner.from ? runner.from.merge : null,
      group: runner.group ?? null,
      locked: runner.locked === true,
      pinnedInlet: runner.to.inlet ?? null,
      dies: [tooling.centerlineRadius, ...(tooling.otherRadii ?? [])],
    };
  });
  const held = new Set(runners.filter((r) => r.locked).flatMap((r) => [r.merge, r.fromMerge]));
  return {
    design: bare,
    header,
    meshes,
    obstacles: [...solverObstacles(header, meshes), ...roomForTools(header, meshes)],
    runners,
    movable: bare.merges.filter((m) => m.placement && !held.has(m.id)),
  };
}

function withoutLine(runner: Design['runners'][number]): Design['runners'][number] {
  if (runner.locked) return runner;
  const { points: _points, radii: _radii, ...rest } = runner;
  return rest;
}
