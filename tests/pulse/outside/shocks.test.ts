/**
 * Shocks and simple waves that run through a pipe: the state behind a shock, its speed, its reflection at a closed end, a stream that
 * is shut off, and finite waves whose every pressure runs at its own speed.
 */
import { describe, expect, it } from 'vitest';
import type { RigEnd } from '../../../src/pulse/rig/types';
import { flowValue, sourceOf } from '../../reference/flow';
import {
  AIR,
  AMBIENT,
  off,
  pipe,
  placeOf,
  profileOf,
  REST,
  runRig,
  type State,
  simpleWave,
  soundSpeed,
  stateAt,
  through,
} from './rigs';

const CELLS = 400;
const C0 = soundSpeed(AMBIENT.temperature);
const shut: RigEnd[] = [
  { kind: 'through', at: ['a', 'start'] },
  { kind: 'closed', at: ['a', 'finish'] },
];

type Shock = { M1: number; g: number; M2: number; p2_p1: number; rho2_rho1: number; T2_T1: number };
describe(`a shock into gas at rest; ${sourceOf('gas.normal_shock')}`, () => {
  it.each(flowValue<Shock[]>('gas.normal_shock'))(
    'Mach $M1, γ = $g: runs as fast and leaves behind what the table says',
    ({ M1, g, M2, p2_p1, rho2_rho1, T2_T1 }) => {
      const gas = { gamma: g, gasConstant: 287.05 };
      const c = soundSpeed(AMBIENT.temperature, gas);
      const behind: State = {
        pressure: AMBIENT.pressure * p2_p1,
        temperature: AMBIENT.temperature * T2_T1,
        velocity: M1 * c - M2 * soundSpeed(AMBIENT.temperature * T2_T1, gas),
      };
      const time = 0.6 / (M1 * c);
      const run = runRig([pipe('a', 1, CELLS, 0.04, (x) => (x < 0.2 ? behind : REST))], through('a', 'a'), time, {
        gas,
      });
      const profile = profileOf(run, 'a');
      const front = placeOf(profile, profile.pressure, 0.5 * (AMBIENT.pressure + behind.pressure), 1, 0.2);
      expect(off(front - 0.2, 0.6)).toBeLessThan(0.005);
      // Just behind the front, in gas that it has passed, and not in what began behind it.
      const here = stateAt(profile, 0.8 - 0.3 * (0.6 - behind.velocity * time), gas);
      expect(off(here.p, behind.pressure)).toBeLessThan(0.002);
      expect(off(here.T, behind.temperature)).toBeLessThan(0.005);
      expect(off(here.rho / (AMBIENT.pressure / (287.05 * AMBIENT.temperature)), rho2_rho1)).toBeLessThan(0.005);
      expect(off(here.u, behind.velocity)).toBeLessThan(0.005);
    },
  );
});

type Reflection = { Ms: number; g: number; p2_p1: number; p5_p2: number; p5_p1: number; u2_a1: number };
describe(`a shock comes back from a closed end; ${sourceOf('gas.shock_reflection_closed_wall')}`, () => {
  const shocks = flowValue<Shock[]>('gas.normal_shock');
  it.each(flowValue<Reflection[]>('gas.shock_reflection_closed_wall'))(
    'Mach $Ms: pressure at the wall within 0.3 %',
    ({ Ms, g, p2_p1, p5_p1, u2_a1 }) => {
      const pressure = AMBIENT.pressure * p2_p1;
      // The table has no temperature: it is what makes the mass flow right, ρ₂(U − u₂) = ρ₁U.
      const temperature = AMBIENT.temperature * p2_p1 * (1 - u2_a1 / Ms);
      const row = shocks.find((one) => one.M1 === Ms && one.g === g);
      if (row) expect(off(temperature / AMBIENT.temperature, row.T2_T1)).toBeLessThan(1e-4);
      const behind = { pressure, temperature, velocity: u2_a1 * C0 };
      const run = runRig(
        [pipe('a', 1, CELLS, 0.04, (x) => (x < 0.6 ? behind : REST))],
        shut,
        0.4 / (Ms * C0) + 0.3 / C0,
      );
      const profile = profileOf(run, 'a');
      for (const x of [0.97, 1 - 0.5 / CELLS])
        expect(off(stateAt(profile, x).p / AMBIENT.pressure, p5_p1)).toBeLessThan(0.003);
      expect(Math.abs(stateAt(profile, 0.97).u / C0)).toBeLessThan(0.003);
    },
  );
});

describe(`a valve is opened at once; ${sourceOf('gas.table_read_moving_shock')}`, () => {
  const { Ms, T, rho } = flowValue<{ Ms: number; T: number; rho: number }>('gas.table_read_moving_shock');
  it('gas at twice the pressure, at the speed of a piston, sends a shock of the Mach number read', () => {
    const pressure = 2 * AMBIENT.pressure;
    const velocity = Ms * C0 * (1 - 1 / rho);
    const behind = { pressure, temperature: T * AMBIENT.temperature, velocity };
    const time = 0.6 / (Ms * C0);
    const run = runRig([pipe('a', 1, CELLS, 0.04, (x) => (x < 0.2 ? behind : REST))], through('a', 'a'), time);
    const profile = profileOf(run, 'a');
    const front = placeOf(profile, profile.pressure, 1.5 * AMBIENT.pressure, 1, 0.2);
    expect(off((front - 0.2) / time / C0, Ms)).toBeLessThan(0.005);
    const here = stateAt(profile, 0.7);
    expect(off(here.T / AMBIENT.temperature, T)).toBeLessThan(0.005);
    expect(off(here.p, pressure)).toBeLessThan(0.002);
  });
});

describe(`a stream is shut off at once; ${sourceOf('gas.table_read_closed_valve')}`, () => {
  const { Ms, Mx_prime, T, p } = flowValue<{ Ms: number; Mx_prime: number; T: number; p: number }>(
    'gas.table_read_closed_valve',
  );
  it('the shock that runs back, and what it leaves at rest, within 0.5 %', () => {
    const speed = (Ms - Mx_prime) * C0;
    const time = 0.5 / speed;
    const run = runRig([pipe('a', 1, CELLS, 0.04, { ...AMBIENT, velocity: Mx_prime * C0 })], shut, time);
    const profile = profileOf(run, 'a');
    const front = placeOf(profile, profile.pressure, 0.5 * (1 + p) * AMBIENT.pressure, 0, 1);
    expect(off(1 - front, 0.5)).toBeLessThan(0.005);
    const here = stateAt(profile, 0.75);
    expect(off(here.p / AMBIENT.pressure, p)).toBeLessThan(0.005);
    expect(off(here.T / AMBIENT.temperature, T)).toBeLessThan(0.005);
    expect(Math.abs(here.u) / C0).toBeLessThan(0.005);
  });
});

type Wave = { p_ratio: number; g: number; u_over_a0: number; prop_speed_over_a0: number };
/** A wave to the right whose pressure rises or falls evenly in its logarithm over 0.3 m, far from steepening to a shock. */
function finiteWave(ratio: number, gamma: number, time: number) {
  const gas = { gamma, gasConstant: 287.05 };
  const state = (x: number) => simpleWave(ratio ** Math.min(Math.max((0.4 - x) / 0.3, 0), 1), REST, gas);
  const run = runRig([pipe('a', 1, CELLS, 0.04, state)], through('a', 'a'), time, { gas });
  return { profile: profileOf(run, 'a'), gas };
}

describe(`finite waves; ${sourceOf('gas.simple_wave')}`, () => {
  it.each(flowValue<Wave[]>('gas.simple_wave'))(
    'pressure ratio $p_ratio, γ = $g: its speed and how fast it runs',
    ({ p_ratio, g, u_over_a0, prop_speed_over_a0 }) => {
      // The level lies half way in a wave that goes as far beyond it as it is from rest.
      const c = soundSpeed(AMBIENT.temperature, { gamma: g, gasConstant: 287.05 });
      const time = (p_ratio > 1 ? 0.15 : 0.4) / c / prop_speed_over_a0;
      const { profile } = finiteWave(p_ratio * p_ratio, g, time);
      const level = placeOf(profile, profile.pressure, p_ratio * AMBIENT.pressure, 1, 0);
      expect(off((level - 0.25) / time / c, prop_speed_over_a0)).toBeLessThan(0.005);
      expect(Math.abs(stateAt(profile, level).u / c / u_over_a0 - 1)).toBeLessThan(0.005);
    },
  );

  it(`pressure ratios 1.2 and 0.8 in m/s, within 0.3 %; ${sourceOf('gas.blair_worked')}`, () => {
    const worked = flowValue<{ a0: number; u12: number; c12: number; u08: number; c08: number }>('gas.blair_worked');
    for (const [ratio, u, c] of [
      [1.2, worked.u12, worked.c12],
      [0.8, worked.u08, worked.c08],
    ] as const) {
      const time = 0.3 / c;
      const { profile } = finiteWave(ratio * ratio, AIR.gamma, time);
      const level = placeOf(profile, profile.pressure, ratio * AMBIENT.pressure, 1, 0);
      expect(off((level - 0.25) / time, c)).toBeLessThan(0.003);
      expect(off(stateAt(profile, level).u, u)).toBeLessThan(0.003);
    }
  });
});
