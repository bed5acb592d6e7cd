/**
 * Holes: in a plate over a pipe's end, between two pipes, on vessels that empty and fill. All are quasi-steady, so each must pass what a
 * steady nozzle passes from the stagnation state in front of it. Measured unsteady flow differs from that by up to 7 %, which is
 * the model's own error: see the entry ac.nozzle_quasisteady.
 */
import { describe, expect, it } from 'vitest';
import type { RigRun } from '../../../src/pulse/report';
import type { RigEnd } from '../../../src/pulse/rig/types';
import { flowValue, sourceOf } from '../../reference/flow';
import {
  AIR,
  AMBIENT,
  areaOf,
  behindShock,
  diameterOf,
  off,
  pipe,
  profileOf,
  REST,
  runRig,
  soundSpeed,
  stateAt,
} from './rigs';

const BORE = 1e-3;
const DIAMETER = diameterOf(BORE);
const C0 = soundSpeed(AMBIENT.temperature);
type Gas = { gamma: number; gasConstant: number };

/** kg/s of an ideal nozzle: Heywood 1988, eqs. C.8 and C.9 (numbers from memory). */
function nozzle({ gamma: g, gasConstant }: Gas, p0: number, T0: number, p: number, area: number): number {
  const ratio = Math.max(p / p0, (2 / (g + 1)) ** (g / (g - 1)));
  const flow = ratio ** (1 / g) * Math.sqrt(((2 * g) / (g - 1)) * (1 - ratio ** ((g - 1) / g)));
  return (flow * area * p0) / Math.sqrt(gasConstant * T0);
}

type Here = ReturnType<typeof stateAt>;
const stagnation = ({ p, T, mach }: Here, g = 1.4): [pressure: number, temperature: number] => {
  const rise = 1 + ((g - 1) / 2) * mach * mach;
  return [p * rise ** (g / (g - 1)), T * rise];
};

it(`the formula used here gives the worked examples; ${sourceOf('gas.orifice_examples')}; ${sourceOf('gas.choked')}`, () => {
  const [one, two, three, four] = flowValue<{ mdot: number }[]>('gas.orifice_examples').map(({ mdot }) => mdot);
  expect(off(nozzle(AIR, 101325, 293.15, 1e5, 1e-4), one!)).toBeLessThan(1e-4);
  expect(off(nozzle(AIR, 101325, 293.15, 9e4, 1e-4), two!)).toBeLessThan(1e-4);
  expect(off(nozzle(AIR, 101325, 293.15, 5e4, 1e-4), three!)).toBeLessThan(1e-4);
  expect(off(nozzle({ gamma: 1.33, gasConstant: 287 }, 4e5, 1200, 1.1e5, 1e-4), four!)).toBeLessThan(1e-4);
  for (const { g, phi_choked } of flowValue<{ g: number; phi_choked: number }[]>('gas.choked'))
    expect(off(nozzle({ gamma: g, gasConstant: 1 }, 1, 1, 0, 1), phi_choked)).toBeLessThan(1e-5);
});

describe('a shock meets a plate with a hole over the end', () => {
  it.each([1.1, 1.3, 1.47].flatMap((mach) => [0.2, 0.5, 0.8].map((share) => [mach, share] as const)))(
    'Mach %s, %s of the bore: what flows behind the reflected wave is what a nozzle passes, within 0.3 %',
    (mach, share) => {
      const coming = behindShock(mach);
      const end: RigEnd = { kind: 'open', at: ['a', 'finish'], area: share * BORE * 1.25, dischargeCoefficient: 0.8 };
      const run = runRig(
        [pipe('a', 1, 200, DIAMETER, (x) => (x < 0.8 ? coming : REST))],
        [{ kind: 'through', at: ['a', 'start'] }, end],
        0.2 / (mach * C0) + 0.8 / C0,
      );
      const here = stateAt(profileOf(run, 'a'), 0.95);
      const [p0, T0] = stagnation(here);
      expect(off(here.rho * here.u * BORE, nozzle(AIR, p0, T0, AMBIENT.pressure, share * BORE))).toBeLessThan(0.003);
    },
  );
});

describe('a plate with a hole between two pipes', () => {
  it.each([
    [1.3e5, 0.5],
    [1.3e5, 0.2],
    [3e5, 0.3],
  ])(
    'from %s Pa, %s of the bore: steady flow is what a nozzle passes, and stagnation temperature is kept',
    (p0, share) => {
      const run = runRig(
        [pipe('a', 0.3, 30, DIAMETER, { ...REST, pressure: p0 }), pipe('b', 0.3, 30, DIAMETER)],
        [
          {
            kind: 'vessel',
            at: ['a', 'start'],
            volume: 1e9,
            pressure: p0,
            temperature: 400,
            area: BORE,
            dischargeCoefficient: 1,
          },
          {
            kind: 'restriction',
            at: [
              ['a', 'finish'],
              ['b', 'start'],
            ],
            area: 2 * share * BORE,
            dischargeCoefficient: 0.5,
          },
          { kind: 'open', at: ['b', 'finish'] },
        ],
        0.15,
      );
      const [a, b] = [stateAt(profileOf(run, 'a'), 0.2), stateAt(profileOf(run, 'b'), 0.1)];
      const [pressure, temperature] = stagnation(a);
      const flow = a.rho * a.u;
      expect(off(flow, b.rho * b.u)).toBeLessThan(1e-3);
      expect(off(flow, nozzle(AIR, pressure, temperature, b.p, share))).toBeLessThan(2e-3);
      expect(off(pressure, p0)).toBeLessThan(2e-3);
      expect(off(temperature, 400)).toBeLessThan(1e-3);
      expect(off(stagnation(b)[1], 400)).toBeLessThan(1e-3);
    },
  );
});

/** kg in the one vessel of a rig, by what is not in the pipe. */
function inVessel(run: RigRun): number {
  const { density, x } = profileOf(run, 'a');
  const cell = 2 * x[0]! * areaOf(DIAMETER);
  return run.mass.final - density.reduce((sum, rho) => sum + rho * cell, 0);
}

describe('vessels', () => {
  const VOLUME = 1e-3;
  const HOLE = 3e-5;
  const withVessel = (pressure: number, temperature: number, time: number) =>
    runRig(
      [pipe('a', 0.2, 20, DIAMETER)],
      [
        {
          kind: 'vessel',
          at: ['a', 'start'],
          volume: VOLUME,
          pressure,
          temperature,
          area: HOLE,
          dischargeCoefficient: 1,
        },
        { kind: 'open', at: ['a', 'finish'] },
      ],
      time,
    );

  it.each([0.02, 0.06])(
    'one that empties through a choked hole holds after %s s what the closed form says, within 0.1 %',
    (time) => {
      // Isentropic inside, so T falls as it empties: m/m₀ = (1 + ½(γ − 1) k t)^(−2/(γ − 1)) with k = choked flow / mass at first.
      const [p, T] = [1e6, 500];
      const first = (p * VOLUME) / (AIR.gasConstant * T);
      const rate = nozzle(AIR, p, T, 0, HOLE) / first;
      const share = (1 + 0.2 * rate * time) ** -5;
      expect(p * share ** 1.4).toBeGreaterThan(2.5e5);
      expect(off(inVessel(withVessel(p, T, time)) / first, share)).toBeLessThan(1e-3);
    },
  );

  it('one that fills through a choked hole gains evenly, within 0.3 %', () => {
    const [p, T] = [1e3, 293.15];
    const first = (p * VOLUME) / (AIR.gasConstant * T);
    const time = 0.06;
    // Warmer inside by what flowing in does: pressure rises by γ R T₀ ṁ / V, and must stay below choking all along.
    const flow = nozzle(AIR, AMBIENT.pressure, AMBIENT.temperature, 0, HOLE);
    expect(p + (1.4 * AIR.gasConstant * AMBIENT.temperature * flow * time) / VOLUME).toBeLessThan(
      0.528 * AMBIENT.pressure,
    );
    expect(off(inVessel(withVessel(p, T, time)) - first, flow * time)).toBeLessThan(0.003);
  });
});
