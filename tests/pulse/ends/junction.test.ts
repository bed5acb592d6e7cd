/** The junction at one pressure: acoustics, shocks into gas at rest, streams that go straight on, mixtures, and the limits of sound. */
import { describe, expect, test } from 'vitest';
import { flowValue, sourceOf } from '../../reference/flow';
import {
  air,
  ambient,
  atRest,
  behindShock,
  endOver,
  type Inside,
  machOnPlane,
  passed,
  planesOf,
  setInside,
} from './planeSet';
import { twoGases } from './twoGases';

const junction = { kind: 'junction', model: 'equal-pressure' } as const;
const sound = Math.sqrt(1.4 * 287.05 * ambient.temperature);

/** Behind a small wave of this pressure, running toward the plane. */
function small(area: number, rise: number): Inside {
  const density = ambient.pressure / (287.05 * ambient.temperature);
  return {
    area,
    pressure: ambient.pressure + rise,
    temperature: ambient.temperature * (1 + (rise / ambient.pressure) * (0.4 / 1.4)),
    velocity: rise / (density * sound),
  };
}

const RISE = 1;
/** Of the rise: what second order leaves at so small an amplitude. */
const LEFT = 2e-5;

test.each(flowValue<{ S2_S1: number; R_pressure: number }[]>('ac.area_change'))(
  `a small wave at a change of area to $S2_S1 is reflected; ${sourceOf('ac.area_change')}`,
  ({ S2_S1, R_pressure }) => {
    const planes = passed(air, [small(1e-3, RISE), atRest(S2_S1 * 1e-3)], junction);
    expect(Math.abs((planes.planePressure[0]! - ambient.pressure) / RISE - 1 - R_pressure)).toBeLessThan(LEFT);
    expect(planes.planePressure[2]).toBe(planes.planePressure[0]);
  },
);

test.each(Object.values(flowValue<Record<string, { S: number[]; T: number }>>('ac.junction')))(
  `a small wave is passed on among pipes of $S; ${sourceOf('ac.junction')}`,
  ({ S, T }) => {
    const insides = S.map((area, k) => (k === 0 ? small(area, RISE) : atRest(area)));
    const planes = passed(air, insides, junction);
    expect(Math.abs((planes.planePressure[0]! - ambient.pressure) / RISE - T)).toBeLessThan(LEFT);
  },
);

type Shock = { Ms: number; S: number[]; p_junction_ratio: number; u_incident_pipe: number; u_out: number };
test.each(flowValue<Shock[]>('ac.finite_junction'))('a shock of Mach $Ms into $S', ({ Ms, S, ...expected }) => {
  const insides = S.map((area, k) => (k === 0 ? behindShock(area, Ms) : atRest(area)));
  const planes = passed(air, insides, junction);
  // As many digits as the values have.
  expect(Math.abs(planes.planePressure[0]! / ambient.pressure - expected.p_junction_ratio)).toBeLessThan(6e-6);
  expect(Math.abs(planes.planeVelocity[0]! / expected.u_incident_pipe - 1)).toBeLessThan(1e-5);
  expect(Math.abs(-planes.planeVelocity[2]! / expected.u_out - 1)).toBeLessThan(1e-5);
});

test('gas at rest at one pressure stays at rest exactly, whatever its temperatures', () => {
  const insides = [300, 1234.5, 777.7, 431].map((temperature, k) => ({ ...atRest(1e-3 * (k + 1.1)), temperature }));
  const planes = passed(air, insides, junction);
  for (const i of [0, 2, 4, 6]) {
    expect(planes.massFlux[i]).toBe(0);
    expect(planes.momentumFlux[i]).toBe(ambient.pressure);
    expect(planes.energyFlux[i]).toBe(0);
  }
});

describe.each([
  ['air', air, []],
  ['two gases', twoGases, [0.3]],
] as const)('%s', (_name, gas, fractions) => {
  test('a steady stream goes on through two pipes of one bore as if it were one', () => {
    for (const velocity of [0.01, 40, -150, 300]) {
      const inside = { area: 1e-3, pressure: 1.4e5, temperature: 700, velocity, fractions };
      const planes = passed(gas, [inside, { ...inside, velocity: -velocity }], junction);
      const from = velocity > 0 ? 0 : 2;
      const into = 2 - from;
      expect(planes.planePressure[into]! / 1.4e5).toBeCloseTo(1, 12);
      expect(planes.planeVelocity[into]! / -Math.abs(velocity)).toBeCloseTo(1, 11);
      expect(planes.planeDensity[into]! / planes.planeDensity[from]!).toBeCloseTo(1, 11);
      expect(planes.momentumFlux[into]! / planes.momentumFlux[from]!).toBeCloseTo(1, 12);
    }
  });
});

test('what leaves carries the mixed fractions and stagnation enthalpy', () => {
  const insides: Inside[] = [
    { area: 1e-3, pressure: 1.5e5, temperature: 1100, velocity: 120, fractions: [1] },
    { area: 2e-3, pressure: 1.3e5, temperature: 420, velocity: 60, fractions: [0.1] },
    { area: 2e-3, pressure: 1.2e5, temperature: 600, velocity: -90, fractions: [0.5] },
    { area: 1e-3, pressure: 1.1e5, temperature: 300, velocity: 0, fractions: [0] },
  ];
  const planes = passed(twoGases, insides, junction);
  const at = [0, 2, 4, 6];
  const mass = at.map((i) => planes.area[i]! * planes.massFlux[i]!);
  expect(mass.map(Math.sign)).toEqual([1, 1, -1, -1]);
  const light = at.map((i) => planes.area[i]! * planes.partialFlux[i]!);
  const energy = at.map((i) => planes.area[i]! * planes.energyFlux[i]!);
  for (const flows of [mass, light, energy])
    expect(Math.abs(flows.reduce((sum, flow) => sum + flow, 0))).toBeLessThan(1e-15 * Math.abs(flows[0]!) * 8);
  for (const k of [2, 3]) {
    expect(planes.planeFractions[at[k]!]).toBeCloseTo((mass[0]! + 0.1 * mass[1]!) / (mass[0]! + mass[1]!), 14);
    expect(energy[k]! / mass[k]! / ((energy[0]! + energy[1]!) / (mass[0]! + mass[1]!))).toBeCloseTo(1, 14);
    // The state on the plane has that enthalpy.
    const i = at[k]!;
    const { planeFractions, planePressure, planeDensity, planeVelocity } = planes;
    const temperature = planePressure[i]! / (planeDensity[i]! * twoGases.gasConstant(planeFractions, i, 8));
    const static_ = twoGases.enthalpy(temperature, planeFractions, i, 8);
    expect((static_ + 0.5 * planeVelocity[i]! ** 2) / (energy[k]! / mass[k]!)).toBeCloseTo(1, 10);
  }
});

test('out of a pipe and into a pipe no faster than sound', () => {
  const insides = [
    { ...atRest(1e-3), pressure: 3e6, temperature: 900 },
    { ...atRest(1e-3), pressure: 2e4 },
    { ...atRest(4e-4), pressure: 1e3, velocity: -200 },
  ];
  const planes = passed(air, insides, junction);
  expect(machOnPlane(planes, 0)).toBeCloseTo(1, 13);
  expect(planes.planePressure[0]).toBeGreaterThan(planes.planePressure[2]!);
  expect(planes.planePressure[4]).toBe(planes.planePressure[2]);
  expect(machOnPlane(planes, 4)).toBeCloseTo(1, 12);
});

test('nothing jumps where a stream turns round', () => {
  const planes = planesOf(air, [
    { ...atRest(1e-3), velocity: 50, temperature: 900 },
    { ...atRest(2e-3), temperature: 350 },
    { ...atRest(1.5e-3), velocity: -20, temperature: 500 },
  ]);
  const end = endOver(planes, junction);
  const steps = 4000;
  let turned = 0;
  let before: number[] = [];
  for (let n = 0; n <= steps; n++) {
    setInside(planes, 2, { ...atRest(2e-3), temperature: 350, velocity: 40 * ((2 * n) / steps - 1) });
    end.pass(0, 1e-6);
    const now = [0, 2, 4].flatMap((i) => [planes.massFlux[i]!, planes.momentumFlux[i]! / sound]);
    // A velocity changes by 0.02 m/s a step, so a flux of mass by no more than about that times a density.
    now.forEach((value, k) => {
      if (n > 0) expect(Math.abs(value - before[k]!)).toBeLessThan(0.05);
    });
    if (n > 0 && Math.sign(now[2]!) !== Math.sign(before[2]!)) turned++;
    before = now;
  }
  expect(turned).toBe(1);
});
