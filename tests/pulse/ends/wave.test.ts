/** The exact wave at a wall and behind a given pressure, against published shock and simple-wave relations. */
import { expect, test } from 'vitest';
import { Wave } from '../../../src/pulse/ends/wave';
import { perfectGas } from '../../../src/pulse/equations/perfectGas';
import { air, ambient, atRest, behindShock, passed, planesOf } from './planeSet';
import { closedValve, openedValve, rarefactions, wallReflection } from './published';

const sound = Math.sqrt(1.4 * 287.05 * ambient.temperature);

test.each(wallReflection)('a shock of Mach $mach is reflected by a wall', ({ mach, p2p1, p5p2, u2a1 }) => {
  const inside = behindShock(1e-3, mach);
  expect(inside.pressure / ambient.pressure / p2p1).toBeCloseTo(1, 5);
  expect(inside.velocity / sound / u2a1).toBeCloseTo(1, 5);
  const planes = passed(air, [inside], { kind: 'closed' });
  expect(Math.abs(planes.planePressure[0]! / inside.pressure / p5p2 - 1)).toBeLessThan(1e-5);
  expect(planes.massFlux[0]).toBe(0);
  expect(planes.energyFlux[0]).toBe(0);
  expect(planes.momentumFlux[0]).toBe(planes.planePressure[0]);
});

test('a valve is closed on a supersonic stream', () => {
  const { flowMach, pressure, temperature, tolerance } = closedValve;
  const inside = { area: 1, pressure: 1e5, temperature: 300, velocity: flowMach * Math.sqrt(1.4 * 287.05 * 300) };
  const planes = passed(air, [inside], { kind: 'closed' });
  expect(Math.abs(planes.planePressure[0]! / 1e5 / pressure - 1)).toBeLessThan(tolerance);
  const hot = planes.planePressure[0]! / (planes.planeDensity[0]! * 287.05);
  expect(Math.abs(hot / 300 / temperature - 1)).toBeLessThan(tolerance);
});

test('a valve is opened to twice the pressure', () => {
  const wave = new Wave(planesOf(air, [atRest(1)]), 0);
  wave.meet();
  wave.behind(openedValve.pressure * ambient.pressure);
  const density = wave.rho / wave.density;
  expect(Math.abs(density / openedValve.density - 1)).toBeLessThan(openedValve.tolerance);
  expect(Math.abs(openedValve.pressure / density / openedValve.temperature - 1)).toBeLessThan(openedValve.tolerance);
  // Mass over the shock: the gas behind has been overtaken at the shock's speed.
  const shock = wave.u / (1 - 1 / density) / sound;
  expect(Math.abs(-shock / openedValve.shockMach - 1)).toBeLessThan(openedValve.tolerance);
});

test.each(rarefactions)('a rarefaction to $pressure of the pressure, γ $gamma', ({ gamma, pressure, velocity }) => {
  const wave = new Wave(planesOf(perfectGas(gamma, 287), [atRest(1)]), 0);
  wave.meet();
  wave.behind(pressure * wave.pressure);
  expect(Math.abs(wave.u / wave.sound / velocity - 1)).toBeLessThan(1e-5);
  expect(wave.rho / wave.density).toBeCloseTo(pressure ** (1 / gamma), 12);
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
