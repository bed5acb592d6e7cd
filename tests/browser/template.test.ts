/** A template of one's own in a real browser, by keys: asked for, refused in place, mended in inches, saved; the paper is kept. */
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Bench, openBench, runAction, withoutPicture } from './page';

const LONG = 60_000;

let bench: Bench;
let page: Page;
let errors: string[];

/** A download takes the place of the system's own dialog. */
const prepared = async (context: BrowserContext): Promise<void> => {
  await withoutPicture(context);
  await context.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
};

beforeAll(async () => {
  bench = await openBench();
  ({ page, errors } = await bench.newPage({}, prepared));
  await page.getByRole('region', { name: 'Runners', exact: true }).waitFor();
}, LONG);
afterAll(() => bench?.close());

const sheet = () => page.getByRole('dialog', { name: 'Wrap-around template' });

async function typed(label: string, text: string): Promise<void> {
  await sheet().getByLabel(label, { exact: true }).focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Tab');
}

const saved = async (button: string): Promise<{ name: string; bytes: Buffer }> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    sheet().getByRole('button', { name: button }).press('Enter'),
  ]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
};

it(
  'by keys: refused in place, mended, saved as SVG and PDF on the paper that was chosen',
  async () => {
    await runAction(page, 'paper letter');
    await page.getByText(/come on Letter/).waitFor();
    await runAction(page, 'wrap-around');
    await sheet()
      .getByRole('img', { name: /^Saddle, 42\.40 mm onto 60\.30 mm at 60\.0°/ })
      .waitFor();
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('42.4');
    expect(await sheet().getByLabel('Paper', { exact: true }).inputValue()).toBe('letter');

    await typed('Tube', '3 in');
    await sheet().getByText('76.20 mm cannot be. Allowed: at most 60.30 mm').waitFor();
    expect(await sheet().getByRole('button', { name: 'Save PDF' }).isDisabled()).toBe(true);
    await typed('Tube', '1 3/4 in');
    await sheet()
      .getByRole('img', { name: /^Saddle, 44\.45 mm/ })
      .waitFor();
    const svg = await saved('Save SVG');
    expect(svg.name).toBe('saddle-template.svg');
    expect(svg.bytes.toString()).toMatch(/<title>Saddle, 44\.45 mm onto 60\.30 mm/);

    await runAction(page, 'wrap-around');
    await sheet().getByLabel('Cut', { exact: true }).selectOption('mitre');
    await typed('Joints', '1');
    await sheet()
      .getByText(/^Each cut stands 45\.0° from square/)
      .waitFor();
    await typed('Joints', '4');
    await sheet()
      .getByText(/^3 middle pieces: 40\.42 mm outside/)
      .waitFor();
    const pdf = await saved('Save PDF');
    expect(pdf.name).toBe('mitre-template.pdf');
    expect(pdf.bytes.subarray(0, 5).toString()).toBe('%PDF-');
    await sheet().waitFor({ state: 'hidden' });

    await page.reload();
    await page.getByRole('region', { name: 'Runners', exact: true }).waitFor();
    await runAction(page, 'wrap-around');
    expect(await sheet().getByLabel('Paper', { exact: true }).inputValue()).toBe('letter');
    await page.keyboard.press('Escape');
    expect(errors).toEqual([]);
  },
  LONG,
);
