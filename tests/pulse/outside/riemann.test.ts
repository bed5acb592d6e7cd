/**
 * Shock tubes as whole rigs against exact solutions: pressure and velocity between the outer waves, density either side of the
 * contact, and where shocks are. Data without units run with a gas constant of 1.
 */
import { describe, expect, it } from 'vitest';
import { flowEntry, flowIds, flowValue, sourceOf } from '../../reference/flow';
import { once, pipe, placeOf, profileOf, runRig, type State, stateAt, through } from './rigs';

type Star = {
  p: number;
  u: number;
  rhoL: number;
  rhoR: number;
  SL?: number;
  SHL?: number;
  STL?: number;
  SR?: number;
  SHR?: number;
  STR?: number;
};
type Six = [number, number, number, number, number, number];

/** Those designed for the reference list are given there in words: pressure, temperature and gas. */
const IN_WORDS: Record<string, { data: Six; gas: { gamma: number; gasConstant: number } }> = {
  'riemann.hot_blowdown_g1.33': {
    data: [4e5 / (287 * 1200), 0, 4e5, 1e5 / (287 * 700), 0, 1e5],
    gas: { gamma: 1.33, gasConstant: 287 },
  },
  'riemann.air_1.5bar': {
    data: [1.5e5 / (287.05 * 293.15), 0, 1.5e5, 101325 / (287.05 * 293.15), 0, 101325],
    gas: { gamma: 1.4, gasConstant: 287.05 },
  },
};

function problem(id: string): { data: Six; gas: { gamma: number; gasConstant: number } } {
  if (IN_WORDS[id]) return IN_WORDS[id];
  const numbers = /= \[([^\]]*)\]/
    .exec(flowEntry(id).note ?? '')![1]!
    .split(',')
    .map((one) => Number(one.replace(/'/g, '')));
  if (numbers.length !== 6 || numbers.some(Number.isNaN)) throw new Error(`no initial data in ${id}`);
  return { data: numbers as Six, gas: { gamma: 1.4, gasConstant: 1 } };
}

/** Near a void a rarefaction's tail comes right slowly, so that one gets more cells, not a wider bound. */
const cellsFor = (id: string): number => (id === 'riemann.toro2' ? 4000 : 1000);
const MIDDLE = 0.5;
/** Of the exact value. Between two rarefactions nearly all gas is gone: there, of the initial pressure and density. */
const BOUND = 0.005;

describe.each(flowIds('riemann.'))('%s', (id) => {
  const star = flowValue<Star>(id);
  const { data, gas } = problem(id);
  const cells = cellsFor(id);
  const [rhoL, uL, pL, rhoR, uR, pR] = data;
  const state = (rho: number, velocity: number, pressure: number): State => ({
    pressure,
    velocity,
    temperature: pressure / (rho * gas.gasConstant),
  });
  const outerL = star.SL ?? star.SHL!;
  const outerR = star.SR ?? star.SHR!;
  const time = 0.42 / Math.max(Math.abs(outerL), Math.abs(outerR));
  const end = once(() => {
    const run = runRig(
      [pipe('a', 1, cells, 0.1, (x) => (x < MIDDLE ? state(rhoL, uL, pL) : state(rhoR, uR, pR)))],
      through('a', 'a'),
      time,
      { gas, ambient: { pressure: pR, temperature: pR / (rhoR * gas.gasConstant) } },
    );
    return profileOf(run, 'a');
  });
  const innerL = star.SL ?? star.STL!;
  const innerR = star.SR ?? star.STR!;
  const emptied = id === 'riemann.toro2';

  it(`between the waves within ${100 * BOUND} %; ${sourceOf(id)}`, () => {
    const left = stateAt(end(), MIDDLE + 0.5 * (star.u + innerL) * time, gas);
    const right = stateAt(end(), MIDDLE + 0.5 * (star.u + innerR) * time, gas);
    const [p, rho] = emptied ? [pL, rhoL] : [0, 0];
    for (const here of [left, right]) {
      expect(Math.abs(here.p - star.p) / (p || star.p)).toBeLessThan(BOUND);
      expect(Math.abs(here.u - star.u) / (star.u || uR)).toBeLessThan(BOUND);
    }
    expect(Math.abs(left.rho - star.rhoL) / (rho || star.rhoL)).toBeLessThan(BOUND);
    expect(Math.abs(right.rho - star.rhoR) / (rho || star.rhoR)).toBeLessThan(BOUND);
  });

  for (const [speed, outside, side] of [
    [star.SL, pL, 'left'],
    [star.SR, pR, 'right'],
  ] as const) {
    if (speed === undefined) continue;
    it(`the ${side} shock is where it must be, to two cells`, () => {
      const profile = end();
      const from = side === 'left' ? 0 : 1;
      const found = placeOf(profile, profile.pressure, 0.5 * (star.p + outside), from, MIDDLE + star.u * time);
      expect(Math.abs(found - (MIDDLE + speed * time))).toBeLessThan(2 / cells);
    });
  }
});
