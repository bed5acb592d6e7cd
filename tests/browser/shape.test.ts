/**
 * Shaping by hand in a real browser: a bend is dragged, let go with Escape, moved by a typed value, added and removed, and
 * every step taken back. Numbers are read from the page's own table, so that what is tested is what is seen.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, openBench, type Watched } from './page';

let bench: Bench;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  bench = await openBench();
  watched = await bench.newPage();
  page = watched.page;
  // Without the paper look each picture takes a software renderer a fraction of the time; nothing here is about the look.
  await page.goto(`${bench.url}?plain`);
  await page.locator('.viewport canvas').waitFor();
  await page.waitForFunction(
    () => document.querySelector('[aria-label="Problems"]')?.getAttribute('aria-busy') === 'false',
  );
});
afterAll(() => bench?.close());

/** The bend rows of the runner whose table is up, as shown. */
const table = () =>
  page
    .getByRole('region', { name: 'Bend table', exact: true })
    .locator('tbody tr')
    .evaluateAll((rows) =>
      rows.map((r) => [...r.querySelectorAll('data')].map((d) => d.getAttribute('value')).join(' ')),
    );
const undo = () => page.getByRole('button', { name: /^Undo/ }).first();
const changed = (before: string[]) => expect.poll(table, { timeout: 20_000 }).not.toEqual(before);
const is = (before: string[]) => expect.poll(table, { timeout: 20_000 }).toEqual(before);

/** A bend or a straight on the rack. */
const piece = (name: RegExp) => page.getByRole('region', { name: /^Rack/ }).getByRole('button', { name });

/** Picks the second bend of the first runner by keys, so that its handles are there. */
async function pickBend(): Promise<{ x: number; y: number }> {
  await page.keyboard.press('Escape');
  await page.locator('.viewport').focus();
  await page.keyboard.press('b');
  await page.keyboard.press('b');
  const handle = page.locator('[data-handle^="bend"]').nth(1);
  await handle.waitFor();
  const box = (await handle.boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function drag(from: { x: number; y: number }, dx: number, dy: number): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + dx / 2, from.y + dy / 2);
  await page.mouse.move(from.x + dx, from.y + dy);
}

describe('shaping by hand', () => {
  it('drags a bend as one step, and undo brings the same numbers back', async () => {
    const at = await pickBend();
    const before = await table();
    expect(before.length).toBeGreaterThan(2);
    await drag(at, 24, 12);
    await page.locator('.hand-tag .size').waitFor();
    await page.mouse.up();
    await changed(before);
    await undo().click();
    await is(before);
    expect(await undo().isDisabled()).toBe(true);
  });

  it('leaves no trace of a drag that Escape ends', async () => {
    const at = await pickBend();
    const before = await table();
    await drag(at, -20, 18);
    await changed(before);
    await page.keyboard.press('Escape');
    await is(before);
    await page.mouse.up();
    expect(await undo().isDisabled()).toBe(true);
  });

  it('takes a typed value while dragging, and says what it cannot read', async () => {
    const at = await pickBend();
    const before = await table();
    await drag(at, 16, 8);
    await page.keyboard.type('2');
    const field = page.getByLabel('Distance');
    await field.fill('2..');
    await page.locator('.hand-tag [role="alert"]').waitFor();
    await field.fill('2*1.5');
    await page.locator('.hand-tag [role="alert"]').waitFor({ state: 'detached' });
    await page.keyboard.press('Enter');
    await page.locator('.hand-entry').waitFor({ state: 'detached' });
    await page.mouse.up();
    await changed(before);
    await undo().click();
    await is(before);
  });

  it('nudges by arrow keys, a burst being one step', async () => {
    await pickBend();
    const before = await table();
    for (let k = 0; k < 3; k++) await page.keyboard.press('ArrowUp');
    await changed(before);
    await expect.poll(() => undo().isEnabled(), { timeout: 20_000 }).toBe(true);
    await undo().click();
    await is(before);
    expect(await undo().isDisabled()).toBe(true);
  });

  it('removes a bend and adds one, each as one step', async () => {
    await pickBend();
    const before = await table();
    await page.keyboard.press('Delete');
    await expect.poll(async () => (await table()).length, { timeout: 20_000 }).toBe(before.length - 1);
    await undo().click();
    await is(before);
    // The first runner has all the bends its tooling allows: nothing is added, and the reason is told where actions are.
    await piece(/^r1 straight 2:/).click();
    await page.keyboard.press('Insert');
    await is(before);
    expect(await undo().isDisabled()).toBe(true);
    await piece(/^r2 straight 2:/).click();
    await expect.poll(table).not.toEqual(before);
    const second = await table();
    await page.keyboard.press('Insert');
    await expect.poll(async () => (await table()).length, { timeout: 20_000 }).toBe(second.length + 1);
    await undo().click();
    await is(second);
  });

  it('did all of this without an error on the console', () => {
    expect(watched.errors).toEqual([]);
    expect(watched.strays).toEqual([]);
  });
});
