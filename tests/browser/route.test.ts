/**
 * Laying in a real browser, with its workers: the 4-2-1 example from nothing, a search given up midway, an alternative kept
 * and taken back, and the offer after something came into the way. What is saved is measured by the kernel.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check } from '../../geometry';
import { parseDesign } from '../../shared/design/parse';
import type { Design } from '../../shared/design/types';
import { writeDesign } from '../../shared/design/write';
import { type Bench, openBench, type Watched } from './page';

const LONG = 60_000;
const EXAMPLES = join(import.meta.dirname, '../../public/examples');

let bench: Bench;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  bench = await openBench();
  watched = await bench.newPage();
  page = watched.page;
  // Without the paper look each picture takes a software renderer a fraction of the time; nothing here is about the look.
  await page.goto(`${bench.url}?plain`);
  // Without the picker a file is a download, which a test can hold in its hands.
  await page.evaluate(() => Object.defineProperty(window, 'showSaveFilePicker', { value: undefined }));
  await page.locator('.viewport canvas').waitFor();
}, LONG);
afterAll(() => bench?.close());

const example = (name: string): Design => parseDesign(readFileSync(join(EXAMPLES, `${name}.evenrun.json`), 'utf8'));

/** The same with nothing laid. */
const bare = (design: Design): Design => ({
  ...design,
  runners: design.runners.map(({ points: _points, radii: _radii, ...rest }) => rest),
});

async function open(design: Design, title: string): Promise<void> {
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({
      name: `${title}.evenrun.json`,
      mimeType: 'application/json',
      buffer: Buffer.from(writeDesign({ ...design, title })),
    });
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
}

/** The document's bytes, as they are saved. */
async function saved(): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save', exact: true }).click(),
  ]);
  return readFileSync(await download.path(), 'utf8');
}

const panel = () => page.getByRole('region', { name: 'Lay the header', exact: true });
const inPanel = (name: string | RegExp) => panel().getByRole('button', { name, exact: true });
const undo = () => page.getByRole('button', { name: /^Undo/ }).first();
const lay = () => page.getByRole('button', { name: 'Lay…', exact: true });
const found = () =>
  panel()
    .getByText(/layouts? holds? every rule/)
    .waitFor({ timeout: LONG });
const searchFor = (seconds: number) => panel().getByLabel('Search for').selectOption(String(seconds));
/** What of the picture is not the document. */
const preview = () => page.locator('.viewport-preview');

/** Every rule holds, and the lengths of each group are equal. */
function expectSound(text: string): Design {
  const design = parseDesign(text);
  const report = check(design);
  expect(report.problems).toEqual([]);
  for (const { spread } of report.groups) expect(spread).toBeLessThan(0.001);
  return design;
}

describe('laying a header', () => {
  it(
    'lays the 4-2-1 example from nothing, as one step',
    async () => {
      await open(bare(example('four-4-2-1')), 'From nothing');
      const before = await saved();
      await page.getByText('6 runners are not laid yet.').waitFor();
      await page.getByRole('button', { name: 'Lay the header…' }).click();
      await searchFor(5);
      // The focus waits on the button that begins.
      await page.keyboard.press('Enter');
      await preview().getByText('Best so far, not kept yet').waitFor({ timeout: LONG });
      expect(await saved()).toBe(before);
      // Picture, rack and tables can be used meanwhile.
      await page.getByRole('tab', { name: 'Past' }).click();
      await page.getByText('nothing changed yet').waitFor();
      await page.getByRole('tab', { name: 'Numbers' }).click();
      await found();
      expect(await saved()).toBe(before);
      await inPanel(/^Keep/).click();
      await panel().waitFor({ state: 'detached' });
      expectSound(await saved());
      expect(await undo().getAttribute('aria-label')).toBe('Undo: Lay the header');
      await undo().click();
      expect(await saved()).toBe(before);
      expect(await undo().isDisabled()).toBe(true);
    },
    3 * LONG,
  );

  it(
    'says before a search and after it which length cannot be had',
    async () => {
      const short = bare(example('four-4-2-1'));
      const groups = { ...short.groups, primaries: { ...short.groups.primaries!, length: 120 } };
      await open({ ...short, groups }, 'Too short');
      await page.keyboard.press('Shift+L');
      const words = panel().getByText(/^120 mm is out of reach for group primaries: runner \w+ is .* can be had\.$/);
      await words.waitFor({ timeout: LONG });
      await searchFor(5);
      await inPanel('Lay the header').click();
      await panel().getByText('No layout was found that holds every rule').waitFor({ timeout: LONG });
      await words.waitFor();
      await inPanel('Discard').click();
      await inPanel('Close').click();
    },
    2 * LONG,
  );

  it(
    'leaves the document byte for byte as it was when it is cancelled midway, by a press or by Escape',
    async () => {
      await open(example('four-4-2-1'), 'Given up');
      const before = await saved();
      const leaves = [() => inPanel('Cancel').click(), () => inPanel('Cancel').press('Escape')];
      for (const leave of leaves) {
        await lay().click();
        await searchFor(60);
        await inPanel('Lay anew').click();
        await preview().getByText('Best so far, not kept yet').waitFor({ timeout: LONG });
        await leave();
        await preview().waitFor({ state: 'detached' });
        expect(await saved()).toBe(before);
        expect(await undo().isDisabled()).toBe(true);
        await inPanel('Close').click();
      }
    },
    3 * LONG,
  );

  it(
    'keeps an alternative as one step, all by keys, and undo brings the former back',
    async () => {
      await open(example('four-4-2-1'), 'Alternatives');
      const before = await saved();
      await page.keyboard.press('Shift+L');
      await panel().waitFor();
      await searchFor(10);
      await inPanel('Lay anew').press('Enter');
      await found();
      const count = await panel().getByRole('radio').count();
      // Where there is a choice: not the best, so that what is kept is what was chosen. The focus waits on the rows then,
      // else on the button that keeps.
      const row = Math.min(1, count - 1);
      if (count > 1) await page.keyboard.press('ArrowDown');
      await preview()
        .getByText(count > 1 ? `Layout 2 of ${count}, not kept yet` : 'The layout found')
        .waitFor();
      const bends = Number(await panel().locator('tbody tr.pick').nth(row).getByRole('cell').first().textContent());
      if (count > 1) await page.keyboard.press('Tab');
      expect(await page.locator(':focus').textContent()).toBe(count > 1 ? 'Keep layout 2' : 'Keep it');
      await page.keyboard.press('Enter');
      await panel().waitFor({ state: 'detached' });
      const after = await saved();
      expect(after).not.toBe(before);
      expect(check(expectSound(after)).runners.reduce((sum, r) => sum + r.bends, 0)).toBe(bends);
      expect(await undo().getAttribute('aria-label')).toBe('Undo: Lay anew');
      await undo().click();
      expect(await saved()).toBe(before);
      expect(await undo().isDisabled()).toBe(true);
    },
    3 * LONG,
  );

  it(
    'offers to lay anew, the way of the runners kept, once something around is in the way',
    async () => {
      await open(example('four-4-1'), 'In the way');
      await page.getByRole('tab', { name: 'Edit' }).click();
      await page.getByRole('button', { name: 'steering shaft' }).first().click();
      const clearance = page.getByLabel('Clearance', { exact: true });
      await clearance.fill('120');
      await clearance.press('Enter');
      await page.getByText('Something around the header was changed, and not every rule holds.').waitFor();
      await page.getByRole('button', { name: 'Lay anew…' }).click();
      expect(await panel().getByLabel('Keep the way the runners go now').isChecked()).toBe(true);
      await inPanel('Close').click();
      await page.getByRole('tab', { name: 'Numbers' }).click();
    },
    2 * LONG,
  );

  it(
    'says how many runners are locked and stay',
    async () => {
      const design = example('four-4-1');
      const runners = design.runners.map((r, i) => (i < 2 ? { ...r, locked: true } : r));
      await open({ ...design, runners }, 'Half locked');
      await lay().click();
      await panel().getByText('2 of 4 are locked and stay.').waitFor();
      await inPanel('Close').click();
    },
    LONG,
  );

  it('did all of this without an error on the console', () => {
    expect(watched.errors).toEqual([]);
    expect(watched.strays).toEqual([]);
  });
});
