/** A study goes on beside other faces, ends with its engine, and tells how long it will take. Nothing is followed. */
import { readFileSync } from 'node:fs';
import { afterEach, expect, it } from 'vitest';
import { setFields } from '../../../shared/design/edit';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { endIfOther, goOn, timeLeft } from '../../../src/app/forecast/sizes/goingOn';
import { NO_STUDY, stopStudy, useStudy } from '../../../src/app/forecast/sizes/study';
import { wishOf } from '../../../src/app/forecast/sizes/wish';

const FOUR = parseDesign(readFileSync('public/examples/four-4-1.evenrun.json', 'utf8'));
const withField = (path: string[], value: unknown): Design => {
  const edited = setFields(FOUR, [[path, value]]);
  if (!edited.ok) throw new Error(edited.refusal.allowed);
  return edited.design;
};
const never = { follow: () => new Promise<void>(() => {}) };
const keeping = { read: async () => null, write: async () => {} };

afterEach(() => {
  stopStudy();
  useStudy.setState(NO_STUDY);
});

it('it goes on through edits that change nothing of it, and ends with another engine or design', () => {
  void goOn(wishOf('d', FOUR), never, keeping, 0);
  endIfOther('d', withField(['title'], 'Another name'));
  expect(useStudy.getState().running).toBe(true);
  endIfOther('d', withField(['engine', 'bore'], 70));
  expect(useStudy.getState().running).toBe(false);
  void goOn(wishOf('d', FOUR), never, keeping, 0);
  endIfOther('other', FOUR);
  expect(useStudy.getState().running).toBe(false);
});

it('what was known when it began counts as no time spent', () => {
  void goOn(wishOf('d', FOUR), never, keeping, 0);
  expect(timeLeft(100, 200, 1)).toBe(null);
  expect(timeLeft(110, 200, 60_000)).toBe('about 9 min');
});
