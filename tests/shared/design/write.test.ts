/** Writing: the layout of the text, and that nothing is lost on the way there and back. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readJson } from '../../../shared/design/json';
import type { Design } from '../../../shared/design/types';
import { writeDesign } from '../../../shared/design/write';

const write = (value: unknown): string => writeDesign(value as Design);

test('two spaces, vectors on one line, a newline at the end, keys as they come', () => {
  expect(write({ b: { position: [1, -0.5, 1e21] }, a: [[1, 2]], none: [], empty: {}, left: undefined })).toBe(
    `{
  "b": {
    "position": [1, -0.5, 1e+21]
  },
  "a": [
    [1, 2]
  ],
  "none": [],
  "empty": {}
}
`,
  );
});

test('a number that JSON cannot hold is not written as null', () => {
  expect(() => write({ a: [Number.NaN] })).toThrow(RangeError);
});

test('every double reads back as itself, seed 20240', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ noNaN: true, noDefaultInfinity: true })), (numbers) => {
      const back = readJson(write({ numbers })) as { numbers: number[] };
      expect(back.numbers.every((n, i) => Object.is(n, numbers[i]))).toBe(true);
    }),
    { seed: 20240, numRuns: 300 },
  );
});

test('our reader and the platform’s agree on whatever is written, seed 20241', () => {
  const safe = fc.jsonValue({ maxDepth: 4 }).filter((value) => !JSON.stringify(value).includes('__proto__'));
  fc.assert(
    fc.property(safe, (value) => {
      const text = write(value);
      expect(readJson(text)).toEqual(JSON.parse(text));
    }),
    { seed: 20241, numRuns: 300 },
  );
});
