/** The page of pressure waves in a real browser: opened by keys, an example followed, read, ended early, refused, saved, on a phone too. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, openBench, runAction, withoutPicture } from './page';

const LONG = 90_000;
const TUBE = join(import.meta.dirname, '../../public/examples/rigs/shock-tube.rig.json');

let bench: Bench;

/** A download takes the place of the system's own dialog. */
const prepared = async (context: BrowserContext): Promise<void> => {
  await withoutPicture(context);
  await context.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
};

beforeAll(async () => {
  bench = await openBench();
}, LONG);
afterAll(() => bench?.close());

const waves = (page: Page) => page.getByRole('dialog', { name: 'Pressure waves in pipes' });
const canvas = (page: Page) => waves(page).getByRole('application');

async function opened(options = {}): Promise<{ page: Page; errors: string[] }> {
  const { page, errors } = await bench.newPage(options, prepared);
  await page.locator('.verdict h2').first().waitFor({ state: 'attached' });
  await runAction(page, 'pressure waves');
  await waves(page).getByRole('list', { name: 'Example rigs' }).waitFor();
  return { page, errors };
}

const file = (change: (rig: Record<string, unknown>) => void) => {
  const rig = JSON.parse(readFileSync(TUBE, 'utf8')) as Record<string, unknown>;
  change(rig);
  return { name: 'mine.rig.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(rig)) };
};

const whole = (page: Page) => waves(page).getByRole('button', { name: 'Run again' }).waitFor();

/** How many different colours the picture has, in the part where pipes are drawn. */
const coloursIn = (page: Page): Promise<number> =>
  page.locator('.waves-canvas canvas').evaluate((element) => {
    const { width, height } = element as HTMLCanvasElement;
    const { data } = (element as HTMLCanvasElement).getContext('2d')!.getImageData(60, 34, width - 80, height - 150);
    return new Set(new Uint32Array(data.buffer)).size;
  });

const readout = async (page: Page): Promise<string> => (await page.locator('#waves-readout').textContent())!;
const numberIn = (text: string, name: string): number =>
  Number(new RegExp(`${name} ([−+]?[\\d.]+)`).exec(text.replaceAll(/\s+/g, ' '))![1]!.replace('−', '-'));

describe('on a laptop', () => {
  let page: Page;
  let errors: string[];
  beforeAll(async () => {
    ({ page, errors } = await opened());
  }, LONG);

  it('an example is followed by keys alone; its picture has the waves in it, nothing scrolls', {
    timeout: LONG,
  }, async () => {
    await waves(page)
      .getByRole('button', { name: /^Shock tube/ })
      .focus();
    await page.keyboard.press('Enter');
    await whole(page);
    await canvas(page).waitFor();
    expect(await coloursIn(page)).toBeGreaterThan(100);
    const pressed = await page.evaluate(() =>
      ['.waves-page', '.waves-body', '.waves-picture', '.waves-curves'].flatMap((name) => {
        const { scrollHeight, clientHeight, scrollWidth, clientWidth } = document.querySelector(name)!;
        return scrollHeight > clientHeight + 1 || scrollWidth > clientWidth + 1 ? [name] : [];
      }),
    );
    expect(pressed).toEqual([]);
    expect(await waves(page).getByRole('region', { name: 'Account' }).textContent()).toMatch(/Mass drift\s*\S+/);
  });

  it('pointer and arrow keys read it: air at rest before the shock, the same place told the same way', async () => {
    const rig = JSON.parse(readFileSync(TUBE, 'utf8')) as {
      pipes: { length: number; cells: number; initial: { pressure: number }[] }[];
      duration: number;
    };
    const { length, cells, initial } = rig.pipes[0]!;
    await canvas(page).focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Home');
    for (let k = 0; k < 60; k++) await page.keyboard.press('PageDown');
    const first = await readout(page);
    expect(numberIn(first, 'x')).toBeCloseTo(length / cells / 2, 2);
    expect(numberIn(first, 'time')).toBe(0);
    expect(numberIn(first, 'pressure')).toBeCloseTo(initial[0]!.pressure / 1000, 1);
    expect(numberIn(first, 'velocity')).toBe(0);
    await page.keyboard.press('End');
    expect(numberIn(await readout(page), 'pressure')).toBeCloseTo(initial.at(-1)!.pressure / 1000, 1);
    expect(await page.locator('#waves-readout').getAttribute('aria-live')).toBe('polite');

    const box = (await canvas(page).boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    const middle = await readout(page);
    expect(numberIn(middle, 'x')).toBeGreaterThan(0.3 * length);
    expect(numberIn(middle, 'x')).toBeLessThan(0.7 * length);
    expect(numberIn(middle, 'time')).toBeGreaterThan(0.1 * rig.duration * 1000);
    expect(await page.locator('#waves-readout').getAttribute('aria-live')).toBe('off');
  });

  it('the same colours mean velocity or temperature when asked', async () => {
    const picture = () => page.locator('.waves-canvas canvas').evaluate((c) => (c as HTMLCanvasElement).toDataURL());
    const pressure = await picture();
    await waves(page).getByRole('button', { name: 'Velocity' }).click();
    expect(await picture()).not.toBe(pressure);
    await waves(page)
      .getByRole('img', { name: /^Velocity of/ })
      .waitFor();
    await waves(page).getByRole('button', { name: 'Pressure', exact: true }).click();
    expect(await picture()).toBe(pressure);
  });

  it('tables and the picture are taken away', { timeout: LONG }, async () => {
    const saved = async (name: string) => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        waves(page).getByRole('button', { name, exact: true }).click(),
      ]);
      return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
    };
    const table = await saved('Save CSV');
    expect(table.name).toBe('Shock tube.csv');
    const [header, ...rows] = table.bytes.toString().trim().split('\n');
    expect(header).toMatch(/^time,\w+@[\d.]+\.pressure,/);
    expect(rows.length).toBeGreaterThan(10);
    const profile = await saved('Save last instant');
    expect(profile.name).toBe('Shock tube.profile.csv');
    expect(profile.bytes.toString()).toMatch(/^pipe,x,pressure,velocity,temperature,density\n/);
    const picture = await saved('Save picture');
    expect(picture.name).toBe('Shock tube pressure.png');
    expect([...picture.bytes.subarray(1, 4)]).toEqual([...Buffer.from('PNG')]);
    expect(picture.bytes.length).toBeGreaterThan(20_000);
  });

  it('a rig that cannot be says every place, and the last picture stays', async () => {
    const before = await coloursIn(page);
    const bad = file((rig) => {
      rig.courant = 1.4;
      rig.duration = -1;
    });
    await waves(page).getByLabel('Rig file').setInputFiles(bad);
    await waves(page).getByText('mine.rig.json cannot be run: 2 places to mend.').waitFor();
    const cells = await waves(page).getByRole('cell').allInnerTexts();
    expect(cells).toContain('courant');
    expect(cells).toContain('1.4');
    expect(cells).toContain('duration');
    await waves(page).getByText('The picture below is still that of Shock tube.').waitFor();
    expect(await coloursIn(page)).toBeGreaterThan(before / 2);
    await waves(page)
      .getByLabel('Rig file')
      .setInputFiles({ name: 'poem.json', mimeType: 'application/json', buffer: Buffer.from('not a rig') });
    await waves(page).getByText('poem.json cannot be run: one place to mend.').waitFor();
  });

  it('a dropped file is a rig here, and no design', async () => {
    const text = readFileSync(TUBE, 'utf8');
    const title = await page.locator('.title h1').textContent();
    const dropped = await page.evaluateHandle((content) => {
      const data = new DataTransfer();
      data.items.add(new File([content], 'dropped.rig.json', { type: 'application/json' }));
      return data;
    }, text);
    await page.locator('.waves-body').dispatchEvent('dragover', { dataTransfer: dropped });
    await waves(page).getByText('Drop a rig here').waitFor();
    await page.locator('.waves-body').dispatchEvent('drop', { dataTransfer: dropped });
    await waves(page).getByRole('option', { name: 'dropped.rig.json' }).waitFor({ state: 'attached' });
    await whole(page);
    expect(await waves(page).getByText('Drop a rig here').count()).toBe(0);
    expect(await page.locator('.title h1').textContent()).toBe(title);
    expect(await page.locator('.notice').count()).toBe(0);
  });

  it('the probes’ curves come back after a rig that has none, and after one without samples', {
    timeout: LONG,
  }, async () => {
    const curves = waves(page).getByRole('img', { name: /^Pressure of/ });
    const follow = async (change: object) => {
      const changed = file((rig) => Object.assign(rig, change));
      await waves(page).getByLabel('Rig file').setInputFiles(changed);
      await whole(page);
    };
    for (const [change, words] of [
      [{ probes: [] }, 'This rig names no probes.'],
      [{ sample: 0 }, 'This rig takes no samples'],
    ] as const) {
      await follow(change);
      await waves(page).getByText(words).waitFor();
      expect(await curves.count()).toBe(0);
      await follow({});
      await curves.waitFor();
      expect(await curves.locator('path').count()).toBeGreaterThan(0);
    }
  });

  it('a long run is ended by hand: it says until when, and what there is stays', { timeout: LONG }, async () => {
    const long = file((rig) => {
      rig.duration = 1;
      rig.sample = 1e-4;
    });
    await waves(page).getByLabel('Rig file').setInputFiles(long);
    const stop = waves(page).getByRole('button', { name: 'Stop here' });
    await stop.waitFor();
    await page.waitForFunction(() => (document.querySelector('progress')?.value ?? 0) > 0);
    await stop.click();
    const words = waves(page).getByText(/^Ended at \d[\d.]* of 1000 ms; what there is until then stays\.$/);
    await words.waitFor();
    expect(numberIn((await words.textContent())!, 'Ended at')).toBeGreaterThan(0);
    await canvas(page).waitFor();
    expect(await coloursIn(page)).toBeGreaterThan(20);
  });

  it('a bad file ends no run that is under way, and does not take its place in "Run again"', {
    timeout: LONG,
  }, async () => {
    const long = file((rig) => Object.assign(rig, { duration: 1, sample: 1e-4 }));
    await waves(page)
      .getByLabel('Rig file')
      .setInputFiles({ ...long, name: 'long.rig.json' });
    await page.waitForFunction(() => (document.querySelector('progress')?.value ?? 0) > 0);
    await waves(page)
      .getByLabel('Rig file')
      .setInputFiles(file((rig) => Object.assign(rig, { courant: 2 })));
    await waves(page).getByText('mine.rig.json cannot be run: one place to mend.').waitFor();
    await waves(page).getByText('long.rig.json goes on.').waitFor();
    const reached = await page.evaluate(() => document.querySelector('progress')!.value);
    await page.waitForFunction((was) => document.querySelector('progress')!.value > was, reached);
    await waves(page).getByRole('button', { name: 'Stop here' }).click();
    await whole(page);
    expect(await waves(page).getByRole('option', { name: 'long.rig.json' }).count()).toBe(1);
    await waves(page).getByText('The picture below is still that of long.rig.json.').waitFor();
    // By keys, whose place is kept.
    const focused = () => page.evaluate(() => document.activeElement?.textContent);
    await waves(page).getByRole('button', { name: 'Run again' }).focus();
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => (document.querySelector('progress')?.value ?? 0) > 0);
    expect(await waves(page).getByText('cannot be run').count()).toBe(0);
    expect(await focused()).toBe('Stop here');
    await page.keyboard.press('Enter');
    await whole(page);
    expect(await focused()).toBe('Run again');
  });

  it('Escape closes it, and opened again it is as it was left', async () => {
    await page.keyboard.press('Escape');
    await waves(page).waitFor({ state: 'hidden' });
    await runAction(page, 'pressure waves');
    await waves(page)
      .getByText(/^Ended at/)
      .waitFor();
    expect(errors).toEqual([]);
  });
});

it(
  'a phone shows one face at a time, under the thumb',
  async () => {
    const { page, errors } = await opened({ viewport: { width: 390, height: 844 }, hasTouch: true });
    await waves(page)
      .getByRole('button', { name: /^Four into one/ })
      .tap();
    await whole(page);
    const faces = waves(page).getByRole('navigation', { name: 'Face' });
    await canvas(page).waitFor();
    expect(await waves(page).getByRole('region', { name: 'Account' }).isVisible()).toBe(false);
    const box = (await page.locator('.waves-frame').boundingBox())!;
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 3);
    expect(await readout(page)).toMatch(/pressure\s+[\d.]+\s+kPa/);
    // The picture is moved sideways under its axis of time and its legend.
    const left = async (name: string) => (await page.locator(name).boundingBox())!.x;
    const [axis, drawn] = [await left('.waves-fixed'), await left('.waves-canvas')];
    await page.locator('.waves-frame').evaluate((frame) => frame.scrollBy(60, 0));
    expect(await left('.waves-canvas')).toBeCloseTo(drawn - 60, 0);
    expect(await left('.waves-fixed')).toBeCloseTo(axis, 0);
    await faces.getByRole('button', { name: 'Probes' }).tap();
    await waves(page)
      .getByRole('img', { name: /^Pressure of/ })
      .waitFor();
    expect(await canvas(page).isVisible()).toBe(false);
    await faces.getByRole('button', { name: 'Account' }).tap();
    await waves(page).getByText('Mass drift').waitFor();
    for (const button of await waves(page).getByRole('button').all())
      if (await button.isVisible()) expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    expect(errors).toEqual([]);
  },
  LONG,
);
