/** The whole packet of an example as a PDF: every entry of its contents on the page that it names, small, and the same every time. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { parseDesign } from '../../../shared/design/parse';
import { shopFolder } from '../../../src/shop/shopFolder';
import { installed } from './printed';

const design = parseDesign(
  readFileSync(new URL('../../../public/examples/four-4-1.evenrun.json', import.meta.url), 'utf8'),
);
const packetOf = async () =>
  (await shopFolder(design)).files.find(({ name }) => name === 'packet.pdf')!.bytes as Uint8Array;
const before = process.cpuUsage();
const packet = await packetOf();
const used = process.cpuUsage(before);

test('small, and soon made with all the rest of the shop folder', () => {
  expect(packet.length).toBeLessThan(5e6);
  // Of the processor: others may be at work beside it.
  expect((used.user + used.system) / 1e6).toBeLessThan(10);
});

/** What each kind of sheets is called on its first page. */
const FIRST: Readonly<Record<string, RegExp>> = {
  Cautions: /^Cautions/,
  'Bill of materials': /^Bill of materials/,
  'Buy and cut': /^Buy and cut/,
  Runners: /^Runner r1/,
  'Bend guides': /^Bend guide/,
  Flanges: /flange/,
  'Weld map': /^Weld map/,
  Fitting: /^Fitting/,
  Inspection: /^Inspection/,
};

test.skipIf(!installed && !process.env.CI)('the contents name the right pages', () => {
  const pages = textOf(packet);
  const entries = [...pages[0]!.matchAll(/^(.+?) {2,}.*\bpages? (\d+)(?: to (\d+))?$/gm)].map(([, name, from, to]) => ({
    name: name!.trim(),
    from: Number(from),
    to: Number(to ?? from),
  }));
  expect(entries.map((e) => e.name)).toEqual(expect.arrayContaining(Object.keys(FIRST)));
  for (const { name, from } of entries) if (FIRST[name]) expect(pages[from - 1]!.trim(), name).toMatch(FIRST[name]);
  for (const [i, { from }] of entries.slice(1).entries()) expect(from).toBe(entries[i]!.to + 1);
  expect(entries.at(-1)!.to).toBe(pages.length);
  const [, hash] = /design ([0-9a-f]{12})/.exec(pages[0]!)!;
  for (const [i, page] of pages.entries()) {
    expect(page).toContain(`page ${i + 1} of ${pages.length}`);
    expect(page).toContain(hash);
  }
});

/** Page by page, as it stands on them. */
function textOf(pdf: Uint8Array): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'evenrun-pdf-'));
  try {
    const file = join(folder, 'packet.pdf');
    writeFileSync(file, pdf);
    const { status, stdout } = spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    expect(status).toBe(0);
    return stdout.split('\f').slice(0, -1);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
