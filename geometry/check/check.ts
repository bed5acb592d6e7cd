/** Measures every rule of the contract and says what fails, where, by how much, and what would mend it. */
import type { Design } from '../../shared/design/types';
import { bends } from '../curve/bends';
import { type Header, type ResolvedRunner, resolveHeader } from '../header/resolve';
import { DEGREES } from '../tolerance';
import {
  checkMergeBodies,
  checkSelf,
  checkSurroundings,
  checkTubeToTube,
  convexObstacle,
  type Obstacle,
} from './clearances';
import { balanceLength, checkLengths } from './lengths';
import { type Meshes, treeOf } from './meshes';
import { checkPlacement } from './placement';
import type { CheckReport, Problem, RunnerReport } from './report';
import { checkShape } from './shape';
import { sayIn } from './words';

/** @param meshes by file name; a mesh surrounding whose file is absent here is a `document` problem, not a silent pass */
export function check(design: Design, meshes: Meshes = new Map()): CheckReport {
  const header = resolveHeader(design);
  const { obstacles, missing } = obstaclesOf(header, meshes);
  const lengths = checkLengths(header);
  const tubes = checkTubeToTube(header);
  const around = checkSurroundings(header, obstacles);
  const bodies = checkMergeBodies(header, obstacles);
  const problems = [
    ...missing,
    ...header.runners.flatMap((r) => checkShape(r, sayIn(design.display))),
    ...lengths.problems,
    ...tubes.problems,
    ...around.problems,
    ...bodies.problems,
    ...checkSelf(header),
    ...checkPlacement(header),
  ];
  return {
    ok: problems.length === 0,
    problems,
    runners: header.runners.flatMap(describe),
    groups: lengths.groups,
    clearance: { tubeToTube: tubes.least, surroundings: around.least, mergeBodies: bodies.least },
  };
}

function obstaclesOf(header: Header, meshes: Meshes): { obstacles: Obstacle[]; missing: Problem[] } {
  const obstacles: Obstacle[] = [];
  const missing: Problem[] = [];
  for (const surrounding of header.surroundings) {
    const convex = convexObstacle(surrounding);
    if (convex) obstacles.push({ surrounding, shape: convex });
    else if (surrounding.shape === 'mesh') {
      const soup = meshes.get(surrounding.file);
      if (soup) obstacles.push({ surrounding, shape: treeOf(surrounding, soup) });
      else
        missing.push({
          rule: 'document',
          where: `surroundings/${surrounding.id}/file`,
          found: null,
          allowed: surrounding.file,
          message: `The mesh ${surrounding.file} of ${surrounding.id} is not loaded, so its clearance is unknown: put it beside the design.`,
        });
    }
  }
  return { obstacles, missing };
}

function describe(r: ResolvedRunner): RunnerReport[] {
  if (!r.centerline) return [];
  const list = bends(r.centerline);
  return [
    {
      id: r.runner.id,
      length: balanceLength(r),
      centerline: r.centerline.length,
      bends: list.length,
      straights: r.centerline.straights,
      angles: list.map((b) => b.angle * DEGREES),
      radii: list.map((b) => b.radius),
    },
  ];
}
