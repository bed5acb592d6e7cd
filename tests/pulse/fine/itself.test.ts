/**
 * The fine-grid solver held against what is known, before anything is held against it: it is built here, where the machine has gcc. SI
 * units, but for the shock tubes, which have none.
 */
import { expect, test } from 'vitest';
import type { InitialState, Rig, RigEnd, RigPipe } from '../../../src/pulse/rig/types';
import { build, solve } from './program.mjs';

const program = build(new URL('fine.c', import.meta.url).pathname);
const where = program === null ? 'skipped: no gcc' : 'built by gcc';

type Primitive = readonly [density: number, velocity: number, pressure: number];
const stateOf = ([density, velocity, pressure]: Primitive, from: number, to: number, constant: number) =>
  ({ from, to, pressure, temperature: pressure / (density * constant), velocity }) satisfies InitialState;

const BASE = {
  format: 'evenrun-rig',
  version: 1,
  gas: { gamma: 1.4, gasConstant: 287.05 },
  ambient: { pressure: 101325, temperature: 293.15 },
  courant: 0.8,
  sample: 0,
  profile: false,
  probes: [],
} as const;
const PIPE = { friction: 0, wallTemperature: null } as const;

function tube(left: Primitive, right: Primitive, diaphragm: number, duration: number, cells: number): Rig {
  const initial = [stateOf(left, 0, diaphragm, 1), stateOf(right, diaphragm, 1, 1)];
  const diameter = [[0, 1] as const, [1, 1] as const];
  return {
    ...BASE,
    gas: { gamma: 1.4, gasConstant: 1 },
    pipes: [{ ...PIPE, id: 'tube', length: 1, cells, diameter, initial }],
    ends: [
      { kind: 'through', at: ['tube', 'start'] },
      { kind: 'through', at: ['tube', 'finish'] },
    ],
    duration,
  };
}

/** Mean of a column over the cells that lie between. */
function mean(cells: readonly number[][], column: number, [from, to]: readonly [number, number]): number {
  const inside = cells.filter(([, x]) => x! > from && x! < to);
  expect(inside.length).toBeGreaterThan(5);
  return inside.reduce((sum, cell) => sum + cell[column]!, 0) / inside.length;
}

// Star states: Toro 2009, section 4.3.3, tables 4.1 to 4.3, recomputed to seven digits. Between the waves at the last instant.
test.skipIf(program === null).each([
  {
    name: 'Sod',
    rig: tube([1, 0, 1], [0.125, 0, 0.1], 0.5, 0.2, 400),
    star: { pressure: 0.3031302, velocity: 0.9274526, left: 0.4263194, right: 0.2655737 },
    at: { left: [0.52, 0.64], right: [0.73, 0.82] },
  },
  {
    name: 'strong blast',
    rig: tube([1, 0, 1000], [1, 0, 0.01], 0.5, 0.012, 400),
    star: { pressure: 460.8938, velocity: 19.59745, left: 0.5750623, right: 5.999241 },
    at: { left: [0.5, 0.69], right: [0.75, 0.76] },
  },
] as const)(`$name: the states between the waves (${where})`, ({ rig, star, at }) => {
  const { cells } = solve(program!, rig, 2, { profile: true });
  const [pressure, velocity] = [mean(cells, 4, at.left), mean(cells, 3, at.left)];
  expect(Math.abs(pressure / star.pressure - 1)).toBeLessThan(1e-4);
  expect(Math.abs(velocity / star.velocity - 1)).toBeLessThan(1e-4);
  expect(Math.abs(mean(cells, 2, at.left) / star.left - 1)).toBeLessThan(1e-3);
  expect(Math.abs(mean(cells, 2, at.right) / star.right - 1)).toBeLessThan(1e-3);
});

const still = (id: string, length: number, diameter: RigPipe['diameter'], temperature: number): RigPipe => ({
  id,
  length,
  cells: 100 * length,
  diameter,
  friction: { roughness: 4e-5 },
  wallTemperature: null,
  initial: [{ from: 0, to: length, pressure: 101325, temperature, velocity: 0 }],
});

/** The second pipe of two, and what joins it to the first. */
const widening = (temperature: number): RigPipe =>
  still(
    'b',
    0.3,
    [
      [0, 0.03],
      [0.3, 0.05],
    ],
    temperature,
  );
const JOINT: RigEnd = {
  kind: 'junction',
  at: [
    ['a', 'finish'],
    ['b', 'start'],
  ],
  model: 'equal-pressure',
};

test.skipIf(program === null)(`gas at rest stays at rest in tapers, junction and ends (${where})`, () => {
  const rig: Rig = {
    ...BASE,
    pipes: [
      still(
        'a',
        0.7,
        [
          [0, 0.03],
          [0.2, 0.05],
          [0.35, 0.02],
          [0.7, 0.08],
        ],
        500,
      ),
      widening(900),
    ],
    ends: [
      {
        kind: 'vessel',
        at: ['a', 'start'],
        volume: 1e-3,
        pressure: 101325,
        temperature: 1000,
        area: [[0, 1e-4]],
        dischargeCoefficient: 0.8,
      },
      JOINT,
      { kind: 'open', at: ['b', 'finish'] },
    ],
    duration: 0.01,
  };
  const { cells } = solve(program!, rig, 1, { profile: true });
  for (const [, , , velocity, pressure] of cells) {
    expect(Math.abs(velocity!)).toBeLessThan(1e-9);
    expect(Math.abs(pressure! / 101325 - 1)).toBeLessThan(1e-12);
  }
});

test.skipIf(program === null)(`a closed system with a burst keeps mass and energy (${where})`, () => {
  const [burst, calm] = [
    { from: 0, to: 0.2, pressure: 4e5, temperature: 400, velocity: 0 },
    { from: 0.2, to: 0.7, pressure: 1e5, temperature: 300, velocity: 0 },
  ];
  const rig: Rig = {
    ...BASE,
    pipes: [
      {
        ...still(
          'a',
          0.7,
          [
            [0, 0.03],
            [0.5, 0.05],
            [0.7, 0.04],
          ],
          300,
        ),
        initial: [burst, calm],
      },
      widening(600),
    ],
    ends: [
      { kind: 'closed', at: ['a', 'start'] },
      JOINT,
      {
        kind: 'vessel',
        at: ['b', 'finish'],
        volume: 3e-4,
        pressure: 5e4,
        temperature: 400,
        area: [[0, 3e-4]],
        dischargeCoefficient: 0.8,
      },
    ],
    duration: 0.01,
  };
  const { said } = solve(program!, rig, 1);
  const drifts = [...said.matchAll(/drift (\S+?),|drift (\S+?);/g)].map((found) => Number(found[1] ?? found[2]));
  expect(drifts.length).toBe(2);
  for (const drift of drifts) expect(Math.abs(drift)).toBeLessThan(1e-11);
});
