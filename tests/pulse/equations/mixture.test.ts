/** The mixture of real gases: what goes in comes out, energy and heat capacity agree, masses weigh, nothing depends on the guess. */
import { describe, expect, it } from 'vitest';
import { INTERNAL, SIDE, SIDE_GAMMA } from '../../../src/pulse/equations/gas';
import { gasOf } from '../../../src/pulse/equations/gasOf';
import { mixture } from '../../../src/pulse/equations/mixture';
import { substance } from '../../../src/pulse/equations/substances';
import { cellsOf, energyOf, facesOf, type Point, stateAt } from './cells';

const gases = [['air'], ['air', 'burnt'], ['burnt', 'air', 'charge', 'fuel vapour']].map((names) => mixture(names));
const temperatures = [1, 30, 199, 200, 201, 250, 293.15, 299.999, 300, 700, 1000, 1234.5, 2500, 3999, 4000, 4500, 9000];
const shares = (carried: number) =>
  [0, 0.25, 1 / Math.max(carried, 1), -1e-15, 1 + 1e-15].map((share) =>
    new Array<number>(carried).fill(share / Math.max(1, carried)),
  );

const points = (carried: number): Point[] =>
  temperatures.flatMap((temperature) =>
    shares(carried).map((fractions) => ({ density: 0.7, velocity: -120, temperature, fractions })),
  );

describe.each(gases.map((gas) => [gas.components.join(' + '), gas] as const))('%s', (_, gas) => {
  it.each([0, NaN, 293, 5000, -40, Infinity])('decodes what was put in, whatever the first guess: %s', (guess) => {
    const all = points(gas.carried);
    const cells = cellsOf(gas, all, guess);
    expect(gas.decode(cells, 0, all.length)).toBe(-1);
    all.forEach(({ temperature, velocity, density, fractions }, i) => {
      expect(Math.abs(cells.temperature[i]! / temperature - 1)).toBeLessThan(1e-11);
      expect(stateAt(cells, i)[1]).toBeCloseTo(velocity, 9);
      const at = Float64Array.from(fractions);
      expect(stateAt(cells, i)[2] / (density * gas.gasConstant(at, 0, 1) * temperature)).toBeCloseTo(1, 10);
      expect(stateAt(cells, i)[3]).toBeCloseTo(gas.gamma(temperature, at, 0, 1), 10);
    });
  });

  it('gives the same temperature, to rounding, from any first guess', () => {
    const all = points(gas.carried);
    const [one, other] = [cellsOf(gas, all, 300), cellsOf(gas, all, 3000)];
    gas.decode(one, 0, all.length);
    gas.decode(other, 0, all.length);
    // Only at a node may it be either of the two intervals beside it, which agree to rounding.
    one.temperature.forEach((t, i) => {
      expect(Math.abs(t - other.temperature[i]!)).toBeLessThanOrEqual(1e-12 * t);
    });
  });

  it('faces give back the internal energy and ratio of heats of the cells', () => {
    const all = points(gas.carried);
    const cells = cellsOf(gas, all, 300);
    gas.decode(cells, 0, all.length);
    const faces = facesOf(cells);
    gas.faces(faces, 0, all.length);
    all.forEach(({ density, temperature, fractions }, i) => {
      expect(faces.state[SIDE * i + INTERNAL]! / (density * energyOf(gas, temperature, fractions))).toBeCloseTo(1, 11);
      expect(faces.state[SIDE * i + SIDE_GAMMA]).toBeCloseTo(stateAt(cells, i)[3], 11);
    });
  });

  it('energy rises by cv, which follows from γ and R', () => {
    for (const fractions of shares(gas.carried)) {
      const at = Float64Array.from(fractions);
      const constant = gas.gasConstant(at, 0, 1);
      // None within 0.5 K of a node.
      for (const t of [100, 210, 318, 1010, 2222, 3990, 4100]) {
        const slope = (energyOf(gas, t + 0.5, fractions) - energyOf(gas, t - 0.5, fractions)) / 1;
        expect(slope / (constant / (gas.gamma(t, at, 0, 1) - 1))).toBeCloseTo(1, 8);
      }
    }
  });

  it('enthalpy and its inverse', () => {
    for (const fractions of shares(gas.carried)) {
      const at = Float64Array.from(fractions);
      for (const t of temperatures)
        expect(gas.temperatureOfEnthalpy(gas.enthalpy(t, at, 0, 1), at, 0, 1) / t).toBeCloseTo(1, 11);
    }
  });

  it('energy is 0 at 0 K and heat capacity never falls by more than a thousandth', () => {
    const at = new Float64Array(gas.carried);
    expect(gas.enthalpy(0, at, 0, 1)).toBe(0);
    for (let t = 0; t < 4500; t += 5)
      expect(1 / (gas.gamma(t + 5, at, 0, 1) - 1)).toBeGreaterThan(0.999 / (gas.gamma(t, at, 0, 1) - 1));
  });
});

describe('mixing', () => {
  const gas = mixture(['air', 'burnt', 'argon']);

  it('R, energy and cv are weighed by mass', () => {
    const y = Float64Array.from([0.3, 0.2]);
    const weigh = (of: (name: string) => number) => 0.5 * of('air') + 0.3 * of('burnt') + 0.2 * of('argon');
    expect(gas.gasConstant(y, 0, 1)).toBeCloseTo(
      weigh((name) => substance(name).gasConstant),
      9,
    );
    for (const t of [300, 800, 1500]) {
      const cv = gas.gasConstant(y, 0, 1) / (gas.gamma(t, y, 0, 1) - 1);
      // t is a node of the table, so cv is the polynomials' own.
      expect(cv).toBeCloseTo(
        weigh((name) => substance(name).heat(t)),
        8,
      );
      expect(gas.enthalpy(t, y, 0, 1)).toBeCloseTo(
        weigh((name) => mixture([name]).enthalpy(t, new Float64Array(0), 0, 0)),
        5,
      );
    }
  });

  it('the table keeps within 1e-4 of the polynomials between its nodes', () => {
    for (const name of ['air', 'burnt', 'charge', 'carbon dioxide', 'water vapour']) {
      const one = mixture([name]);
      const none = new Float64Array(0);
      for (let t = 203; t < 4000; t += 7) {
        const cv = one.gasConstant(none, 0, 0) / (one.gamma(t, none, 0, 0) - 1);
        expect(Math.abs(cv / substance(name).heat(t) - 1)).toBeLessThan(1e-4);
      }
    }
  });

  it('reads fractions by their place and stride', () => {
    const wide = Float64Array.from([0, 1, 0, 0.25, 0, 0, 0, 0.5]);
    expect(gas.gasConstant(wide, 3, 4)).toBe(gas.gasConstant(Float64Array.from([0.25, 0.5]), 0, 1));
    expect(gas.enthalpy(900, wide, 3, 4)).toBe(gas.enthalpy(900, Float64Array.from([0.25, 0.5]), 0, 1));
  });
});

describe('states that are none', () => {
  const gas = mixture(['air', 'burnt']);
  const good: Point = { density: 1, velocity: 0, temperature: 300, fractions: [0.5] };

  it.each([
    ['density 0', (c: ReturnType<typeof cellsOf>) => (c.conserved[6] = 0)],
    ['density below 0', (c) => (c.conserved[6] = -1)],
    ['energy all motion', (c) => (c.conserved[7] = 1e4)],
    ['energy not a number', (c) => (c.conserved[8] = NaN)],
    ['energy without end', (c) => (c.conserved[8] = Infinity)],
    ['a fraction that is not a number', (c) => (c.partial[2] = NaN)],
  ])('%s: the first such cell is named', (_, spoil) => {
    const cells = cellsOf(gas, [good, good, good, good], 300);
    spoil(cells);
    expect(gas.decode(cells, 0, 4)).toBe(2);
    expect(gas.decode(cells, 0, 2)).toBe(-1);
  });
});

describe('gasOf', () => {
  it('makes the perfect gas or the mixture that a rig asks for', () => {
    expect(gasOf({ gamma: 1.4, gasConstant: 287.05 }).gamma(900, new Float64Array(0), 0, 0)).toBe(1.4);
    expect(gasOf({ components: ['air', 'burnt'] }).components).toEqual(['air', 'burnt']);
    expect(gasOf({ components: ['air', 'burnt'] }).carried).toBe(1);
  });
});
