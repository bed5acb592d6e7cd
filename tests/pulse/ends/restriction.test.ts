/** A plate between two pipes: isentropic where it should be, transparent where it is none, choked where it must. */
import { expect, test } from 'vitest';
import { perfectGas } from '../../../src/pulse/equations/perfectGas';
import { flowValue, sourceOf } from '../../reference/flow';
import { air, ambient, atRest, behindShock, machOnPlane, passed } from './planeSet';
import { choked, orifices } from './published';

const hole = (area: number, dischargeCoefficient = 1) => ({ kind: 'restriction', area, dischargeCoefficient }) as const;

type AreaChange = { Ms: number; S2_S1: number; p1_ratio: number; p2_ratio: number; u1: number; u2: number };
// Into a wider pipe a plate is not isentropic: a jet dissipates behind it.
const narrowing = flowValue<AreaChange[]>('ac.finite_area').filter(({ S2_S1 }) => S2_S1 < 1);

test(`shocks that run into less area are published; ${sourceOf('ac.finite_area')}`, () => {
  expect(narrowing).toHaveLength(3);
});

test.each(narrowing)(
  'a shock of Mach $Ms runs isentropically into $S2_S1 of the area',
  ({ Ms, S2_S1, ...expected }) => {
    const planes = passed(air, [behindShock(1, Ms), atRest(S2_S1)], hole(S2_S1));
    expect(Math.abs(planes.planePressure[0]! / ambient.pressure - expected.p1_ratio)).toBeLessThan(6e-6);
    expect(Math.abs(planes.planePressure[2]! / ambient.pressure - expected.p2_ratio)).toBeLessThan(6e-6);
    expect(Math.abs(planes.planeVelocity[0]! / expected.u1 - 1)).toBeLessThan(1e-5);
    expect(Math.abs(-planes.planeVelocity[2]! / expected.u2 - 1)).toBeLessThan(1e-5);
  },
);

test.each(orifices)('between two wide pipes, from $pressure to $behind Pa', (row) => {
  const gas = perfectGas(row.gamma, row.gasConstant);
  const high = { area: 1000, pressure: row.pressure, temperature: row.temperature, velocity: 0 };
  const low = { ...high, pressure: row.behind, temperature: 500 };
  const one = passed(gas, [high, low], hole(2e-4, 0.5));
  expect(Math.abs((one.massFlux[0]! * 1000) / row.mass - 1)).toBeLessThan(1e-5);
  const other = passed(gas, [low, high], hole(2e-4, 0.5));
  expect(Math.abs((other.massFlux[2]! * 1000) / row.mass - 1)).toBeLessThan(1e-5);
});

test.each(choked)('chokes as the tables say, γ $g', ({ g, phi_choked }) => {
  const high = { area: 1000, pressure: 1e6, temperature: 900, velocity: 0 };
  const planes = passed(perfectGas(g, 287), [high, { ...high, area: 1e-3, pressure: 1e4 }], hole(1e-4));
  expect(Math.abs((planes.massFlux[0]! * 1000 * Math.sqrt(287 * 900)) / 100 / phi_choked - 1)).toBeLessThan(1e-5);
});

test('as wide as the narrower pipe downstream of it, it is the junction at one pressure where bores are equal', () => {
  for (const velocity of [0.5, 30, 200]) {
    const insides = [
      { ...atRest(1e-3), velocity, temperature: 600 },
      { ...atRest(1e-3), temperature: 400 },
    ];
    const plate = passed(air, insides, hole(5e-3));
    const none = passed(air, insides, { kind: 'junction', model: 'equal-pressure' });
    for (const i of [0, 2]) {
      expect(plate.massFlux[i]! / none.massFlux[i]!).toBeCloseTo(1, 9);
      expect(plate.momentumFlux[i]! / none.momentumFlux[i]!).toBeCloseTo(1, 10);
    }
  }
});

test('at rest or shut it is a wall with two sides', () => {
  const hot = { ...atRest(1e-3), temperature: 1100 };
  const still = passed(air, [atRest(2e-3), hot], hole(1e-4));
  for (const i of [0, 2]) {
    expect(still.massFlux[i]).toBe(0);
    expect(still.momentumFlux[i]).toBe(ambient.pressure);
  }
  const moving = { ...hot, velocity: 90 };
  const shut = passed(air, [moving, atRest(1e-3)], hole(0));
  expect(shut.momentumFlux[0]).toBe(passed(air, [moving], { kind: 'closed' }).momentumFlux[0]);
  expect(shut.momentumFlux[2]).toBe(ambient.pressure);
});

test('a small hole with a small drop follows the square root of it', () => {
  const density = ambient.pressure / (287.05 * ambient.temperature);
  const flow = (drop: number) => {
    const planes = passed(air, [{ ...atRest(1), pressure: ambient.pressure + drop }, atRest(1)], hole(1e-6));
    return planes.massFlux[0]! / (1e-6 * Math.sqrt(2 * density * drop));
  };
  for (const drop of [1, 10, 100]) expect(Math.abs(flow(drop) - 1)).toBeLessThan(1e-3);
});

test('a supersonic stream is stopped by a small hole and goes through a wide one', () => {
  const fast = { ...atRest(1e-3), velocity: 900 };
  const through = passed(air, [fast, atRest(1e-3)], hole(1e-3));
  expect(through.planePressure[0]).toBe(ambient.pressure);
  expect(machOnPlane(through, 2)).toBeLessThan(1 + 1e-12);
  const stopped = passed(air, [fast, atRest(1e-3)], hole(2e-4));
  expect(machOnPlane(stopped, 0)).toBeLessThan(0.3);
  expect(stopped.planePressure[0]).toBeGreaterThan(5 * ambient.pressure);
});
