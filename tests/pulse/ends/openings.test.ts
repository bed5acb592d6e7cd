/** Openings to a room: open end, plate, vessel. Against orifice tables and the limits that sound sets, both ways. */
import { describe, expect, test } from 'vitest';
import { opening } from '../../../src/pulse/ends/areaLaw';
import { endCorrection } from '../../../src/pulse/ends/endCorrection';
import { perfectGas } from '../../../src/pulse/equations/perfectGas';
import { flowValue, sourceOf } from '../../reference/flow';
import { air, ambient, atRest, machOnPlane, passed } from './planeSet';
import { choked, orifices } from './published';

/** So wide that what passes the hole leaves its gas at rest. */
const WIDE = 1000;

describe.each(orifices)(`from $pressure to $behind Pa; ${sourceOf('gas.orifice_examples')}`, (row) => {
  const gas = perfectGas(row.gamma, row.gasConstant);
  const hole = { area: 2e-4, dischargeCoefficient: 0.5 };

  test('out of a vessel', () => {
    const inside = { area: WIDE, pressure: row.behind, temperature: 400, velocity: 0 };
    const { pressure, temperature } = row;
    const planes = passed(gas, [inside], { kind: 'vessel', volume: 1, pressure, temperature, ...hole });
    expect(Math.abs((-planes.massFlux[0]! * WIDE) / row.mass - 1)).toBeLessThan(1e-5);
  });
  test('out of the surroundings, through a plate', () => {
    const inside = { area: WIDE, pressure: row.behind, temperature: 400, velocity: 0 };
    const planes = passed(gas, [inside], { kind: 'open', ...hole }, row);
    expect(Math.abs((-planes.massFlux[0]! * WIDE) / row.mass - 1)).toBeLessThan(1e-5);
  });
  test('out of the pipe, through a plate', () => {
    const inside = { area: WIDE, pressure: row.pressure, temperature: row.temperature, velocity: 0 };
    const outside = { pressure: row.behind, temperature: 293.15 };
    const planes = passed(gas, [inside], { kind: 'open', ...hole }, outside);
    expect(Math.abs((planes.massFlux[0]! * WIDE) / row.mass - 1)).toBeLessThan(1e-5);
  });
});

test.each(choked)(
  `a vessel chokes where the tables say, γ $g; ${sourceOf('gas.choked')}`,
  ({ g, p_crit, phi_choked }) => {
    const gas = perfectGas(g, 287);
    const into = (behind: number) => {
      const inside = { area: WIDE, pressure: behind, temperature: 300, velocity: 0 };
      const vessel = { volume: 1, pressure: 1e6, temperature: 900, area: 1e-4, dischargeCoefficient: 1 };
      return (-passed(gas, [inside], { kind: 'vessel', ...vessel }).massFlux[0]! * WIDE * Math.sqrt(287 * 900)) / 100;
    };
    expect(Math.abs(into(1e4) / phi_choked - 1)).toBeLessThan(1e-5);
    expect(into(1e6 * p_crit * 0.999)).toBeCloseTo(into(1e4), 12);
    expect(into(1e6 * p_crit * 1.01) / phi_choked).toBeLessThan(0.99999);
  },
);

test('an open end lets gas out at ambient pressure, no faster than sound, and a supersonic stream as it is', () => {
  const out = passed(air, [{ ...atRest(1e-3), pressure: 1.5e5, velocity: 60 }], { kind: 'open' });
  expect(out.planePressure[0]).toBe(ambient.pressure);
  expect(machOnPlane(out, 0)).toBeLessThan(1);
  const sonic = passed(air, [{ ...atRest(1e-3), pressure: 9e5 }], { kind: 'open' });
  expect(machOnPlane(sonic, 0)).toBeCloseTo(1, 13);
  expect(sonic.planePressure[0]).toBeCloseTo(9e5 * (2 / 2.4) ** 7, 6);
  const fast = passed(air, [{ ...atRest(1e-3), pressure: 9e5, velocity: 900 }], { kind: 'open' });
  expect(fast.planePressure[0]).toBe(9e5);
  expect(fast.planeVelocity[0]).toBe(900);
});

test('an open end lets gas in isentropically, no faster than sound', () => {
  const stagnation = 3.5;
  for (const velocity of [-5, -60, -200, -250]) {
    const planes = passed(air, [{ ...atRest(1e-3), velocity }], { kind: 'open' });
    const p = planes.planePressure[0]!;
    const rho = planes.planeDensity[0]!;
    const u = planes.planeVelocity[0]!;
    expect(u).toBeLessThan(0);
    const rest = ambient.pressure / (287.05 * ambient.temperature);
    expect(rho / (rest * (p / ambient.pressure) ** (1 / 1.4))).toBeCloseTo(1, 11);
    expect((stagnation * p) / rho + 0.5 * u * u).toBeCloseTo(stagnation * 287.05 * ambient.temperature, 5);
    // The pipe's own wave agrees.
    const a = Math.sqrt(1.4 * 287.05 * ambient.temperature);
    expect(u - (velocity + 5 * a * (1 - (p / ambient.pressure) ** (1 / 7)))).toBeCloseTo(0, 8);
  }
  const planes = passed(air, [{ ...atRest(1e-3), pressure: 1e4, velocity: -300 }], { kind: 'open' });
  expect(machOnPlane(planes, 0)).toBeCloseTo(1, 13);
  expect(planes.planePressure[0]).toBeCloseTo(ambient.pressure * 0.5282817877, 4);
});

test('what comes through a hole keeps its stagnation enthalpy and is no faster than sound in the pipe', () => {
  const vessel = { volume: 1, pressure: 8e5, temperature: 1500, area: 4e-4, dischargeCoefficient: 0.7 };
  for (const pressure of [7e5, 3e5, 5e4, 1e3]) {
    const planes = passed(air, [{ ...atRest(1e-3), pressure }], { kind: 'vessel', ...vessel });
    const u = planes.planeVelocity[0]!;
    const enthalpy = (3.5 * planes.planePressure[0]!) / planes.planeDensity[0]! + 0.5 * u * u;
    expect(enthalpy / (3.5 * 287.05 * 1500)).toBeCloseTo(1, 12);
    expect(planes.energyFlux[0]! / planes.massFlux[0]! / (3.5 * 287.05 * 1500)).toBeCloseTo(1, 14);
    expect(machOnPlane(planes, 0)).toBeLessThan(1 + 1e-12);
  }
});

test('a plate as wide as the pipe is none, one without a hole is a wall', () => {
  for (const pressure of [4e4, 9e4, 1.2e5, 9e5])
    for (const velocity of [-200, 0, 300]) {
      const inside = { ...atRest(1e-3), pressure, velocity };
      const plain = passed(air, [inside], { kind: 'open' });
      const plate = passed(air, [inside], { kind: 'open', area: 5e-3, dischargeCoefficient: 0.8 });
      expect([plate.massFlux[0], plate.momentumFlux[0]]).toEqual([plain.massFlux[0], plain.momentumFlux[0]]);
      const nearly = passed(air, [inside], { kind: 'open', area: 1e-3 * (1 - 1e-9) });
      expect(Math.abs(nearly.momentumFlux[0]! / plain.momentumFlux[0]! - 1)).toBeLessThan(1e-6);
      const shut = passed(air, [inside], { kind: 'open', area: 0 });
      expect(shut.momentumFlux[0]).toBe(passed(air, [inside], { kind: 'closed' }).momentumFlux[0]);
      const slit = passed(air, [inside], { kind: 'open', area: 1e-12 });
      expect(slit.momentumFlux[0]! / shut.momentumFlux[0]!).toBeCloseTo(1, 7);
    }
});

test('a through end passes what lies inside', () => {
  const planes = passed(air, [{ ...atRest(1e-3), pressure: 3e5, velocity: -80 }], { kind: 'through' });
  const rho = 3e5 / (287.05 * ambient.temperature);
  expect(planes.massFlux[0]).toBeCloseTo(-80 * rho, 10);
  expect(planes.momentumFlux[0]).toBeCloseTo(3e5 + 6400 * rho, 8);
  expect(planes.energyFlux[0]! / (-80 * (3.5 * 3e5 + 3200 * rho))).toBeCloseTo(1, 14);
});

test('an opening is linear between what is given and holds before and after', () => {
  const law = opening(
    [
      [0, 0],
      [0.002, 4e-4],
      [0.02, 1e-4],
    ],
    0.5,
  );
  expect(law.at(-1)).toBe(0);
  expect(law.at(0.001)).toBeCloseTo(1e-4, 15);
  expect(law.at(0.002)).toBeCloseTo(2e-4, 15);
  expect(law.at(0.011)).toBeCloseTo(1.25e-4, 15);
  expect(law.at(7)).toBe(5e-5);
  expect(law.largest(0, 0.01)).toBe(2e-4);
  expect(law.largest(-1, 0)).toBe(0);
});

test.each([
  ['unflanged', 'ac.end_unflanged'],
  ['flanged', 'ac.end_flanged'],
] as const)('an end correction by its name: %s, published in radii (%s)', (name, id) => {
  expect(endCorrection(name, 0.02)).toBeCloseTo(0.02 * flowValue<number>(id), 12);
});

test('an end correction is a length in radii', () => {
  expect(endCorrection(undefined, 0.02)).toBe(0);
  expect(endCorrection(0.7, 0.02)).toBeCloseTo(0.014, 12);
});
