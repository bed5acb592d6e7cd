/** An engine with the cylinders of one bank alone. */
import { expect, test } from 'vitest';
import { engineSetup } from '../../../src/pulse/engine/setup';
import { coveredEngine } from '../../../src/pulse/path/coveredEngine';
import { laidOutPath } from '../../../src/pulse/path/laidOut';
import { example } from './designs';

const design = example('v8-left-bank-4-1');
const { path } = laidOutPath(design);
const { setup } = engineSetup(design);

test('one bank of a V8 fires when it does in the whole engine, its first cylinder at 0', () => {
  const half = coveredEngine(setup, path);
  expect(half.cylinders).toEqual([1, 3, 5, 7]);
  // Of 1-8-4-3-6-5-7-2, one every 90°.
  expect(half.firingOrder).toEqual([1, 3, 5, 7]);
  expect(half.fires).toEqual([0, 270, 450, 540]);
  expect(half.intake.throttleArea).toBeCloseTo(setup.intake.throttleArea / 2, 15);
  expect(half.bore).toBe(setup.bore);
});

test('where the bank does not fire first, its angles count from its own first', () => {
  const others = { valves: [2, 4, 6, 8].map((cylinder) => ({ cylinder, pipe: `r${cylinder}`, share: 1 })) };
  const half = coveredEngine(setup, others);
  // 8 at 90°, 4 at 180°, 6 at 360°, 2 at 630° of the whole engine.
  expect(half.firingOrder).toEqual([8, 4, 6, 2]);
  expect(half.fires).toEqual([540, 90, 270, 0]);
});

test('all covered: the engine as it is; a stranger is a caller’s mistake', () => {
  const whole = laidOutPath(example('v8-both-banks')).path;
  expect(coveredEngine(setup, whole)).toBe(setup);
  expect(() => coveredEngine(setup, { valves: [{ cylinder: 9, pipe: 'r9', share: 1 }] })).toThrow(RangeError);
});
