/** The exact wave at a wall and behind a given pressure, against published shock and simple-wave relations. */
import { expect, test } from 'vitest';
import { Wave } from '../../../src/pulse/ends/wave';
import { perfectGas } from '../../../src/pulse/equations/perfectGas';
import { flowValue, sourceOf } from '../../reference/flow';
import { air, ambient, atRest, behindShock, passed, planesOf } from './planeSet';

const sound = Math.sqrt(1.4 * 287.05 * ambient.temperature);

type Valve = { Mx_prime: number; p: number; T: number };
type Reflection = { Ms: number; p2_p1: number; p5_p2: number; u2_a1: number };
test.each(flowValue<Reflection[]>('gas.shock_reflection_closed_wall'))(
  `a shock of Mach $Ms is reflected by a wall; ${sourceOf('gas.shock_reflection_closed_wall')}`,
  ({ Ms, p2_p1, p5_p2, u2_a1 }) => {
    const inside = behindShock(1e-3, Ms);
    expect(inside.pressure / ambient.pressure / p2_p1).toBeCloseTo(1, 5);
    expect(inside.velocity / sound / u2_a1).toBeCloseTo(1, 5);
    const planes = passed(air, [inside], { kind: 'closed' });
    expect(Math.abs(planes.planePressure[0]! / inside.pressure / p5_p2 - 1)).toBeLessThan(1e-5);
    expect(planes.massFlux[0]).toBe(0);
    expect(planes.energyFlux[0]).toBe(0);
    expect(planes.momentumFlux[0]).toBe(planes.planePressure[0]);
  },
);

test(`a valve is closed on a supersonic stream; ${sourceOf('gas.table_read_closed_valve')}`, () => {
  const { Mx_prime, p: pressure, T: temperature } = flowValue<Valve>('gas.table_read_closed_valve');
  // As the entry says.
  const tolerance = 2e-4;
  const inside = { area: 1, pressure: 1e5, temperature: 300, velocity: Mx_prime * Math.sqrt(1.4 * 287.05 * 300) };
  const planes = passed(air, [inside], { kind: 'closed' });
  expect(Math.abs(planes.planePressure[0]! / 1e5 / pressure - 1)).toBeLessThan(tolerance);
  const hot = planes.planePressure[0]! / (planes.planeDensity[0]! * 287.05);
  expect(Math.abs(hot / 300 / temperature - 1)).toBeLessThan(tolerance);
});

test(`a valve is opened to twice the pressure; ${sourceOf('gas.table_read_moving_shock')}`, () => {
  const opened = flowValue<{ Ms: number; T: number; rho: number }>('gas.table_read_moving_shock');
  // As the entry says.
  const tolerance = 1e-4;
  const wave = new Wave(planesOf(air, [atRest(1)]), 0);
  wave.meet();
  wave.behind(2 * ambient.pressure);
  const density = wave.rho / wave.density;
  expect(Math.abs(density / opened.rho - 1)).toBeLessThan(tolerance);
  expect(Math.abs(2 / density / opened.T - 1)).toBeLessThan(tolerance);
  // Mass over the shock: the gas behind has been overtaken at the shock's speed.
  const shock = wave.u / (1 - 1 / density) / sound;
  expect(Math.abs(-shock / opened.Ms - 1)).toBeLessThan(tolerance);
});

type Simple = { p_ratio: number; g: number; u_over_a0: number };
// An end meets a compression as the shock that it becomes: only rarefactions stay simple waves.
const rarefactions = flowValue<Simple[]>('gas.simple_wave').filter(({ p_ratio }) => p_ratio < 1);

test(`rarefactions are published; ${sourceOf('gas.simple_wave')}`, () => {
  expect(rarefactions).toHaveLength(4);
});

test.each(rarefactions)('a rarefaction to $p_ratio of the pressure, γ $g', ({ g, p_ratio: pressure, u_over_a0 }) => {
  // The wave runs into the pipe and gas against it: out of the pipe, which is positive at planes.
  const velocity = -u_over_a0;
  const wave = new Wave(planesOf(perfectGas(g, 287), [atRest(1)]), 0);
  wave.meet();
  wave.behind(pressure * wave.pressure);
  expect(Math.abs(wave.u / wave.sound / velocity - 1)).toBeLessThan(1e-5);
  expect(wave.rho / wave.density).toBeCloseTo(pressure ** (1 / g), 12);
  wave.atVelocity(velocity * wave.sound);
  expect(Math.abs(wave.p / wave.pressure / pressure - 1)).toBeLessThan(1e-5);
});

test('slopes are those of differences, on either side', () => {
  const wave = new Wave(planesOf(air, [{ ...atRest(1), velocity: 40 }]), 0);
  wave.meet();
  for (const ratio of [0.2, 0.9, 1.1, 5]) {
    const p = ratio * wave.pressure;
    const h = 1e-5 * p;
    wave.behind(p + h);
    const { u, rho } = wave;
    wave.behind(p - h);
    const uSlope = (u - wave.u) / (2 * h);
    const rhoSlope = (rho - wave.rho) / (2 * h);
    wave.behind(p);
    expect(wave.slope / uSlope).toBeCloseTo(1, 7);
    expect(wave.rhoSlope / rhoSlope).toBeCloseTo(1, 7);
  }
});

test('gas that runs away from a wall faster than it can follow leaves next to nothing there', () => {
  const planes = passed(air, [{ ...atRest(1), velocity: -6 * sound }], { kind: 'closed' });
  expect(planes.planePressure[0]).toBeGreaterThan(0);
  expect(planes.planePressure[0]).toBeLessThan(1e-6);
  expect(planes.planeDensity[0]).toBeGreaterThan(0);
  const { pressure } = ambient;
  expect(passed(air, [{ ...atRest(1), velocity: -4.9 * sound }], { kind: 'closed' }).planePressure[0]).toBeCloseTo(
    pressure * (1 - 0.2 * 4.9) ** 7,
    9,
  );
});

test('a shock stands on the plane where the supersonic stream becomes free: what passes does not jump', () => {
  const inside = { area: 1, pressure: 1e5, temperature: 300, velocity: 2 * Math.sqrt(1.4 * 287.05 * 300) };
  const standing = 1e5 * 4.5;
  for (const field of ['massFlux', 'momentumFlux', 'energyFlux'] as const) {
    const free = passed(air, [inside], { kind: 'open' }, { pressure: standing * (1 - 1e-9), temperature: 300 });
    const held = passed(air, [inside], { kind: 'open' }, { pressure: standing * (1 + 1e-9), temperature: 300 });
    expect(free.planePressure[0]).toBe(1e5);
    expect(held.planePressure[0]).toBeGreaterThan(4e5);
    expect(held[field][0]! / free[field][0]!).toBeCloseTo(1, 7);
  }
});
