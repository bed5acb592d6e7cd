/** A vessel keeps what passes to rounding, empties as theory says, and follows in second order; many gases stay apart. */

import { expect, test } from 'vitest';
import type { Gas } from '../../../src/pulse/equations/gas';
import { random } from '../../random';
import { pipe, ran, rig } from '../rigs';
import { air, ambient, atRest, type EndOf, endOver, type Inside, planesOf, setInside } from './planeSet';
import { twoGases } from './twoGases';

const GAMMA = 1.4;
const filling = { volume: 5e-4, pressure: 6e5, temperature: 1200 };

type VesselOf = Extract<EndOf, { kind: 'vessel' }>;

/** Steps a vessel against a pipe that does not change. */
function emptied(gas: Gas, inside: Inside, vessel: VesselOf, duration: number, steps: number) {
  const planes = planesOf(gas, [inside]);
  const end = endOver(planes, vessel);
  const dt = duration / steps;
  for (let n = 0; n < steps; n++) {
    end.pass(n * dt, dt);
    end.take(dt);
  }
  return end;
}

test('holds at first what it is filled with', () => {
  const end = endOver(planesOf(air, [atRest(1e-3)]), { kind: 'vessel', ...filling, area: 0, dischargeCoefficient: 1 });
  expect(end.mass / ((6e5 * 5e-4) / (287.05 * 1200))).toBeCloseTo(1, 14);
  expect(end.energy / ((6e5 * 5e-4) / 0.4)).toBeCloseTo(1, 14);
});

test('choked, it empties isentropically in closed form, and half the step leaves a quarter of the error', () => {
  // A wide pipe at low pressure: the hole stays choked, and the vessel feels nothing of the pipe.
  const inside = { ...atRest(1), pressure: 1e3 };
  const vessel = { kind: 'vessel', ...filling, area: 1e-4, dischargeCoefficient: 0.7 } as const;
  const sound = Math.sqrt(GAMMA * 287.05 * 1200);
  const duration = 6e-3;
  // NACA 1135: critical flow; dm/dt of an isentropic vessel integrated by hand.
  const critical = (2 / (GAMMA + 1)) ** ((GAMMA + 1) / (2 * (GAMMA - 1)));
  const emptying = 1 + (0.5 * (GAMMA - 1) * 0.7e-4 * sound * critical * duration) / filling.volume;
  const start = (6e5 * 5e-4) / (287.05 * 1200);
  const exact = start * emptying ** (-2 / (GAMMA - 1));
  const [coarse, middle, fine] = [20, 40, 80].map((steps) => {
    const end = emptied(air, inside, vessel, duration, steps);
    // Isentropic: energy follows mass to the power γ.
    expect(Math.abs(end.energy / ((6e5 * 5e-4) / 0.4) / (end.mass / start) ** GAMMA - 1)).toBeLessThan(1e-3);
    return Math.abs(end.mass / exact - 1);
  });
  expect(exact / start).toBeLessThan(0.75);
  expect(fine).toBeLessThan(1e-4);
  expect(Math.log2(coarse! / middle!)).toBeGreaterThan(1.8);
  expect(Math.log2(middle! / fine!)).toBeGreaterThan(1.9);
});

test.each([
  ['air', air, undefined],
  ['two gases', twoGases, { light: 0.25 }],
] as const)('takes in what passed, and nothing else: %s', (_name, gas, fractions) => {
  const area = [
    [0, 0],
    [0.001, 4e-4],
    [0.003, 0],
  ] as const;
  const planes = planesOf(gas, [{ ...atRest(1e-3), fractions: [0.9] }]);
  const end = endOver(planes, {
    kind: 'vessel',
    ...filling,
    ...(fractions && { fractions }),
    area,
    dischargeCoefficient: 0.8,
  });
  const dt = 4e-6;
  let mass = end.mass;
  let energy = end.energy;
  for (let n = 0; n < 1000; n++) {
    // Swings from far below to far above the vessel.
    const swing = Math.sin(n / 40);
    setInside(planes, 0, {
      area: 1e-3,
      pressure: ambient.pressure * Math.exp(2 * swing),
      temperature: 600 + 200 * swing,
      velocity: 100 * Math.cos(n / 23),
      fractions: gas.carried ? [0.5 + 0.4 * swing] : [],
    });
    end.pass(n * dt, dt);
    const held = [end.mass, end.energy];
    end.pass(n * dt, dt);
    expect([end.mass, end.energy]).toEqual(held);
    end.take(dt);
    mass += 1e-3 * planes.massFlux[0]! * dt;
    energy += 1e-3 * planes.energyFlux[0]! * dt;
    expect(Number.isFinite(planes.momentumFlux[0]!)).toBe(true);
  }
  expect(Math.abs(end.mass / mass - 1)).toBeLessThan(1e-13);
  expect(Math.abs(end.energy / energy - 1)).toBeLessThan(1e-13);
});

test('fills with what comes', () => {
  const inside = { area: 1e-3, pressure: 1e6, temperature: 500, velocity: 0, fractions: [1] };
  const planes = planesOf(twoGases, [inside]);
  const vessel = { volume: 1e-4, pressure: 1e5, temperature: 300, area: 5e-4, dischargeCoefficient: 0.8 };
  const end = endOver(planes, { kind: 'vessel', ...vessel });
  const plain = end.mass;
  let light = 0;
  let time = 0;
  for (let n = 0; n < 20000; n++) {
    const dt = Math.min(end.longestStep(), 2e-5);
    end.pass(time, dt);
    end.take(dt);
    light += planes.partialFlux[0]! * 1e-3 * dt;
    time += dt;
    if (time > 0.01) break;
  }
  expect(light / (end.mass - plain)).toBeCloseTo(1, 10);
  // It is as full as the pipe pushes, and what leaves it now would be what came mixed with what was there.
  setInside(planes, 0, { ...inside, pressure: 1e4 });
  end.pass(time, 1e-9);
  expect(planes.massFlux[0]).toBeLessThan(0);
  expect(planes.planeFractions[0]).toBeCloseTo(light / end.mass, 6);
  expect(light / end.mass).toBeGreaterThan(0.7);
});

test('comes to rest at the pressure of the pipe without swinging, in steps as long as it allows', () => {
  for (const volume of [1e-7, 1e-5, 1e-3])
    for (const area of [1e-6, 1e-4, 1e-3]) {
      const planes = planesOf(air, [{ ...atRest(1e-3), velocity: 0 }]);
      const vessel = { volume, pressure: 5e5, temperature: 900, area, dischargeCoefficient: 0.9 };
      const end = endOver(planes, { kind: 'vessel', ...vessel });
      let time = 0;
      let last = 0;
      for (let n = 0; n < 400_000 && time < (400 * volume) / (area * 300); n++) {
        const dt = end.longestStep();
        end.pass(time, dt);
        end.take(dt);
        time += dt;
        last = planes.planePressure[0]!;
      }
      expect(Math.abs(last / ambient.pressure - 1)).toBeLessThan(1e-3);
      expect((0.4 * end.energy) / volume / ambient.pressure).toBeCloseTo(1, 2);
    }
});

test('says how long a step it can follow: to its opening while it is shut, a share of what sound needs once it is open', () => {
  const planes = planesOf(air, [atRest(1e-3)]);
  const area = [
    [0.001, 0],
    [0.002, 3e-4],
  ] as const;
  const end = endOver(planes, { kind: 'vessel', ...filling, area, dischargeCoefficient: 0.8 });
  end.pass(0, 1e-6);
  end.take(1e-6);
  expect(end.longestStep()).toBeCloseTo(0.001 - 1e-6, 12);
  expect(planes.massFlux[0]).toBe(0);
  end.pass(0.0015, 1e-6);
  end.take(1e-6);
  const sound = Math.sqrt(1.4 * 287.05 * 1200);
  expect(end.longestStep() / (filling.volume / (1e-3 * sound))).toBeCloseTo(0.5, 3);
});

test.each([1, 2, 3, 4])(
  'a vessel that opens at once is never emptied beyond nothing, whenever it opens, seed %i',
  (seed) => {
    const draw = random(500 + seed);
    for (let n = 0; n < 25; n++) {
      const opens = draw.between(1e-4, 2e-3);
      const ramp = 10 ** draw.between(-8, -4.3);
      const content = draw.between(1e-6, 2e-5);
      const { profile, mass } = ran(
        rig({
          pipes: [pipe('p', { cells: 50, state: { pressure: 1e5, temperature: 300 } })],
          ends: [
            {
              kind: 'vessel',
              at: ['p', 'start'],
              volume: content,
              pressure: 5e5,
              temperature: 1200,
              area: [
                [0, 0],
                [opens, 0],
                [opens + ramp, 1e-3],
              ],
              dischargeCoefficient: 0.9,
            },
            { kind: 'closed', at: ['p', 'finish'] },
          ],
          duration: 4e-3,
        }),
      );
      const inPipe = Math.PI * 4e-4 * 0.02 * profile[0]!.density.reduce((sum, rho) => sum + rho, 0);
      const left = mass.final - inPipe;
      // What was in it, 5e5 Pa and 1200 K, ends between nothing and all.
      expect(left).toBeGreaterThan(0);
      expect(left).toBeLessThan((5e5 * content) / (287.05 * 1200));
      // No more than 5 bar ever stood anywhere, and 1 bar of the pipe's own is pressed up little by so small a vessel.
      expect(Math.max(...profile[0]!.pressure)).toBeLessThan(2e5);
    }
  },
);
