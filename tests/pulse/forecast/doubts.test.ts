/** What an answer that did not settle says of why. */
import { expect, test } from 'vitest';
import { doubtsOf } from '../../../src/pulse/forecast/doubts';

const known = {
  isSettled: false,
  drift: 0.004,
  stored: 0.001,
  cycles: 24,
  extremes: { hottest: 1200, fastest: 0.4, where: 'r1' },
  pistonSpeed: 15,
  cell: 0.01,
};

test.each([
  ['torque that moved', {}, /^torque still moved by 0\.40 % in the last of 24 cycles/],
  ['the intake', { stored: 0.07 }, /^after 24 cycles the intake still filled or emptied by 7\.00 %/],
  [
    'something else than torque',
    { drift: 2e-4 },
    /^after 24 cycles torque moved by no more than 0\.02 %, but .*not at rest$/,
  ],
])('%s is named', (_, more, words) => {
  expect(doubtsOf({ ...known, ...more }).map(({ message }) => message)).toEqual([expect.stringMatching(words)]);
});

test('one that settled has none', () => {
  expect(doubtsOf({ ...known, isSettled: true })).toEqual([]);
});
