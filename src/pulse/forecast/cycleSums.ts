/** What one cycle of an engine came to: from what its cylinders added up between its two ends. SI units. */
import { between, type Counts } from '../engine/counts';
import { meanPistonSpeed } from '../engine/crank';
import { frictionPressure } from '../engine/friction';
import type { Joined } from '../engine/join';
import { airOutside } from '../engine/outside';
import type { EngineSetup } from '../engine/types';
import type { CylinderAnswer, SpeedAnswer } from './types';

export const countsOf = ({ cylinders }: Joined): Counts[] => cylinders.map(({ counts }) => ({ ...counts }));

export type CycleSums = Pick<
  SpeedAnswer,
  | 'rpm'
  | 'torque'
  | 'power'
  | 'bmep'
  | 'imep'
  | 'pmep'
  | 'fmep'
  | 'volumetricEfficiency'
  | 'residual'
  | 'lost'
  | 'reversion'
  | 'exhaustTemperature'
  | 'peakPressure'
  | 'shares'
  | 'cylinders'
>;

/** @param before counts of each cylinder at the cycle's start @param ported J to the walls of the exhaust ports in it */
export function cycleSums(
  setup: EngineSetup,
  joined: Joined,
  rpm: number,
  before: readonly Counts[],
  ported: number,
): CycleSums {
  const { gas } = joined.network;
  const { air, density } = airOutside(setup.air);
  const burnt = Float64Array.of(1);
  const done = joined.cylinders.map((cylinder, k) => between(before[k]!, cylinder.counts));
  const { swept } = joined.cylinders[0]!.crank;
  const { burning } = joined.cylinders[0]!;
  const cylinders = joined.cylinders.map((cylinder, k): CylinderAnswer => {
    const counts = done[k]!;
    return {
      cylinder: setup.cylinders[k]!,
      imep: counts.work / swept,
      pmep: counts.exchange / swept,
      volumetricEfficiency: (counts.fresh * burning.air) / (density * swept),
      residual: cylinder.residual,
      lost: counts.lost / counts.fresh,
      reversion: counts.backed / cylinder.trapped,
      peakPressure: cylinder.peak,
      exhaustTemperature: gas.temperatureOfEnthalpy(counts.blownEnthalpy / counts.blown, burnt, 0, 1),
    };
  });
  const mean = (of: (one: CylinderAnswer) => number) =>
    cylinders.reduce((sum, one) => sum + of(one), 0) / cylinders.length;
  const sum = (of: (one: Counts) => number) => done.reduce((all, one) => all + of(one), 0);

  const peakPressure = mean((one) => one.peakPressure);
  const imep = mean((one) => one.imep);
  const fmep = frictionPressure(setup.friction, peakPressure, meanPistonSpeed(setup.stroke, rpm));
  const bmep = imep - fmep;
  const torque = (bmep * swept * cylinders.length) / (4 * Math.PI);
  const fresh = sum((one) => one.fresh);
  const fuel = fresh * burning.fuel * setup.fuel.heat;
  const perCycle = swept * cylinders.length;
  const outside = gas.enthalpy(air.temperature, burnt, 0, 1);
  const shares = {
    brake: (bmep * perCycle) / fuel,
    friction: (fmep * perCycle) / fuel,
    coolant: sum((one) => one.walled) / fuel,
    port: ported / fuel,
    exhaust: (sum((one) => one.leftEnergy - one.left * outside) - ported) / fuel,
    unburnt: 1 - sum((one) => one.released) / fuel,
  };
  const told = shares.brake + shares.friction + shares.coolant + shares.port + shares.exhaust + shares.unburnt;
  return {
    rpm,
    torque,
    power: (torque * 2 * Math.PI * rpm) / 60,
    bmep,
    imep,
    pmep: mean((one) => one.pmep),
    fmep,
    volumetricEfficiency: mean((one) => one.volumetricEfficiency),
    residual: mean((one) => one.residual),
    lost: sum((one) => one.lost) / fresh,
    reversion: mean((one) => one.reversion),
    exhaustTemperature: mean((one) => one.exhaustTemperature),
    peakPressure,
    shares: { ...shares, unaccounted: 1 - told },
    cylinders,
  };
}
