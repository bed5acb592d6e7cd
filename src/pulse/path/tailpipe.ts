/**
 * What follows a last collector: the tailpipe, a silencer as a plate over its mouth, the open air. Lengths in the document mm, here m.
 */
import { insist } from '../../../shared/design/refusal';
import type { Exhaust, Tailpipe } from '../../../shared/design/types';
import type { Assumed } from '../engine/types';
import { boreFrom } from './bores';
import { metres, millimetres } from './metres';
import { plainProblems } from './plainProblems';
import { finishDiameter, joined, type PathParts } from './reading';
import type { PathEnd, PathPipe } from './types';
import { DRAWN_ROUGHNESS, WALL_TEMPERATURES } from './walls';

/** mm: to the middle of a vehicle. Our own choice. */
const USUAL_LENGTH = 2000;

/**
 * m² of the hole in a plate over a mouth of `area` by which the stagnation pressure lost is `coefficient` dynamic pressures of the pipe
 * more than through the bare mouth. Bernoulli's equation, steady and slow: a bare mouth loses one dynamic pressure, as its jet comes
 * to rest outside; through a hole the jet is A / Aeff as fast and loses (A / Aeff)². So K = (A / Aeff)² − 1. (Borda and Carnot's
 * K = (A / Aeff − 1)² is of a plate within a pipe, where part of the jet's pressure comes back.)
 */
export const holeFor = (area: number, coefficient: number): number => area / Math.sqrt(1 + coefficient);

export type TailpipeGiven = { readonly tailpipe: Tailpipe; readonly assumed: readonly Assumed[] };

/**
 * @param outlet m, of what it follows. @param like where another bore is the usual one: m, and why
 * @throws DesignError naming the field
 */
export function tailpipeOf(
  exhaust: Exhaust | undefined,
  outlet: number,
  like?: { readonly bore: number; readonly why: string },
): TailpipeGiven {
  insist(exhaust?.tailpipe ? plainProblems(exhaust.tailpipe, 'exhaust/tailpipe') : []);
  if (exhaust?.tailpipe) return { tailpipe: exhaust.tailpipe, assumed: [] };
  const bore = Math.round(100 * millimetres(like?.bore ?? outlet)) / 100;
  return {
    tailpipe: { length: USUAL_LENGTH, bore: like ? bore : millimetres(outlet) },
    assumed: [
      {
        path: 'exhaust/tailpipe',
        name: 'Tailpipe',
        taken: `${USUAL_LENGTH} mm long, ${bore} mm inside, no silencer`,
        why: like?.why ?? 'As wide as the outlet that it follows; the length is our own choice',
      },
    ],
  };
}

/** Behind `before`, whose finish is still open. */
export function addTailpipe(
  parts: PathParts,
  before: PathPipe,
  id: string,
  { length, bore, silencer }: Tailpipe,
): void {
  const [long, wide] = [metres(length), metres(bore)];
  parts.pipes.push({
    id,
    role: 'tailpipe',
    length: long,
    diameter: boreFrom(finishDiameter(before), wide, long),
    roughness: DRAWN_ROUGHNESS,
    wallTemperature: WALL_TEMPERATURES.tailpipe,
    inHead: 0,
    part: null,
  });
  parts.ends.push(joined([before.id], id), mouth(id, wide, silencer ?? 0));
}

function mouth(pipe: string, bore: number, silencer: number): PathEnd {
  const open = { kind: 'open', at: [pipe, 'finish'], endCorrection: 'unflanged' } as const;
  if (silencer === 0) return open;
  return { ...open, area: holeFor((Math.PI / 4) * bore ** 2, silencer), dischargeCoefficient: 1 };
}
