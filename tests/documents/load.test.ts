/** Old files load for ever: every document in v1/ must be accepted as it is, whatever later versions bring. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseDesign } from '../../shared/design/parse';
import { writeDesign } from '../../shared/design/write';

const folder = new URL('./v1/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.evenrun.json'));

test('there are documents to load', () => {
  expect(files.length).toBeGreaterThanOrEqual(7);
});

test.each(files)('v1/%s loads, complete and in its own order, and survives being written', (file) => {
  const text = readFileSync(new URL(file, folder), 'utf8');
  const design = parseDesign(text);
  // Compared as text: this holds the order of the keys too.
  expect(JSON.stringify(design)).toBe(JSON.stringify(JSON.parse(text)));
  expect(JSON.stringify(parseDesign(writeDesign(design)))).toBe(JSON.stringify(design));
});
