/** The gas that a rig asks for. */
import type { GasInput } from '../rig/types';
import type { Gas } from './gas';
import { mixture } from './mixture';
import { perfectGas } from './perfectGas';

export function gasOf(input: GasInput): Gas {
  return 'components' in input ? mixture(input.components) : perfectGas(input.gamma, input.gasConstant);
}
