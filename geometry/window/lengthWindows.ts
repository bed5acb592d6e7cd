/**
 * How short and how long every runner can be in the space it stands in, and what its group can therefore be. Each runner is
 * taken alone: other runners do not count, a merge that may move stands where it suits this one. Deterministic. mm.
 */
import type { Design } from '../../shared/design/types';
import type { Meshes } from '../check/meshes';
import { resolveHeader } from '../header/resolve';
import { solverObstacles } from '../motion/replicas';
import type { GroupWindow, RunnerWindow, Windows } from './report';
import { runnerWindow, type WindowOptions } from './runnerWindow';
import { thinned } from './thinned';

/** @param meshes by file name, as for `check`; what is absent here is no hindrance */
export function lengthWindows(design: Design, meshes: Meshes = new Map(), options: WindowOptions = {}): Windows {
  const header = resolveHeader(design);
  const obstacles = solverObstacles(header, meshes);
  const rough = thinned(obstacles);
  const runners = header.runners.map((r) => {
    const wanted = header.groups.get(r.runner.group ?? '')?.length ?? null;
    return runnerWindow(header, r, obstacles, rough, wanted, options);
  });
  const groups = [...header.groups.keys()].map((id) =>
    sharedWindow(
      id,
      runners.filter((_, i) => header.runners[i]!.runner.group === id),
    ),
  );
  return { runners, groups };
}

function sharedWindow(id: string, members: readonly RunnerWindow[]): GroupWindow {
  const without = members.filter((r) => r.shortest === null).map((r) => r.id);
  const nothing = { id, shortest: null, longest: null, unbounded: false, shortestBy: null, longestBy: null, without };
  if (members.length === 0 || without.length > 0) return nothing;
  const lower = members.reduce((a, b) => (b.shortest! > a.shortest! ? b : a));
  const bounded = members.filter((r) => r.longest !== null);
  const upper = bounded.length > 0 ? bounded.reduce((a, b) => (b.longest! < a.longest! ? b : a)) : null;
  return {
    ...nothing,
    shortest: lower.shortest,
    shortestBy: lower.id,
    longest: upper?.longest ?? null,
    longestBy: upper?.id ?? null,
    unbounded: upper === null,
  };
}
