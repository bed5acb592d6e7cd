/** Two components, the second carried, whose heats rise linearly with temperature: simple enough to invert exactly. For tests alone. */
import type { Gas } from '../../../src/pulse/equations/gas';

const constants = [287, 320] as const;
const heats = [
  [960, 0.16],
  [1050, 0.3],
] as const;

const mixed = (first: number, second: number, share: number) => first + (second - first) * share;

export const twoGases: Gas = {
  components: ['plain', 'light'],
  carried: 1,
  decode: () => -1,
  faces: () => {},
  gasConstant: (fractions, at) => mixed(constants[0], constants[1], fractions[at]!),
  gamma: (temperature, fractions, at) => {
    const share = fractions[at]!;
    const heat = mixed(heats[0][0], heats[1][0], share) + mixed(heats[0][1], heats[1][1], share) * temperature;
    return heat / (heat - mixed(constants[0], constants[1], share));
  },
  enthalpy: (temperature, fractions, at) => {
    const share = fractions[at]!;
    const flat = mixed(heats[0][0], heats[1][0], share);
    return flat * temperature + 0.5 * mixed(heats[0][1], heats[1][1], share) * temperature * temperature;
  },
  temperatureOfEnthalpy: (enthalpy, fractions, at) => {
    const share = fractions[at]!;
    const flat = mixed(heats[0][0], heats[1][0], share);
    const rise = mixed(heats[0][1], heats[1][1], share);
    return (2 * enthalpy) / (flat + Math.sqrt(flat * flat + 2 * rise * enthalpy));
  },
};
