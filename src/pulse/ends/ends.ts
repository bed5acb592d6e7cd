/** An end of a rig, as the document has it → the end that runs. The only place that knows all kinds. SI units. */
import type { Gas } from '../equations/gas';
import type { Ambient, Fractions, JunctionEnd, RigEnd } from '../rig/types';
import { opening } from './areaLaw';
import { closedEnd } from './closed';
import { equalPressureJunction } from './junction';
import { lossyJunction } from './lossyJunction';
import { openEnd } from './open';
import type { End, Planes } from './planes';
import { restrictionEnd } from './restriction';
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
      return input.model === 'equal-pressure'
        ? equalPressureJunction(planes, at)
        : lossyJunction(planes, at, directionsOf(input));
    case 'restriction':
      return restrictionEnd(planes, at, opening(input.area, input.dischargeCoefficient));
  }
}

/** Of the carried components, in the gas's order. */
export function carriedOf(gas: Gas, fractions: Fractions | undefined): Float64Array {
  return Float64Array.from({ length: gas.carried }, (_, k) => fractions?.[gas.components[k + 1]!] ?? 0);
}

/** @throws where the junction says neither angles nor directions for its pipes: the reader refuses that with its place */
function directionsOf(junction: JunctionEnd): readonly (readonly [number, number, number])[] {
  if (junction.directions) return junction.directions;
  if (!junction.angles) throw new Error('a junction that loses pressure has neither angles nor directions');
  return junction.angles.map((angle) => {
    const turned = (angle * Math.PI) / 180;
    return [Math.cos(turned), Math.sin(turned), 0] as const;
  });
}
