/**
 * The gas path of a header that is laid out: a pipe for each runner and one for each collector, with the lengths of the geometry
 * kernel, and a tailpipe behind each collector that nothing follows. A runner from a port begins at the valve. SI units.
 *
 * Pipes meet in a collector in the circle that has the areas of all that enter, which then narrows to the outlet: a junction straight
 * into the outlet would let too much through (docs/rig.md).
 */
import { type Header, type ResolvedMerge, type ResolvedRunner, resolveHeader } from '../../../geometry/header/resolve';
import { insist } from '../../../shared/design/refusal';
import type { Design, Port } from '../../../shared/design/types';
import type { Assumed } from '../engine/types';
import { boreFrom, sumDiameter, throughHead } from './bores';
import { laidOutProblems } from './laidOutProblems';
import { metres } from './metres';
import { pipeIds } from './pipeIds';
import { portInHead } from './port';
import { collected, finishDiameter, joined, noParts, type PathReading, wholePath } from './reading';
import { addTailpipe, tailpipeOf } from './tailpipe';
import type { PathPipe } from './types';
import { tubeRoughness, WALL_TEMPERATURES } from './walls';

export const LAID_OUT = 'laid-out header';

/**
 * Covers the cylinders whose ports the design has: `coveredCylinders`.
 * @throws DesignError naming runners that are not routed, ports and merges that nothing joins, pipes that are too short
 */
export function laidOutPath(design: Design): PathReading {
  const header = resolveHeader(design);
  insist(laidOutProblems(header));
  const parts = noParts();
  const nameOf = pipeIds();
  const runnerIds = new Map(header.runners.map(({ runner }) => [runner.id, nameOf(runner.id)]));
  const pipeOf = new Map<string, PathPipe>();
  const enter = (r: ResolvedRunner, pipe: PathPipe): void => {
    parts.pipes.push(pipe);
    pipeOf.set(r.runner.id, pipe);
  };

  for (const r of header.runners) {
    const { from } = r.runner;
    if (!('port' in from)) continue;
    const { port } = header.ports.get(from.port)!;
    const pipe = primary(design, r, port, runnerIds.get(r.runner.id)!);
    const sharing = design.ports.filter(({ cylinder }) => cylinder === port.cylinder).length;
    enter(r, pipe);
    parts.valves.push({ cylinder: port.cylinder, pipe: pipe.id, share: 1 / sharing });
  }

  const lasts: PathPipe[] = [];
  for (const merge of withTheFlow(header)) {
    const inlets = header.runners.filter(({ runner }) => runner.to.merge === merge.merge.id);
    const entering = inlets.map(({ runner }) => pipeOf.get(runner.id)!);
    const cone = collector(merge, entering, nameOf(merge.merge.id));
    parts.pipes.push(cone);
    parts.ends.push(
      collected(
        entering.map(({ id }) => id),
        cone.id,
        merge.merge.convergence,
      ),
    );
    const next = follower(header, merge.merge.id);
    if (!next) {
      lasts.push(cone);
      continue;
    }
    const pipe = secondary(next, cone, runnerIds.get(next.runner.id)!);
    enter(next, pipe);
    parts.ends.push(joined([cone.id], pipe.id));
  }

  const tailpipes = lasts.map((cone) => tailpipeOf(design.exhaust, finishDiameter(cone)));
  lasts.forEach((cone, i) => {
    const id = nameOf(lasts.length === 1 ? 'tailpipe' : `tailpipe ${i + 1}`);
    addTailpipe(parts, cone, id, tailpipes[i]!.tailpipe);
  });
  const assumed = tailpipes.flatMap((one) => one.assumed);
  const isFirst = ({ taken }: Assumed, i: number): boolean => assumed.findIndex((one) => one.taken === taken) === i;
  return wholePath(LAID_OUT, parts, assumed.filter(isFirst));
}

/** m, inside the outlets of all collectors that nothing follows, whether or not the header is laid out. */
export const outletsOf = (design: Design): number[] => {
  const header = resolveHeader(design);
  return withTheFlow(header)
    .filter(({ merge }) => !follower(header, merge.id))
    .map(outletDiameter);
};

const outletDiameter = ({ merge, wall }: ResolvedMerge): number => metres(merge.outletDiameter - 2 * wall);

const insideDiameter = ({ tube }: ResolvedRunner): number => metres(tube.outsideDiameter - 2 * tube.wall);

function primary(design: Design, r: ResolvedRunner, port: Port, id: string): PathPipe {
  const { inHead, bore } = portInHead(design, port);
  const length = metres(r.lengthInHead + r.centerline!.length);
  const taper = port.transition && metres(port.transition.length);
  return {
    ...tubing(r, id, 'primary'),
    length,
    diameter: throughHead(bore, insideDiameter(r), length, taper),
    inHead,
  };
}

function secondary(r: ResolvedRunner, before: PathPipe, id: string): PathPipe {
  const length = metres(r.centerline!.length);
  return {
    ...tubing(r, id, 'secondary'),
    length,
    diameter: boreFrom(finishDiameter(before), insideDiameter(r), length),
    inHead: 0,
  };
}

const tubing = ({ runner, tooling }: ResolvedRunner, id: string, role: 'primary' | 'secondary') => ({
  id,
  role,
  roughness: tubeRoughness(tooling),
  wallTemperature: WALL_TEMPERATURES[role],
  part: { runner: runner.id },
});

function collector(resolved: ResolvedMerge, entering: readonly PathPipe[], id: string): PathPipe {
  const { merge } = resolved;
  const length = metres(merge.length);
  return {
    id,
    role: 'collector',
    length,
    diameter: [
      [0, sumDiameter(entering.map(finishDiameter))],
      [length, outletDiameter(resolved)],
    ],
    roughness: tubeRoughness(),
    wallTemperature: WALL_TEMPERATURES.collector,
    inHead: 0,
    part: { merge: merge.id },
  };
}

const follower = ({ runners }: Header, merge: string): ResolvedRunner | undefined =>
  runners.find(({ runner: { from } }) => 'merge' in from && from.merge === merge);

/** Merges that something enters, each behind all that lead to it; otherwise as the design lists them. */
function withTheFlow(header: Header): ResolvedMerge[] {
  const left = [...header.merges.values()].filter(({ merge }) =>
    header.runners.some(({ runner }) => runner.to.merge === merge.id),
  );
  const done: ResolvedMerge[] = [];
  const isFed = ({ merge }: ResolvedMerge): boolean =>
    header.runners.every(
      ({ runner: { from, to } }) =>
        to.merge !== merge.id || 'port' in from || done.some((other) => other.merge.id === from.merge),
    );
  while (left.length > 0) {
    const next = left.findIndex(isFed);
    if (next < 0) throw new Error('merges that feed each other in a circle');
    done.push(...left.splice(next, 1));
  }
  return done;
}
