/** An end of a rig, as the document has it → the end that runs. The only place that knows all kinds. SI units. */
import type { Gas } from '../equations/gas';
import type { Ambient, Fractions, RigEnd } from '../rig/types';
import { opening } from './areaLaw';
import { closedEnd } from './closed';
import { equalPressureJunction } from './junction';
import { openEnd } from './open';
import type { End, Planes } from './planes';
import { throughEnd } from './through';
import { vesselEnd } from './vessel';

/** @param at the planes of the pipe ends that it joins, in their order */
export function makeEnd(input: RigEnd, at: readonly number[], planes: Planes, ambient: Ambient): End {
  const only = at[0]!;
  switch (input.kind) {
    case 'closed':
      return closedEnd(planes, only);
    case 'through':
      return throughEnd(planes, only);
    case 'open': {
      const fractions = carriedOf(planes.gas, ambient.fractions);
      const hole = input.area === undefined ? null : opening(input.area, input.dischargeCoefficient ?? 1);
      return openEnd(planes, only, { ...ambient, fractions }, hole);
    }
    case 'vessel': {
      const fractions = carriedOf(planes.gas, input.fractions);
      return vesselEnd(planes, only, { ...input, fractions }, opening(input.area, input.dischargeCoefficient));
    }
    case 'junction':
      if (input.model !== 'equal-pressure') throw new Error('no junction that loses pressure yet');
      return equalPressureJunction(planes, at);
    case 'restriction':
      throw new Error('no restriction yet');
  }
}

/** Of the carried components, in the gas's order. */
export function carriedOf(gas: Gas, fractions: Fractions | undefined): Float64Array {
  return Float64Array.from({ length: gas.carried }, (_, k) => fractions?.[gas.components[k + 1]!] ?? 0);
}
