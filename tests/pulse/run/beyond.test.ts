/** A run says where its gas was beyond the table of heats: streams that meet make it far hotter, streams that part far colder. */
import { expect, test } from 'vitest';
import type { RigRun } from '../../../src/pulse/report';
import { accountText } from '../../../src/pulse/rig/accountText';
import type { GasInput } from '../../../src/pulse/rig/types';
import { bothEnds, pipe, ran, rig } from '../rigs';

const MIXTURE: GasInput = { components: ['air', 'burnt'] };

/** Two streams of one pipe that meet in its middle, or part there where `speed` is below 0. */
function streams(speed: number, gas = MIXTURE, temperature = 300): RigRun {
  const state = { pressure: 1e5, temperature };
  const initial = [
    { from: 0, to: 0.5, ...state, velocity: speed },
    { from: 0.5, to: 1, ...state, velocity: -speed },
  ];
  const pipes = [pipe('a', { cells: 200, initial })];
  return ran(rig({ gas, pipes, ends: bothEnds('a', 'through'), duration: 0.4 / Math.abs(speed) }));
}

test('hotter: where and when, in words too', () => {
  const run = streams(8000);
  const { beyond } = run;
  expect(beyond!.temperature).toBeGreaterThan(10_000);
  expect(beyond!.temperature).toBeGreaterThanOrEqual(Math.max(...run.profile[0]!.temperature));
  expect([beyond!.pipe, beyond!.since <= beyond!.time, beyond!.time <= run.time]).toEqual(['a', true, true]);
  expect(Math.abs(beyond!.x - 0.5)).toBeLessThan(0.4);
  expect(accountText(run)).toMatch(
    /^beyond the table of heats, 100 to 4000 K: gas of \d+ K in pipe "a", 0\.\d+ m from its start, at [\de.-]+ s \(first seen beyond at [\de.-]+ s\); what came of it is not to be trusted$/m,
  );
});

test('colder, too', () => {
  // By the waves' own law, (1 − 0.2 × 500 m/s ÷ 283 m/s)² of 200 K: 84 K.
  const { temperature } = streams(-500, MIXTURE, 200).beyond!;
  expect(temperature).toBeLessThan(100);
  expect(temperature).toBeGreaterThan(80);
});

test('nothing is said of a mixture within the table, nor of one perfect gas, which has none', () => {
  for (const run of [streams(200), streams(8000, { gamma: 1.4, gasConstant: 287 })]) {
    expect(run.beyond).toBe(null);
    expect(accountText(run)).not.toContain('beyond');
  }
});
