/** Accuracy: what must be kept to rounding. Mass and energy of what is closed, rest in any duct, equal states at a face. */
import { expect, test } from 'vitest';
import { SIDE } from '../../../src/pulse/equations/gas';
import { perfectGas } from '../../../src/pulse/equations/perfectGas';
import { fluxes } from '../../../src/pulse/fluxes/fluxes';
import { hllc } from '../../../src/pulse/fluxes/hllc';
import type { InitialState } from '../../../src/pulse/rig/types';
import { faceState } from '../../../src/pulse/scheme/state';
import { startRig } from '../../../src/pulse/startRig';
import { random } from '../../random';
import { bothEnds, pipe, ran, rig } from '../rigs';

/** A bore of cones drawn at random, 20 to 80 mm. */
function bore(seed: number, length: number): (readonly [number, number])[] {
  const draw = random(seed);
  const inner = Array.from({ length: draw.whole(1, 6) }, () => draw.between(0.05, 0.95) * length).sort((a, b) => a - b);
  return [0, ...inner, length].map((x) => [x, draw.between(0.02, 0.08)] as const);
}

test.each([1, 2, 3, 4, 5])('a closed duct keeps mass and energy to 1e-12 in 1000 steps, seed %i', (seed) => {
  const draw = random(100 + seed);
  const cuts = [0, 0.2, 0.5, 0.7, 1];
  const initial = cuts.slice(1).map((to, k): InitialState => {
    const pressure = draw.between(0.5e5, 5e5);
    return { from: cuts[k]!, to, pressure, temperature: draw.between(250, 1500), velocity: draw.between(-200, 200) };
  });
  const running = startRig(
    rig({
      pipes: [pipe('p', { diameter: bore(seed, 1), initial, friction: seed % 2 ? 0.005 : { roughness: 4e-5 } })],
      ends: bothEnds('p', 'closed'),
      duration: 1,
    }),
  );
  running.advance(1000);
  const { mass, energy, steps } = running.result();
  expect(steps).toBe(1000);
  expect(Math.abs(mass.drift)).toBeLessThan(1e-12);
  expect(Math.abs(energy.drift)).toBeLessThan(1e-12);
});

test.each([1, 2, 3, 4, 5])('resting gas stays at rest in any duct, seed %i', (seed) => {
  const draw = random(200 + seed);
  const pressure = draw.between(0.5e5, 3e5);
  // Hot beside cold at one pressure is at rest too.
  const initial = [
    { from: 0, to: 0.43, pressure, temperature: draw.between(280, 400), velocity: 0 },
    { from: 0.43, to: 1, pressure, temperature: draw.between(600, 1500), velocity: 0 },
  ];
  const { profile } = ran(
    rig({
      pipes: [pipe('p', { diameter: bore(seed, 1), initial, friction: 0.01 })],
      ends: bothEnds('p', 'closed'),
      duration: 0.02,
    }),
  );
  const most = Math.max(...profile[0]!.velocity.map(Math.abs));
  // m/s, against a speed of sound of 340 or more: a few units of the last digit.
  expect(most).toBeLessThan(1e-9);
  expect(Math.max(...profile[0]!.pressure.map((p) => Math.abs(p / pressure - 1)))).toBeLessThan(1e-12);
});

test.each([1, 2, 3])('equal states give the exact flux, seed %i', (seed) => {
  const draw = random(300 + seed);
  const count = 200;
  const gas = perfectGas(1.4, 287.05);
  const states = Array.from(
    { length: count },
    () => [draw.between(0.1, 10), draw.between(-1500, 1500), draw.between(1e3, 1e6)] as const,
  );
  const sides = faceState(count, 0);
  for (const [f, values] of states.entries()) {
    sides.state.set(values, SIDE * 2 * f);
    sides.state.set(values, SIDE * (2 * f + 1));
  }
  gas.faces(sides, 0, 2 * count);
  const { passed, partial } = fluxes(count, 0);
  hllc(sides, { passed, partial }, 0, count);
  for (const [f, [rho, u, p]] of states.entries()) {
    const size = rho * (Math.abs(u) + Math.sqrt((1.4 * p) / rho));
    expect(Math.abs(passed[3 * f]! - rho * u)).toBeLessThan(1e-14 * size);
    expect(Math.abs(passed[3 * f + 1]! / (rho * u * u + p) - 1)).toBeLessThan(1e-13);
    const energy = u * (3.5 * p + 0.5 * rho * u * u);
    expect(Math.abs(passed[3 * f + 2]! - energy)).toBeLessThan(1e-13 * (Math.abs(energy) + p * Math.abs(u)) + 1e-7);
  }
});
