/** Measures every rule of the contract and says what fails, where, by how much, and what would mend it. */
import type { Design, MeshSurrounding } from '../../shared/design/types';
import { remembered } from '../../shared/remember';
import { bends } from '../curve/bends';
import { type Header, type ResolvedRunner, resolveHeader } from '../header/resolve';
import { accessEntries } from '../reach/accessReport';
import { DEGREES } from '../tolerance';
import { withAccess } from './access';
import { checkMergeBodies, checkSelf, checkSurroundings, checkTubeToTube } from './clearances';
import { balanceLength, checkLengths } from './lengths';
import type { Meshes } from './meshes';
import { obstaclesOf } from './obstacles';
import { checkPlacement } from './placement';
import type { CheckReport, Problem, RunnerReport } from './report';
import { checkShape } from './shape';
import { sayIn } from './words';

/** @param meshes by file name; a mesh surrounding whose file is absent here is a `document` problem, not a silent pass */
export function check(design: Design, meshes: Meshes = new Map()): CheckReport {
  const header = resolveHeader(design);
  const report = checkHeader(header, meshes);
  return design.access?.required ? withAccess(report, design, accessEntries(header, meshes)) : report;
}

/** All but `reach`, which takes longer than a hand can wait; what the header shares with one checked before is not measured again. */
export function checkHeader(header: Header, meshes: Meshes = new Map()): CheckReport {
  const { design } = header;
  const { obstacles, missing } = obstaclesOf(header, meshes);
  const lengths = checkLengths(header);
  const tubes = checkTubeToTube(header);
  const around = checkSurroundings(header, obstacles);
  const bodies = checkMergeBodies(header, obstacles);
  const problems = [
    ...missing.map(notLoaded),
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
    runners: header.runners.flatMap(described),
    groups: lengths.groups,
    clearance: { tubeToTube: tubes.least, surroundings: around.least, mergeBodies: bodies.least },
  };
}

const notLoaded = ({ id, file }: MeshSurrounding): Problem => ({
  rule: 'document',
  where: `surroundings/${id}/file`,
  found: null,
  allowed: file,
  message: `The mesh ${file} of ${id} is not loaded, so its clearance is unknown: put it beside the design.`,
});

const described = remembered(describe);

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
