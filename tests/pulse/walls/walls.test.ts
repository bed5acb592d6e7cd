/** What walls drag and heat: Haaland against Colebrook, laminar flow, the blend between, viscosity of air, the analogy for heat. */
import { describe, expect, it } from 'vitest';
import {
  airViscosity,
  fanningFactor,
  haalandFactor,
  laminarFactor,
  roughnessTerm,
} from '../../../src/pulse/walls/friction';
import { flowValue, sourceOf } from '../../reference/flow';
import { bothEnds, pipe, ran, rig } from '../rigs';

type Row = { Re: number; eD: number; f_darcy: number; haaland: number };
const rows = flowValue<Row[]>('si.friction_factor');

describe(`friction, ${sourceOf('si.friction_factor')}`, () => {
  it.each(rows)(
    'Re $Re, roughness $eD: Haaland as recomputed, and within 2 % of Colebrook',
    ({ Re, eD, f_darcy, haaland }) => {
      expect(Math.abs((4 * fanningFactor(Re, roughnessTerm(eD))) / haaland - 1)).toBeLessThan(1e-4);
      expect(Math.abs((4 * fanningFactor(Re, roughnessTerm(eD))) / f_darcy - 1)).toBeLessThan(0.02);
    },
  );

  it('laminar flow: 64 / Re by Darcy', () => {
    for (const re of [1, 100, 2300]) expect(4 * fanningFactor(re, roughnessTerm(0.01))).toBeCloseTo(64 / re, 12);
  });

  it('is finite at rest and at what is not a number, and drags nothing there', () => {
    for (const re of [0, -1, NaN, Number.MIN_VALUE]) expect(fanningFactor(re, roughnessTerm(0.01))).toBe(16);
    expect(fanningFactor(Infinity, roughnessTerm(0.01))).toBeCloseTo(haalandFactor(1e12, roughnessTerm(0.01)), 9);
  });

  it('goes from laminar to turbulent without a jump or a kink, between the two', () => {
    for (const relative of [0, 0.001, 0.02]) {
      for (const re of [2300, 4000]) {
        const step = 1e-3;
        const [a, b, c] = [re - step, re, re + step].map((at) => fanningFactor(at, roughnessTerm(relative)));
        expect(Math.abs(c! - b!) + Math.abs(b! - a!)).toBeLessThan(1e-7);
        // A kink of the size of the laws' slopes would be near 1e-5 per unit of Re.
        expect(Math.abs((c! - b! - (b! - a!)) / step)).toBeLessThan(1e-7);
      }
      for (let re = 2300; re <= 4000; re += 50) {
        const [low, high] = [laminarFactor(re), haalandFactor(re, roughnessTerm(relative))].sort((a, b) => a - b);
        expect(fanningFactor(re, roughnessTerm(relative))).toBeGreaterThanOrEqual(low! * (1 - 1e-12));
        expect(fanningFactor(re, roughnessTerm(relative))).toBeLessThanOrEqual(high! * (1 + 1e-12));
      }
    }
  });

  it('rougher walls drag more', () => {
    for (const re of [3000, 1e4, 1e6])
      expect(fanningFactor(re, roughnessTerm(0.01))).toBeGreaterThan(fanningFactor(re, roughnessTerm(0.001)));
  });
});

describe('viscosity of air', () => {
  it.each([
    [273.15, 1.716e-5],
    [300, 1.846e-5],
    [500, 2.701e-5],
    [1000, 4.244e-5],
  ])(
    '%s K: %s Pa s within 3 %, as far apart as such tables are (Incropera & DeWitt, from memory)',
    (temperature, viscosity) => {
      expect(Math.abs(airViscosity(temperature) / viscosity - 1)).toBeLessThan(0.03);
    },
  );

  it('agrees with the values that the entries for heat were computed with, to 1e-3', () => {
    for (const { T, mu } of flowValue<{ T: number; mu: number }[]>('si.pipe_htc'))
      expect(Math.abs(airViscosity(T) / mu - 1)).toBeLessThan(1e-3);
  });
});

/**
 * W/(m² K) that the walls of a whole rig give: an even stream of air at 1 bar, looked at for so short a time that it stays even.
 * @param massFlow kg/(m² s) @param cp J/(kg K)
 */
function heatTransfer(fanning: number, massFlow: number, cp: number, across: number): number {
  const gasConstant = 287.05;
  const [pressure, temperature, hotter, duration] = [1e5, 1100, 10, 1e-7];
  const { energy } = ran(
    rig({
      gas: { gamma: cp / (cp - gasConstant), gasConstant },
      pipes: [
        pipe('p', {
          cells: 10,
          diameter: [
            [0, across],
            [1, across],
          ],
          friction: fanning,
          wallTemperature: temperature + hotter,
          state: { pressure, temperature, velocity: (massFlow * gasConstant * temperature) / pressure },
        }),
      ],
      ends: bothEnds('p', 'through'),
      duration,
    }),
  );
  return energy.fromWalls / (Math.PI * across * hotter * duration);
}

describe('heat by the analogy of Reynolds and Colburn', () => {
  it('is half the friction factor by mass flow and heat capacity, for Pr = 0.71', () => {
    // By hand: 0.5 · 0.006 · 20 · 1100 · 0.71^(−2/3) = 66 · 1.25648.
    expect(Math.abs(heatTransfer(0.006, 20, 1100, 0.04) / 82.93 - 1)).toBeLessThan(1e-3);
    expect(heatTransfer(0.006, 0, 1100, 0.04)).toBe(0);
  });

  it(`steady turbulent flow in a smooth pipe: within 25 % of Dittus–Boelter, the accuracy such relations have; ${sourceOf('si.pipe_htc')}`, () => {
    type HeatRow = {
      mdot: number;
      D: number;
      mu: number;
      k: number;
      Re: number;
      Pr: number;
      h: { DittusBoelter: number };
    };
    for (const { mdot, D, mu, k, Re, Pr, h } of flowValue<HeatRow[]>('si.pipe_htc')) {
      const massFlow = mdot / (0.25 * Math.PI * D * D);
      expect(Math.abs((massFlow * D) / mu / Re - 1)).toBeLessThan(1e-4);
      const ours = heatTransfer(fanningFactor(Re, roughnessTerm(0)), massFlow, (Pr * k) / mu, D);
      expect(Math.abs(ours / h.DittusBoelter - 1)).toBeLessThan(0.25);
    }
  });
});
