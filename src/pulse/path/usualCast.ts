/** A cast manifold that nobody measured: short branches into a shared passage a bank. Common practice. Document: mm. */
import type { CastManifold, Design } from '../../../shared/design/types';
import type { Assumed } from '../engine/types';
import { banksOf, usualOpening } from './engineOf';
import { millimetres } from './metres';
import { throatDiameter } from './port';
import { CAST_ROUGHNESS } from './walls';

/** mm, from the flange into the passage. */
const BRANCH = 90;
/** mm, from the first branch to the outlet, of up to four; every further branch asks for as much again as four have each. */
const SHARED = 300;
const EACH = 75;
/** The passage beside a branch: a mild one, which does not throttle. */
const WIDER = 1.15;
/** A port's opening beside its valves' throats, where only these are known; and mm where neither is. */
const OPENED = 1.1;
const USUAL_BORE = 34;

export function usualCast(design: Design): { readonly cast: CastManifold; readonly assumed: readonly Assumed[] } {
  const most = Math.max(0, ...banksOf(design).map((bank) => bank.length));
  const { bore, why } = branchBore(design);
  const shared = Math.round(WIDER * bore);
  const length = Math.max(SHARED, EACH * most);
  return {
    cast: { branch: { length: BRANCH, bore }, shared: { length, bore: shared }, roughness: CAST_ROUGHNESS },
    assumed: [
      {
        path: 'exhaust/cast/branch',
        name: 'Branches of the cast manifold',
        taken: `${BRANCH} mm from the flange, ${bore} mm inside`,
        why: `Common practice; ${why}`,
      },
      {
        path: 'exhaust/cast/shared',
        name: 'Shared passage of the cast manifold',
        taken: `${length} mm from the first branch to the outlet, ${shared} mm inside`,
        why: 'Common practice; a little wider than a branch',
      },
      roughnessAssumed,
    ],
  };
}

export const roughnessAssumed: Assumed = {
  path: 'exhaust/cast/roughness',
  name: 'Roughness of the casting',
  taken: `${CAST_ROUGHNESS} mm`,
  why: 'Common practice: cast iron as it leaves the sand',
};

/** mm, to the tenth. */
function branchBore(design: Design): { readonly bore: number; readonly why: string } {
  const tenth = (mm: number): number => Math.round(10 * mm) / 10;
  const opening = usualOpening(design);
  if (opening !== null) return { bore: tenth(opening), why: 'as wide as the ports' };
  const throat = throatDiameter(design, 1);
  return throat === null
    ? { bore: USUAL_BORE, why: 'neither ports nor valves are given' }
    : { bore: tenth(OPENED * millimetres(throat)), why: 'a little wider than the valves’ throats' };
}
