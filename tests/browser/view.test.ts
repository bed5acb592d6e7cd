/**
 * The view's tools in a real browser: find and run an action by keys alone, measure two runners as the kernel does, hide and
 * isolate, take a picture that is a PNG of twice the view, and cut the view so that it shows something else.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { measureBetween, resolveHeader } from '../../geometry';
import { parseDesign } from '../../shared/design/parse';
import { type Bench, openBench, runAction, type Watched } from './page';

const EXAMPLES = join(import.meta.dirname, '../../public/examples');
const [first] = JSON.parse(readFileSync(join(EXAMPLES, 'index.json'), 'utf8')) as { file: string }[];
const design = parseDesign(readFileSync(join(EXAMPLES, first!.file), 'utf8'));

let bench: Bench;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  bench = await openBench();
  watched = await bench.newPage();
  page = watched.page;
  // Without the picker a file is a download, which a test can hold in its hands.
  await page.evaluate(() => Object.defineProperty(window, 'showSaveFilePicker', { value: undefined }));
  await page.locator('.viewport-label[data-kind="runner"]').first().waitFor({ state: 'attached' });
});
afterAll(() => bench?.close());

const list = () => page.getByRole('listbox', { name: 'Actions' });

const run = (words: string) => runAction(page, words);

const labels = () =>
  page.locator('.viewport-label[data-kind="runner"]').evaluateAll((all) => all.map((l) => l.textContent ?? ''));

async function picture(): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), run('save picture view')]);
  return readFileSync(await download.path());
}

it('finds an action by words, runs it by Enter, and greys what cannot be done, saying why', async () => {
  await page.keyboard.press('?');
  await list().waitFor();
  const undo = list().getByRole('option', { name: /^Undo/ }).first();
  expect(await undo.getAttribute('aria-disabled')).toBe('true');
  expect(await undo.textContent()).toContain('Nothing to undo');
  await page.keyboard.type('next runner');
  expect(await list().getByRole('option').count()).toBe(1);
  await page.keyboard.press('Enter');
  await list().waitFor({ state: 'detached' });
  const row = page.getByRole('region', { name: 'Runners', exact: true }).locator('tbody tr').first();
  // An action runs once the sheet has given the focus back, a moment after it is gone.
  await expect.poll(() => row.getAttribute('aria-selected')).toBe('true');
  await page.keyboard.press('Escape');
  await expect.poll(() => row.getAttribute('aria-selected')).toBe('false');
});

it('opens anew at once: the end of the list before does not close it', async () => {
  await page.keyboard.press('Control+k');
  await list().waitFor();
  // In one task, as keys come while the machine is busy: the browser tells of a closed dialog in a task of its own.
  const wasClosed = await page.evaluate(async () => {
    document.querySelector<HTMLElement>('dialog[open] [aria-label="Close"]')!.click();
    for (let i = 0; i < 100 && document.querySelector('dialog[open]'); i++) await Promise.resolve();
    const closed = !document.querySelector('dialog[open]');
    document.activeElement!.dispatchEvent(new KeyboardEvent('keydown', { key: 'k', ctrlKey: true, bubbles: true }));
    return closed;
  });
  expect(wasClosed).toBe(true);
  await list().waitFor();
  await new Promise((done) => setTimeout(done, 300));
  expect(await list().count()).toBe(1);
  await page.keyboard.press('Escape');
  await list().waitFor({ state: 'detached' });
});

it('measures two runners, chosen by name, as the kernel does', async () => {
  const [a, b] = design.runners.map((r) => r.id) as [string, string];
  await page.keyboard.press('m');
  await page.getByLabel('From', { exact: true }).selectOption(a);
  await page.getByLabel('To', { exact: true }).selectOption(b);
  const card = page.getByRole('region', { name: 'Measure' });
  await card.getByRole('button', { name: 'Measure', exact: true }).click();
  const answer = measureBetween(resolveHeader(design), { kind: 'runner', id: a }, { kind: 'runner', id: b });
  if ('missing' in answer) throw new Error(answer.missing);
  const said = await card.getByRole('listitem').first().textContent();
  expect(said).toContain(`Gap${answer.gap!.value.toFixed(2)} mm`);
  expect(await page.locator('.viewport-label', { hasText: `gap ${answer.gap!.value.toFixed(2)} mm` }).count()).toBe(1);
  await card.getByRole('button', { name: 'Clear all' }).click();
  await page.keyboard.press('m');
  await card.waitFor({ state: 'detached' });
});

it('hides, isolates and shows all', async () => {
  const ids = design.runners.map((r) => r.id);
  await page.keyboard.press('n');
  await page.keyboard.press('h');
  await page.getByText('1 hidden').waitFor();
  expect(await labels()).toEqual(ids.slice(1));
  await page.getByRole('button', { name: 'show all' }).click();
  expect(await labels()).toEqual(ids);
  await page.keyboard.press('n');
  await page.keyboard.press('i');
  await page.getByText(/\d+ hidden/).waitFor();
  expect(await labels()).toEqual(ids.slice(0, 1));
  await page.keyboard.press('Shift+H');
  expect(await labels()).toEqual(ids);
  await page.keyboard.press('Escape');
});

it('takes a picture of twice the view, and a cut changes it', async () => {
  const box = (await page.locator('.viewport').boundingBox())!;
  const whole = await picture();
  expect(whole.subarray(1, 4).toString('latin1')).toBe('PNG');
  // The header chunk of a PNG: width and height, four bytes each, from byte 16.
  expect(Math.abs(whole.readUInt32BE(16) - 2 * box.width)).toBeLessThanOrEqual(1);
  expect(Math.abs(whole.readUInt32BE(20) - 2 * box.height)).toBeLessThanOrEqual(1);
  expect((await picture()).equals(whole)).toBe(true);
  await page.keyboard.press('Shift+Y');
  await page.getByRole('region', { name: 'View cuts' }).waitFor();
  const place = page.getByRole('textbox', { name: /Cut square to Y/ });
  await place.fill('2*50');
  await place.press('Enter');
  expect(await place.inputValue()).toBe('100.0');
  expect((await picture()).equals(whole)).toBe(false);
  await run('undo all cuts');
  await page.getByRole('region', { name: 'View cuts' }).waitFor({ state: 'detached' });
  expect(watched.errors).toEqual([]);
});
