/** The shop folder as the app takes it: on the paper of this browser. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseDesign } from '../../shared/design/parse';
import { shopZip } from '../../src/app/workers/shopZip';
import { zipFolder } from '../../src/formats/zip/zip';
import type { PaperChoice } from '../../src/shop/shopFolder';
import { shopFolder } from '../../src/shop/shopFolder';

const design = parseDesign(readFileSync('tests/layouts/known/c6-i3-3-1.evenrun.json', 'utf8'));
const zipOn = async (onPaper?: PaperChoice) => (await shopZip(design, new Map(), 'a', () => {}, onPaper)).zip;

test('comes on the paper that was chosen, and on A4 where none was', async () => {
  const choice = { paper: 'letter', paperThickness: 0.3, stations: 8 } as const;
  const { files } = await shopFolder(design, new Map(), choice);
  const chosen = await zipOn(choice);
  expect(Buffer.compare(chosen, new Uint8Array(zipFolder('a', files)))).toBe(0);
  const usual = await zipOn();
  expect(Buffer.compare(usual, await zipOn({ paper: 'a4', paperThickness: 0.1, stations: 16 }))).toBe(0);
  expect(Buffer.compare(usual, chosen)).not.toBe(0);
}, 60_000);
