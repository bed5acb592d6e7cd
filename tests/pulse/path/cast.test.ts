/** The stand-in for a cast manifold: which pipes it has, and what is assumed by name. */
import { describe, expect, test } from 'vitest';
import { DesignError } from '../../../shared/design/refusal';
import type { CastManifold, Design } from '../../../shared/design/types';
import { castPath } from '../../../src/pulse/path/cast';
import { lengthsOf } from '../../../src/pulse/path/lengths';
import { coveredCylinders } from '../../../src/pulse/path/reading';
import { usualCast } from '../../../src/pulse/path/usualCast';
import { example, examples, layouts } from './designs';
import { rigged } from './rigged';

const design = example('four-4-1');
const cast: CastManifold = { branch: { length: 60, bore: 35 }, shared: { length: 320, bore: 40 }, roughness: 0.3 };
const tailpipe = { length: 1800, bore: 48 };

function refusal(of: Design, given?: CastManifold): DesignError {
  try {
    castPath(of, given);
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    return error as DesignError;
  }
  throw new Error('was accepted');
}

test('branches enter the passage one after the other, the port in the head before each', () => {
  const { path, assumed } = castPath({ ...design, exhaust: { tailpipe, cast } });
  expect(assumed).toEqual([]);
  expect(path.pipes.map(({ id, role }) => `${role}: ${id}`)).toEqual([
    'branch: branch 1',
    'branch: branch 2',
    'branch: branch 3',
    'branch: branch 4',
    'shared: shared 1',
    'shared: shared 2',
    'shared: shared 3',
    'shared: shared 4',
    'tailpipe: tailpipe',
  ]);
  const passed = lengthsOf(path).map(({ toMouth }) => toMouth);
  // 84 mm in the head, 60 mm of branch, then 80 mm of passage less from each branch to the next.
  passed.forEach((length, i) => {
    expect(length).toBeCloseTo(0.084 + 0.06 + 0.32 - 0.08 * i + 1.8, 12);
  });
  expect(path.pipes[0]).toMatchObject({ inHead: 0.084, roughness: 0.0003 });
});

test('the first branch runs into the passage alone, every other one meets it', () => {
  const { path } = castPath(design, cast);
  const joints = path.ends.flatMap((end) => (end.kind === 'junction' ? [end.at.map(([id]) => id)] : []));
  expect(joints).toEqual([
    ['branch 1', 'shared 1'],
    ['shared 1', 'branch 2', 'shared 2'],
    ['shared 2', 'branch 3', 'shared 3'],
    ['shared 3', 'branch 4', 'shared 4'],
    ['shared 4', 'tailpipe'],
  ]);
  // Away from the joint: back along the passage, back along the branch that comes in at 60°, on along the passage.
  const side = [
    [-1, 0, 0],
    [expect.closeTo(-0.5, 12), expect.closeTo(Math.sqrt(0.75), 12), 0],
    [1, 0, 0],
  ];
  const models = path.ends.flatMap((end) => (end.kind === 'junction' ? [[end.model, end.directions ?? null]] : []));
  const [alone, entered] = [
    ['equal-pressure', null],
    ['pressure-loss', side],
  ];
  expect(models).toEqual([alone, entered, entered, entered, alone]);
});

describe('nothing given', () => {
  test('the usual one is told by name, as wide as the ports, with the header’s tailpipe', () => {
    const { path, assumed } = castPath(design);
    expect(assumed.map((one) => one.path)).toEqual([
      'exhaust/cast/branch',
      'exhaust/cast/shared',
      'exhaust/cast/roughness',
      'exhaust/tailpipe',
    ]);
    expect(path.pipes[0]!.length).toBeCloseTo(0.084 + 0.09, 12);
    expect(path.pipes[0]!.diameter.at(-1)![1]).toBe(0.037);
    expect(path.pipes.at(-1)!.diameter.at(-1)![1]).toBeCloseTo(0.0573, 12);
    expect(assumed.at(-1)!.why).toMatch(/both breathe through the same tailpipe/);
  });

  test('without ports its bore follows the valves', () => {
    const bare: Design = { ...design, ports: [], runners: [], merges: [] };
    const { branch } = usualCast(bare).cast;
    // Throats of two valves of 28 mm: 33.66 mm, a tenth wider.
    expect(branch.bore).toBe(37);
    expect(coveredCylinders(castPath(bare).path)).toEqual([1, 2, 3, 4]);
  });
});

test('two banks: a passage and a tailpipe each', () => {
  const { path } = castPath(example('v8-both-banks'));
  expect(path.pipes.filter(({ role }) => role === 'tailpipe')).toHaveLength(2);
  expect(path.pipes.find(({ id }) => id === 'bank 2 shared 4')!.role).toBe('shared');
});

test.each([...examples, ...layouts])(
  '$name: a stand-in that a rig accepts, for the same cylinders',
  ({ design: one }) => {
    const { path } = castPath(one);
    rigged(path);
    expect(coveredCylinders(path)).toEqual(
      [...new Set(one.ports.map(({ cylinder }) => cylinder))].sort((a, b) => a - b),
    );
  },
);

test('what cannot be followed is refused with its place', () => {
  expect(refusal(design, { ...cast, roughness: 20 }).path).toBe('exhaust/cast/roughness');
  expect(refusal(design, { ...cast, branch: { length: 2, bore: 35 } }).path).toBe('exhaust/cast/branch/length');
  expect(refusal(design, { ...cast, shared: { length: 30, bore: 35 } })).toMatchObject({
    path: 'exhaust/cast/shared/length',
    allowed: '40 to 20000 mm, 10 mm for each branch',
  });
  expect(refusal({ ...design, ports: [], engine: {} }).path).toBe('engine/cylinders');
});
