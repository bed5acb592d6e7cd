/** Good rigs are read, with everything filled in that may be left out; whatever is done to one, only a refusal comes of it. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DesignError } from '../../../shared/design/refusal';
import { readRig } from '../../../src/pulse/rig/read';
import { contractRig, contractText, extendedRig, type Loose } from './contract';

test('the rig of the contract is read as it is written', () => {
  expect(readRig(contractText)).toEqual(contractRig());
});

test('what may be left out is filled in', () => {
  const rig = contractRig();
  for (const field of ['courant', 'probes', 'sample', 'profile']) delete rig[field];
  for (const field of ['friction', 'wallTemperature']) delete rig.pipes[0][field];
  delete rig.pipes[0].initial[0].velocity;
  delete rig.ends[1].model;
  delete rig.ends[3].dischargeCoefficient;
  const read = readRig(JSON.stringify(rig));
  expect(read).toMatchObject({ courant: 0.8, probes: [], sample: 0, profile: false });
  expect(read.pipes[0]).toEqual(contractRig().pipes[0]);
  expect(read.ends[1]).toEqual(contractRig().ends[1]);
  expect(read.ends[3]).toEqual({ ...contractRig().ends[3], dischargeCoefficient: 1 });
});

test('everything beyond the contract is read; remarks are left out, and the component that makes up the rest', () => {
  const read = readRig(JSON.stringify(extendedRig()));
  expect(read).not.toHaveProperty('title');
  expect(read.pipes[0]).not.toHaveProperty('note');
  expect(read.ambient.fractions).toEqual({});
  expect(read.pipes[0]!.initial[0]!.fractions).toEqual({ burnt: 0.5 });
  expect(read.ends[0]).toEqual(extendedRig().ends[0]);
  expect(read.ends.slice(4)).toEqual(extendedRig().ends.slice(4));
});

test('stretches are put in order, and roundings at places are mended', () => {
  const rig = contractRig();
  rig.pipes[1].initial.reverse();
  rig.pipes[1].length = 0.1 + 0.2;
  rig.pipes[1].diameter = [
    [0, 0.04],
    [0.3, 0.05],
  ];
  rig.pipes[1].initial[0].to = 0.3;
  rig.pipes[1].initial[0].from = 0.25 + 1e-13;
  const [, pipe] = readRig(JSON.stringify(rig)).pipes;
  expect(pipe!.initial.map(({ from, to }) => [from, to])).toEqual([
    [0, 0.25],
    [0.25, 0.1 + 0.2],
  ]);
  expect(pipe!.diameter.at(-1)).toEqual([0.1 + 0.2, 0.05]);
});

/** A tube of two states, (density, velocity, pressure), with a gas constant of 1 or of air. */
function tube(gasConstant: number, left: number[], right: number[]): Loose {
  const state = ([density, velocity, pressure]: number[]) => ({
    pressure,
    velocity,
    temperature: pressure! / (density! * gasConstant),
  });
  const rig = contractRig();
  rig.gas.gasConstant = gasConstant;
  rig.ambient = { pressure: 1, temperature: 1 / gasConstant };
  rig.pipes = [rig.pipes[0]];
  rig.pipes[0].initial = [
    { from: 0, to: 0.4, ...state(left) },
    { from: 0.4, to: 1, ...state(right) },
  ];
  rig.ends = ['start', 'finish'].map((side) => ({ kind: 'through', at: ['a', side] }));
  return rig;
}

describe.each([1, 287.05])('shock tubes of textbooks are no absurd states, gas constant %f', (gasConstant) => {
  test.each([
    ['two rarefactions', [1, -2, 0.4], [1, 2, 0.4]],
    ['a strong blast', [1, 0, 1000], [1, 0, 0.01]],
    ['colliding streams', [5.99924, 19.5975, 460.894], [5.99242, -6.19633, 46.095]],
  ])('%s', (_, left, right) => {
    expect(() => readRig(JSON.stringify(tube(gasConstant, left, right)))).not.toThrow();
  });
});

test('an orifice of more than the pipe is no mistake', () => {
  const rig = contractRig();
  rig.ends[3].area = 1;
  expect(() => readRig(JSON.stringify(rig))).not.toThrow();
});

const EXAMPLES = new URL('../../../public/examples/rigs/', import.meta.url);
test('every example is read, and every one is listed', () => {
  const files = readdirSync(EXAMPLES).filter((name) => name.endsWith('.rig.json'));
  const listed = JSON.parse(readFileSync(new URL('index.json', EXAMPLES), 'utf8'));
  expect(listed.map(({ file }: Loose) => file).sort()).toEqual(files.sort());
  expect(files.length).toBeGreaterThanOrEqual(5);
  for (const file of files) readRig(readFileSync(new URL(file, EXAMPLES), 'utf8'));
  for (const { title, about } of listed) expect(`${title} ${about}`).toMatch(/^[A-Z].+\.$/);
});

/** Seed 20: a linear congruential generator, by Knuth's constants. */
function chance(seed: number): () => number {
  let state = BigInt(seed);
  return () => {
    state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffffffffffffffffn;
    return Number(state >> 11n) / 2 ** 53;
  };
}

test('whatever is done to a rig, it is read or refused (seed 20)', () => {
  const next = chance(20);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const junk = [
    null,
    true,
    '',
    'a',
    '__proto__',
    0,
    -1,
    1e308,
    1e-308,
    0.5,
    [],
    {},
    [[]],
    [0, 0],
    ['a', 'start'],
    { kind: 'open' },
  ];
  const keys = ['constructor', 'toString', 'kind', 'at', 'roughness', 'components', 'fractions', 'length'];
  let accepted = 0;
  for (let round = 0; round < 4000; round++) {
    const rig = round % 2 ? contractRig() : extendedRig();
    for (let times = Math.ceil(3 * next()); times > 0; times--) {
      let at = rig;
      for (;;) {
        const names = Object.keys(at);
        // A list keeps its own length.
        const strange = pick(Array.isArray(at) ? keys.slice(0, -1) : keys);
        const name = names.length === 0 || next() < 0.05 ? strange : pick(names);
        const inner = at[name];
        if (inner !== null && typeof inner === 'object' && next() < 0.8) {
          at = inner;
          continue;
        }
        const what = next();
        if (what < 0.2) delete at[name];
        else if (what < 0.4 && Array.isArray(at)) at.push(structuredClone(pick(at)));
        else if (what < 0.6 && typeof inner === 'number') at[name] = inner * 10 ** Math.floor(12 * next() - 6);
        else at[name] = structuredClone(pick(junk));
        break;
      }
    }
    let text = JSON.stringify(rig);
    if (next() < 0.05) text = text.slice(0, Math.floor(next() * text.length));
    try {
      readRig(text);
      accepted++;
    } catch (error) {
      if (!(error instanceof DesignError)) throw new Error(`${(error as Error).stack} at ${text}`);
      expect(error.problems.length).toBeGreaterThan(0);
      for (const { path, found, allowed } of error.problems) {
        expect([path, found, allowed].every((part) => part.length > 0)).toBe(true);
        expect(`${path} ${found} ${allowed}`).not.toMatch(/[\r\n]|undefined|Invalid input|NaN/);
      }
    }
  }
  // Both ways are gone.
  expect(accepted).toBeGreaterThan(100);
  expect(accepted).toBeLessThan(3000);
});
