/** What the header gains, in a real browser: opened by a key, followed by workers, read, stopped, edited under, refused with the way to the field; on a phone too. */
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Design, Engine } from '../../shared/design/types';
import { designWith } from '../app/designs';
import { type Bench, openBench, runAction, withoutPicture } from './page';

const LONG = 110_000;

/** A download takes the place of the system's own dialog. */
const prepared = async (context: BrowserContext): Promise<void> => {
  await withoutPicture(context);
  await context.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
};

/** One cylinder at high speeds on a short pipe: the quickest there is to follow. */
const SINGLE: Engine = { cylinders: 1, firingOrder: [1], bore: 80, stroke: 70, rpm: [6000, 7000] };
const single = (engine: Engine = SINGLE): Design => ({
  ...designWith([
    [0, 0, 0],
    [0, 200, 0],
    [100, 320, -300],
  ]),
  title: 'Single',
  engine,
  exhaust: { tailpipe: { length: 300, bore: 46 } },
});

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
}, LONG);
afterAll(() => bench?.close());

const gains = (page: Page) => page.getByRole('dialog', { name: 'What the header gains' });
const face = (page: Page, name: string) =>
  gains(page).getByRole('navigation', { name: 'Face' }).getByRole('button', { name, exact: true }).click();

async function opened(design: Design, options = {}): Promise<{ page: Page; errors: string[] }> {
  const { page, errors } = await bench.newPage(options, prepared);
  await page.locator('.verdict h2').first().waitFor({ state: 'attached' });
  const buffer = Buffer.from(JSON.stringify(design));
  await page
    .getByLabel('Design file')
    .setInputFiles({ name: 'single.evenrun.json', mimeType: 'application/json', buffer });
  await page.getByRole('heading', { level: 1 }).getByText('Single').waitFor({ state: 'attached' });
  return { page, errors };
}

describe('on a laptop', () => {
  let page: Page;
  let errors: string[];
  beforeAll(async () => {
    ({ page, errors } = await opened(single()));
  }, LONG);

  it('it is opened by a key and followed: numbers come, the two runs are held beside each other', {
    timeout: LONG,
  }, async () => {
    await page.keyboard.press('Shift+G');
    await gains(page).waitFor();
    const table = gains(page).getByRole('table', { name: 'This header, speed by speed' });
    await table.locator('td.number').first().waitFor({ timeout: LONG });
    const torque = Number(await table.locator('td.number').first().textContent());
    // Of 352 cm³ without a blower: some 20 to 40 N m.
    expect(torque).toBeGreaterThan(10);
    expect(torque).toBeLessThan(50);
    await gains(page)
      .getByText(/gains (most|nowhere)|no difference/)
      .waitFor({ timeout: LONG });
    const overfull = await page.evaluate(() =>
      ['.gain-page', '.gain-top', '.gain-curve', '.gain-picture'].filter((name) => {
        const { scrollHeight, clientHeight, scrollWidth, clientWidth } = document.querySelector(name)!;
        return scrollHeight > clientHeight + 1 || scrollWidth > clientWidth + 1;
      }),
    );
    expect(overfull).toEqual([]);
  });

  it('says that it is not calibrated, and what nobody gave', async () => {
    await gains(page)
      .getByRole('button', { name: /What to trust/ })
      .click();
    const trust = gains(page).getByRole('complementary', { name: 'What to trust' });
    expect(await trust.textContent()).toMatch(/Not calibrated/);
    expect(await trust.getByRole('rowheader', { name: 'Rod' }).count()).toBe(1);
    await trust.getByRole('button', { name: 'Close what to trust' }).click();
  });

  it('a speed is looked at closely by keys alone', { timeout: LONG }, async () => {
    const plot = gains(page).getByRole('application', { name: /over the engine’s speed|over the engine's speed/ });
    await plot.focus();
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    const speed = gains(page).getByRole('combobox', { name: 'Speed', exact: true });
    expect(await speed.inputValue()).toBe('7000');
    await page.locator('.gain-detail-face').waitFor({ timeout: LONG });
    expect(await page.locator('.gain-detail-face').textContent()).toContain('This header');
  });

  it('tables and the picture are taken away', { timeout: LONG }, async () => {
    await face(page, 'Curves');
    const saved = async (name: string) => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        gains(page).getByRole('button', { name, exact: true }).click(),
      ]);
      return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
    };
    const table = await saved('Save CSV');
    expect(table.name).toBe('single curves.csv');
    expect(table.bytes.toString()).toMatch(/^run,rpm,torque_nm,power_kw,.*\r?\nThis header,/);
    const all = JSON.parse((await saved('Save JSON')).bytes.toString());
    expect(all.runs[0].engine.bore).toBeCloseTo(0.08, 9);
    const picture = await saved('Save picture');
    expect([...picture.bytes.subarray(1, 4)]).toEqual([...Buffer.from('PNG')]);
    expect(picture.bytes.length).toBeGreaterThan(15_000);
    for (const [name, file, what] of [
      ['At the valves', 'single valves 7000 rpm.png', 'Pressures at the valves'],
      ['In the pipes', 'single waves 7000 rpm.png', 'Waves in the pipes'],
    ] as const) {
      await face(page, name);
      await gains(page).getByRole('region', { name: what }).waitFor({ timeout: LONG });
      const plot = await saved('Save picture');
      expect(plot.name).toBe(file);
      expect([...plot.bytes.subarray(1, 4)]).toEqual([...Buffer.from('PNG')]);
      expect(plot.bytes.length).toBeGreaterThan(15_000);
    }
    await face(page, 'Curves');
  });

  it('what is assumed can be typed over, as one step, and the curves follow', { timeout: LONG }, async () => {
    await face(page, 'Engine');
    const rod = gains(page).getByRole('textbox', { name: 'Rod', exact: true });
    expect(await rod.inputValue()).toBe('');
    expect(Number(await rod.getAttribute('placeholder'))).toBeGreaterThan(100);
    await rod.fill('130');
    await page.keyboard.press('Enter');
    expect(await page.locator('[data-path="engine/rod"] .gain-taken').count()).toBe(0);
    await face(page, 'Curves');
    await gains(page).getByRole('button', { name: 'Stop', exact: true }).click();
    await gains(page).getByRole('button', { name: 'Go on', exact: true }).waitFor();
    await page.keyboard.press('Escape');
    await gains(page).waitFor({ state: 'hidden' });
    await runAction(page, 'undo');
    await runAction(page, 'what the header gains');
    await face(page, 'Engine');
    expect(await gains(page).getByRole('textbox', { name: 'Rod', exact: true }).inputValue()).toBe('');
  });

  it('a measured curve is pasted, refused by its line, and taken', { timeout: LONG }, async () => {
    const text = gains(page).getByLabel('A line for each speed: rpm, torque');
    await text.fill('6000 28\n6500 x\n7000 27');
    await gains(page).getByRole('button', { name: 'Take this curve' }).click();
    await gains(page)
      .getByText(/Line 2, “6500 x”/)
      .waitFor();
    // Speeds nearer than these tell flow and friction no better than one.
    await text.fill('5000 28\n6000 27.5\n7000 27');
    await gains(page).getByRole('button', { name: 'Take this curve' }).click();
    await gains(page).getByRole('button', { name: 'Take it away' }).first().waitFor();
    expect(errors).toEqual([]);
  });
});

it('an engine without a bore says so, with the way to the field', { timeout: LONG }, async () => {
  const { bore: _, ...without } = SINGLE;
  const { page } = await opened(single(without));
  await page.keyboard.press('Shift+G');
  await gains(page)
    .getByText(/Bore.*not given/)
    .first()
    .waitFor();
  await gains(page).getByRole('button', { name: 'Go to the field' }).first().click();
  await page.waitForFunction(() => document.activeElement?.closest('[data-path="engine/bore"]'));
  await page.keyboard.type('80');
  await page.keyboard.press('Enter');
  await face(page, 'Curves');
  await gains(page).getByRole('table', { name: 'This header, speed by speed' }).waitFor();
  await page.context().close();
});

it('on a phone the faces lie under the thumb and nothing is wider than the screen', { timeout: LONG }, async () => {
  const { page } = await opened(single(), { viewport: { width: 390, height: 844 }, hasTouch: true });
  await page.keyboard.press('Shift+G');
  await gains(page).getByRole('table', { name: 'This header, speed by speed' }).waitFor();
  for (const name of ['Curves', 'At the valves', 'Sizes', 'Engine']) {
    await face(page, name);
    const wide = await page.evaluate(() => {
      const width = document.documentElement.clientWidth;
      return [...document.querySelectorAll('.gain-page, .gain-top, .gain-face, .gain-face > *')]
        .filter((e) => e.getBoundingClientRect().right > width + 1)
        .map((e) => e.className);
    });
    expect(wide, name).toEqual([]);
  }
  const box = await gains(page).getByRole('navigation', { name: 'Face' }).boundingBox();
  expect(box!.y + box!.height).toBeGreaterThan(840);
  await page.context().close();
});
