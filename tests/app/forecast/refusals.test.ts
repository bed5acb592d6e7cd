/** Refusals in the words of the page; hints that say what is refused; a form that keeps its values while one is refused. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { setFields } from '../../../shared/design/edit';
import { parseDesign } from '../../../shared/design/parse';
import type { DesignError, Refusal } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { CYLINDER, valveFields } from '../../../src/app/forecast/engine/fields';
import { assumedNow } from '../../../src/app/forecast/engine/useAssumed';
import { browserGround, engineRefusals } from '../../../src/app/forecast/ground';
import { isNotLaid, placeName, refusalLine } from '../../../src/app/forecast/refusalWords';

const FOUR = parseDesign(readFileSync('public/examples/four-4-1.evenrun.json', 'utf8'));
const withBore = (bore: number | undefined): Design => {
  const edited = setFields(FOUR, [[['engine', 'bore'], bore]]);
  if (!edited.ok) throw new Error(edited.refusal.allowed);
  return edited.design;
};

it('a refusal names the field, not its path, and says what is wanted', () => {
  const [refusal] = engineRefusals(withBore(undefined));
  expect(refusalLine(refusal!)).toMatch(/^Bore: not given\. Wanted: diameter of a cylinder, from 20 to 250 mm/);
  expect(placeName('engine/exhaustValve/lift')).toBe('Exhaust valve, lift');
  expect(placeName('engine/rpm/1')).toBe('Used to');
  expect(placeName('exhaust/sketch')).toBe('Sketch of a header');
  expect(placeName('runners/r1/points')).toBe('Runner r1');
  expect(placeName('engine/baseline/points/3/1')).toBe('Measured curve, point 4');
  expect(placeName('')).toBe('The design');
});

it('runners that are not laid are sent to the bench or to the sketch, not to the command line', () => {
  const runners = FOUR.runners.map(({ points: _points, ...runner }) => runner);
  const { sketch: _sketch, ...exhaust } = FOUR.exhaust ?? {};
  let refusals: readonly Refusal[] = [];
  try {
    browserGround.subjectOf('header', { ...FOUR, runners, exhaust });
  } catch (error) {
    refusals = (error as DesignError).problems;
  }
  expect(refusals).toHaveLength(1);
  expect(isNotLaid(refusals[0]!)).toBe(true);
  expect(refusalLine(refusals[0]!)).toMatch(/^Runners: .* are not laid out\. Lay them on the bench, or sketch/);
  expect(refusalLine(refusals[0]!)).not.toMatch(/evenrun route|exhaust\/sketch/);
});

it('angles are told with the minus sign that the fields show', () => {
  const refusal = { path: 'engine/exhaustValve/opens', found: 'opens 52', allowed: 'such as opens -232, not 1-3' };
  expect(refusalLine(refusal)).toBe('Exhaust valve, opens: opens 52. Wanted: such as opens −232, not 1-3.');
});

it('a hint says the bounds that are refused by', () => {
  expect(CYLINDER[0]!.range).toEqual({ least: 20, most: 250 });
  expect(valveFields('exhaustValve')[1]!.range).toEqual({ least: 8, most: 120 });
});

it('one refused number leaves what was taken for the others in its fields', () => {
  const before = assumedNow('a', FOUR);
  expect(before.length).toBeGreaterThan(3);
  expect(assumedNow('a', withBore(400))).toEqual(before);
  // Of another design nothing is known.
  expect(assumedNow('b', withBore(400)).length).toBeLessThan(before.length);
});
