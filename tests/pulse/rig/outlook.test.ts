/** How long a run will still take, and the word on it: only once it can be told, only where it is long. */
import { expect, test } from 'vitest';
import { secondsLeft, spanText, whyLong } from '../../../src/pulse/rig/outlook';
import { bothEnds, pipe, rig } from '../rigs';

test('what is left goes by what was done, once that is long enough to go by', () => {
  expect(secondsLeft(10, 0.002, 0.01)).toBeCloseTo(40, 12);
  expect(secondsLeft(1, 0.002, 0.01)).toBe(null);
  expect(secondsLeft(10, 0, 0.01)).toBe(null);
  expect(secondsLeft(10, 0.01, 0.01)).toBe(null);
});

test.each([
  [0, 'about 1 s'],
  [89, 'about 89 s'],
  [91, 'about 2 min'],
  [3600, 'about 60 min'],
  [2 * 3600, 'about 2 h'],
  [47 * 3600, 'about 2 days'],
])('%d s is %s', (seconds, words) => expect(spanText(seconds)).toBe(words));

test('what makes it long is named: the pipe whose cells are smallest', () => {
  const pipes = [pipe('long', { length: 1, cells: 100 }), pipe('short', { length: 0.01, cells: 50 })];
  const both = rig({ pipes, ends: pipes.flatMap(({ id }) => bothEnds(id, 'closed')), duration: 1 });
  expect(whyLong(299, both)).toBe(null);
  expect(whyLong(3 * 3600, both)).toMatch(/about 3 h to go\. .* pipe "short" are the smallest, 0\.0002 m: /);
});
