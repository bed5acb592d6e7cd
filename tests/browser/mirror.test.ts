/** A second bank in a real browser, by keys alone: a four is drawn, mirrored from the list of actions, and taken back whole. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, openBench, runAction, withoutPicture } from './page';

const LONG = 60_000;

let bench: Bench;
let page: Page;
let errors: string[];

beforeAll(async () => {
  bench = await openBench();
  ({ page, errors } = await bench.newPage({}, withoutPicture));
  await page.getByRole('region', { name: 'Runners', exact: true }).waitFor();
}, LONG);
afterAll(() => bench?.close());

const sheet = () => page.getByRole('dialog', { name: 'Mirror a bank' });
const onRack = () => page.locator('.rack-name');

async function open(): Promise<void> {
  await runAction(page, 'mirror');
  await sheet().waitFor();
}

describe('mirror a bank', () => {
  it('by keys: refused in place, mended, done, and taken back in one step', async () => {
    await page.getByRole('button', { name: 'New…' }).click();
    await page.getByRole('button', { name: 'Make the header' }).click();
    await page.getByRole('dialog', { name: 'New header' }).waitFor({ state: 'hidden', timeout: LONG });
    await page.getByRole('heading', { level: 1, name: 'Four', exact: true }).waitFor();
    await expect.poll(() => onRack().count(), { timeout: LONG }).toBe(4);

    // Given up: no trace.
    await open();
    await page.keyboard.press('Escape');
    await sheet().waitFor({ state: 'hidden' });
    await page.getByRole('button', { name: 'Undo', exact: true }).and(page.locator(':disabled')).waitFor();

    await open();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Mirror');
    const apart = sheet().getByLabel('Bank to bank', { exact: true });
    await apart.focus();
    await page.keyboard.type('0');
    await page.keyboard.press('Tab');
    await sheet()
      .getByText(/^Too near: /)
      .waitFor();
    await sheet().getByRole('button', { name: 'Mirror', exact: true }).press('Enter');
    // What is wrong has the focus, and the sheet is still there.
    await sheet().locator('input:focus').waitFor();
    await apart.focus();
    await page.keyboard.type('2*9+1 5/8 in');
    await page.keyboard.press('Escape');
    expect(await apart.inputValue()).toBe('0');
    await apart.focus();
    await page.keyboard.type('2*240 + 1 5/8 in');
    await page.keyboard.press('Enter');
    expect(await apart.inputValue()).toBe('521.275');
    await sheet()
      .getByText(/^Adds 4 ports, 4 runners, .* 8 cylinders, in two banks/)
      .waitFor();
    await sheet().getByRole('button', { name: 'Mirror', exact: true }).press('Enter');
    await sheet().waitFor({ state: 'hidden' });

    await page.getByText(/^The engine has 8 cylinders now, in two banks/).waitFor();
    await expect.poll(() => onRack().count(), { timeout: LONG }).toBe(8);
    await page.getByRole('button', { name: 'Undo: Mirror the bank' }).click({ timeout: LONG });
    await expect.poll(() => onRack().count(), { timeout: LONG }).toBe(4);
    expect(errors).toEqual([]);
  });
});
