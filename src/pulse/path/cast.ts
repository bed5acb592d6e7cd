/**
 * The gas path of what a header replaces: each port a short rough branch, counted from its flange, into one passage a bank that they
 * enter one after the other, evenly spaced; behind it the tailpipe. SI units.
 *
 * Each but the first comes into the passage from the side, so what of its momentum does not point along it is lost there (Idelchik's law
 * of converging wyes, in ends/lossyJunction.ts); bends lose nothing.
 */
import { insist, type Refusal } from '../../../shared/design/refusal';
import type { CastManifold, Design } from '../../../shared/design/types';
import { boreFrom, throughHead } from './bores';
import { banksOf, cylinderProblems, headAssumed, headOf, pipesOf } from './engineOf';
import { outletsOf } from './laidOut';
import { metres } from './metres';
import { pipeIds } from './pipeIds';
import { LEAST, plainProblems } from './plainProblems';
import { joined, noParts, type PathParts, type PathReading, sideways, wholePath } from './reading';
import { addTailpipe, tailpipeOf } from './tailpipe';
import type { PathPipe } from './types';
import { roughnessAssumed, usualCast } from './usualCast';
import { CAST_ROUGHNESS, WALL_TEMPERATURES } from './walls';

export const CAST = 'cast manifold';

/** Between a branch and the passage it comes into, degrees: swept forward, as most castings have them. Our own choice. */
const SWEPT = 60;

/**
 * @param cast as measured; absent: `exhaust.cast` of the design, or the usual one
 * @throws DesignError naming the field
 */
export function castPath(design: Design, cast: CastManifold | undefined = design.exhaust?.cast): PathReading {
  insist(cylinderProblems(design));
  const usual = cast ? null : usualCast(design);
  const given = cast ?? usual!.cast;
  const roughnessGiven = given.roughness ?? CAST_ROUGHNESS;
  insist(castProblems({ ...given, roughness: roughnessGiven }, design));
  const parts = noParts();
  const nameOf = pipeIds();
  const banks = banksOf(design);
  const lasts = banks.map((bank, b) => {
    const name = banks.length === 1 ? 'shared' : `bank ${b + 1} shared`;
    return addBank(parts, given, metres(roughnessGiven), design, bank, (wanted) => nameOf(wanted), name);
  });

  const outlets = outletsOf(design);
  const like = outlets.length === 0 ? undefined : { bore: Math.max(...outlets), why: AS_WIDE_AS_THE_HEADERS };
  const tailpipe = tailpipeOf(design.exhaust, metres(given.shared.bore), like);
  lasts.forEach((last, i) => {
    addTailpipe(parts, last, nameOf(banks.length === 1 ? 'tailpipe' : `tailpipe ${i + 1}`), tailpipe.tailpipe);
  });
  const assumed = usual?.assumed ?? (cast?.roughness === undefined ? [roughnessAssumed] : []);
  return wholePath(CAST, parts, [...headAssumed(design), ...assumed, ...tailpipe.assumed]);
}

const AS_WIDE_AS_THE_HEADERS =
  'As wide as the widest outlet of the header, so that both breathe through the same tailpipe; the length is our own choice';

function castProblems({ branch, shared, roughness }: CastManifold, design: Design): Refusal[] {
  const path = 'exhaust/cast';
  const most = Math.max(
    0,
    ...banksOf(design).map((bank) => bank.reduce((sum, cylinder) => sum + pipesOf(design, cylinder), 0)),
  );
  const narrowest = Math.min(branch.bore, shared.bore) / 2;
  return [
    ...plainProblems(branch, `${path}/branch`),
    ...plainProblems(shared, `${path}/shared`, LEAST * most, `, ${LEAST} mm for each branch`),
    ...(roughness! >= 0 && roughness! <= narrowest
      ? []
      : [{ path: `${path}/roughness`, found: `${roughness} mm`, allowed: `0 to ${narrowest} mm, half the bore` }]),
  ];
}

/** Branches in the order of the bank; answers the passage's last stretch, whose finish is the outlet. */
function addBank(
  parts: PathParts,
  { branch, shared }: CastManifold,
  roughness: number,
  design: Design,
  bank: readonly number[],
  nameOf: (wanted: string) => string,
  name: string,
): PathPipe {
  const branches = bank.flatMap((cylinder) => {
    const count = pipesOf(design, cylinder);
    return Array.from({ length: count }, (_, k): PathPipe => {
      const own = metres(branch.bore);
      const { inHead, bore } = headOf(design, cylinder, k, own);
      const length = inHead + metres(branch.length);
      const id = nameOf(`branch ${cylinder}`);
      parts.valves.push({ cylinder, pipe: id, share: 1 / count });
      return { ...casting(id, 'branch', roughness), length, diameter: throughHead(bore, own, length), inHead };
    });
  });
  parts.pipes.push(...branches);

  const length = metres(shared.length) / branches.length;
  let before: PathPipe | null = null;
  branches.forEach(({ id }, i) => {
    const stretch: PathPipe = {
      ...casting(nameOf(branches.length === 1 ? name : `${name} ${i + 1}`), 'shared', roughness),
      length,
      diameter: boreFrom(metres(shared.bore), metres(shared.bore), length),
      inHead: 0,
    };
    parts.pipes.push(stretch);
    parts.ends.push(before ? sideways(before.id, id, stretch.id, SWEPT) : joined([id], stretch.id));
    before = stretch;
  });
  return before!;
}

const casting = (id: string, role: 'branch' | 'shared', roughness: number) => ({
  id,
  role,
  roughness,
  wallTemperature: WALL_TEMPERATURES[role],
  part: null,
});
