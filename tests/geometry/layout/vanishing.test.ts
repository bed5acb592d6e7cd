/** Bends that vanish while balancing: dropped as the contract says, with the lengths exact all the same. */

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { balancePoints, check } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import { disturb } from './disturb';

const design = parseDesign(readFileSync('public/examples/v8-both-banks.evenrun.json', 'utf8'));

it('drops a bend that came out straight and makes the lengths exact without it, seed 438', () => {
  const found = balancePoints(disturb(design, 20, 438));
  const report = check(found.design);
  expect(report.problems).toEqual([]);
  const bends = report.runners.map((r) => r.bends);
  expect(Math.min(...bends)).toBe(3);
  for (const [i, r] of found.design.runners.entries()) expect(r.points!.length - 2).toBe(bends[i]);
  expect(report.groups[0]!.spread).toBeLessThan(1e-5);
});

// Bends that almost vanish have no slope: these starts swung for up to forty steps before the step knew of it.
it.each([71, 82, 180, 201])('needs few steps past bends that almost vanish, seed %i', (seed) => {
  const found = balancePoints(disturb(design, 20, seed), new Map(), { restarts: 0 });
  expect(check(found.design).ok).toBe(true);
  expect(found.iterations).toBeLessThan(20);
});
