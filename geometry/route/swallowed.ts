/**
 * Ends that no runner can leave or reach, because what stands around is in the way of the one straight that every tube has
 * there. Found out before anything is laid: no search mends it. mm. Ends of collectors that may be moved are left to the search.
 * Of a header that moves it is the moments that the solver keeps clear of, each with the clearance that the design asks for.
 */
import type { Design } from '../../shared/design/types';
import type { Meshes } from '../check/meshes';
import { isTree, type Obstacle } from '../check/obstacles';
import type { Problem } from '../check/report';
import { type Say, sayIn } from '../check/words';
import { chain } from '../clearance/chain';
import { tubeToMesh } from '../clearance/tubeMesh';
import { tubeToShape } from '../clearance/tubeShape';
import { centerline } from '../curve/centerline';
import type { Pose } from '../header/merge';
import { type Header, type ResolvedMerge, type ResolvedRunner, resolveHeader } from '../header/resolve';
import { solverObstacles } from '../motion/replicas';
import { LENGTH_TOLERANCE } from '../tolerance';
import { addScaled } from '../vector';

/** Where the tooling asks for no straight this much is measured: a bend hardly leaves its tangent in it, mm. */
const LEAST_STUB = 0.1;
/** As `check` has it: a gap is missed only past rounding. */
const ROUNDING = LENGTH_TOLERANCE * 1000;

/** What stands in the way of one end, the nearest of all. */
type Blocked = {
  readonly by: string;
  readonly gap: number;
  readonly required: number;
  /** It is so at a moment of the header's motion. */
  readonly moves: boolean;
};
type Sight = { readonly header: Header; readonly obstacles: readonly Obstacle[]; readonly say: Say };

/** @returns one finding for each end in the way of which something stands; of inlets to choose from, only where too few are left */
export function swallowedEnds(design: Design, meshes: Meshes): Problem[] {
  const header = resolveHeader(design);
  const sight: Sight = { header, obstacles: solverObstacles(header, meshes), say: sayIn(design.display) };
  const open = header.runners.filter((r) => !r.runner.locked);
  return [
    ...open.flatMap((r) => startProblem(r, sight)),
    ...[...header.merges.values()].flatMap((merge) => inletProblems(merge, open, sight)),
  ];
}

function startProblem(r: ResolvedRunner, sight: Sight): Problem[] {
  const { from, id } = r.runner;
  if ('merge' in from && sight.header.merges.get(from.merge)!.merge.placement) return [];
  const blocked = blockedBy(r, r.start, r.tooling.firstStraight, sight);
  if (!blocked) return [];
  const [name, where] =
    'port' in from
      ? [`port ${from.port}`, `ports/${from.port}`]
      : [`the outlet of collector ${from.merge}`, `merges/${from.merge}`];
  return [problem(blocked, r.start, where, `runner ${id}`, `leaves ${name}`, sight.say)];
}

function inletProblems({ merge, inlets }: ResolvedMerge, open: readonly ResolvedRunner[], sight: Sight): Problem[] {
  if (merge.placement) return [];
  const entering = open.filter((r) => r.runner.to.merge === merge.id);
  const pinned = entering.filter((r) => r.end !== null);
  const choosing = entering.filter((r) => r.end === null);
  const found = pinned.flatMap((r) => {
    const blocked = blockedBy(r, r.end!, -r.tooling.lastStraight, sight);
    return blocked ? [inletProblem(blocked, merge.id, r.runner.to.inlet!, r.end!, `runner ${r.runner.id}`, sight)] : [];
  });
  const taken = new Set(
    sight.header.runners.filter((r) => r.runner.to.merge === merge.id).map((r) => r.runner.to.inlet),
  );
  const free = inlets.map((pose, i) => ({ pose, inlet: i + 1 })).filter(({ inlet }) => !taken.has(inlet));
  // An inlet is lost where it is in the way of every runner that could take it.
  const lost = free.flatMap(({ pose, inlet }) => {
    const all = choosing.map((r) => blockedBy(r, pose, -r.tooling.lastStraight, sight));
    const least = all.reduce<Blocked | null>(
      (a, b) => (a && b && b.gap - b.required > a.gap - a.required ? b : a),
      all[0] ?? null,
    );
    return all.every((b) => b !== null) && least ? [{ inlet, pose, blocked: least }] : [];
  });
  if (free.length - lost.length >= choosing.length) return found;
  const who = `one of the ${choosing.length} runners that are to enter it`;
  return [
    ...found,
    ...lost.map(({ inlet, pose, blocked }) => inletProblem(blocked, merge.id, inlet, pose, who, sight)),
  ];
}

const inletProblem = (
  blocked: Blocked,
  merge: string,
  inlet: number,
  pose: Pose,
  who: string,
  { say }: Sight,
): Problem =>
  problem(blocked, pose, `merges/${merge}/inlets/${inlet}`, who, `enters inlet ${inlet} of collector ${merge}`, say);

function problem(
  { by, gap, required, moves }: Blocked,
  pose: Pose,
  where: string,
  who: string,
  does: string,
  say: Say,
): Problem {
  const how =
    gap < 0
      ? `reaches ${say(-gap)} into the straight with which ${who} ${does}: move one of them ${say(required - gap)} away`
      : `is ${say(required - gap)} too close to the straight with which ${who} ${does}: move one of them, or allow ${say(gap)}`;
  const message = `The ${by}${moves ? ', as the header moves,' : ''} ${how}. No way of laying it can hold before that.`;
  return { rule: 'surroundings', where, found: gap, allowed: required, message, at: pose.position };
}

/** @param along length of the straight, negative where it comes before the pose */
function blockedBy(r: ResolvedRunner, pose: Pose, along: number, { obstacles }: Sight): Blocked | null {
  const reach = Math.sign(along || 1) * Math.max(LEAST_STUB, Math.abs(along));
  const far = addScaled(pose.position, pose.direction, reach);
  const line = centerline(reach > 0 ? [pose.position, far] : [far, pose.position], []);
  const stub = line && chain(line, r.tubeRadius);
  if (!stub) return null;
  let worst: Blocked | null = null;
  for (const { surrounding, shape, original } of obstacles) {
    const required = (original?.surrounding ?? surrounding).clearance ?? 0;
    const found = isTree(shape) ? tubeToMesh(stub, shape, required) : tubeToShape(stub, shape, required);
    if (!found || found.gap - required >= -ROUNDING) continue;
    if (!worst || found.gap - required < worst.gap - worst.required)
      worst = { by: surrounding.id, gap: found.gap, required, moves: original !== undefined };
  }
  return worst;
}
