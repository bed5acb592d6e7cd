/**
 * The header's real parts in a browser: they are listed once they are made, go apart and together again, hide with their
 * owner, and a collector that is cut can be looked through.
 */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Bench, openBench, pictureOf, runAction, type Watched } from './page';

let bench: Bench;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  bench = await openBench();
  watched = await bench.newPage();
  page = watched.page;
  await page.evaluate(() => Object.defineProperty(window, 'showSaveFilePicker', { value: undefined }));
  await page.locator('.viewport-label[data-kind="runner"]').first().waitFor({ state: 'attached' });
  await page.getByRole('button', { name: 'Examples' }).click();
  const examples = page.getByRole('list', { name: 'Examples' });
  await examples.getByRole('button', { name: 'Road four, 4-2-1' }).click();
  await page.getByRole('tab', { name: /^Parts/ }).click();
});
afterAll(() => bench?.close());

const list = () => page.getByRole('region', { name: 'Parts', exact: true });
const rows = async () => (await list().locator('tbody th').allTextContents()).map((text) => text.trim());
const names = () =>
  page.locator('.viewport-label[data-kind="part"]').evaluateAll((all) => all.map((l) => l.textContent ?? ''));

const run = (words: string) => runAction(page, words);
const picture = () => pictureOf(page);

it('lists the parts by owner, with a mass for each and their sum', async () => {
  await list().getByRole('row', { name: /^Cone/ }).first().waitFor({ timeout: 60_000 });
  expect(await rows()).toEqual(
    expect.arrayContaining(['Tube r1', 'Tube s23', 'Stub 1', 'Cone', 'Outlet', 'Collector']),
  );
  const masses = await list()
    .locator('tbody tr:has(td.quiet:not(:empty)) data')
    .evaluateAll((all) => all.map((d) => Number((d as HTMLDataElement).value)));
  const sum = Number(await list().locator('tfoot data').getAttribute('value'));
  expect(masses.length).toBeGreaterThan(15);
  for (const mass of masses) expect(mass).toBeGreaterThan(0);
  expect(masses.reduce((a, b) => a + b)).toBeCloseTo(sum, 9);
});

it('takes the header apart, naming the parts, and puts it together as it was', async () => {
  await page.keyboard.press('p');
  await run('fit the header');
  const together = await picture();
  expect(await names()).toEqual([]);
  await page.keyboard.press('x');
  await page.getByRole('slider', { name: 'How far apart' }).waitFor();
  await expect.poll(names).toEqual(expect.arrayContaining(['Stub 1', 'Stub 2', 'Cone', 'Outlet', 'Joint']));
  expect((await picture()).equals(together)).toBe(false);
  await page.getByRole('slider', { name: 'How far apart' }).fill('40');
  await page.keyboard.press('x');
  await page.getByRole('slider', { name: 'How far apart' }).waitFor({ state: 'detached' });
  await expect.poll(names).toEqual([]);
  expect((await picture()).equals(together)).toBe(true);
});

it('hides the parts of a collector with it', async () => {
  await page.keyboard.press('x');
  await expect.poll(async () => (await names()).filter((name) => name === 'Joint').length).toBe(1);
  await list()
    .getByRole('row', { name: /^Collector / })
    .last()
    .click();
  await page.keyboard.press('h');
  await page.getByText('1 hidden').waitFor();
  await expect.poll(async () => (await names()).filter((name) => name === 'Joint').length).toBe(0);
  await page.getByRole('button', { name: 'show all' }).click();
  await page.keyboard.press('x');
});

it('shows a cut collector hollow: alone and from its end, one looks through it', async () => {
  const row = list()
    .getByRole('row', { name: /^Collector / })
    .last();
  await row.click();
  await page.keyboard.press('i');
  await page.keyboard.press('Escape');
  // Its axis runs along x within five degrees, from x = 450 to 560: what is left of it is the end of its outlet.
  await page.keyboard.press('Shift+X');
  const place = page.getByRole('textbox', { name: /Cut square to X/ });
  await place.fill('545');
  await place.press('Enter');
  await page.getByTitle('Show the other side of the cut square to X').click();
  await page.mouse.move(0, 0);
  await run('front view');
  const png = (await picture()).toString('base64');
  const seen = await page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height];
    const pen = canvas.getContext('2d')!;
    pen.drawImage(image, 0, 0);
    const { data: pixels } = pen.getImageData(0, 0, image.width, image.height);
    const isBare = (x: number, y: number) => {
      const at = 4 * (y * image.width + x);
      return pixels[at]! > 250 && pixels[at + 1]! > 250 && pixels[at + 2]! > 250;
    };
    // The ring, with the clamp's ears at its left: all that is drawn between the title and the scale.
    let [x0, x1, y0, y1] = [image.width, 0, image.height, 0];
    for (let y = Math.round(image.height * 0.12); y < image.height * 0.85; y++)
      for (let x = Math.round(image.width * 0.35); x < image.width * 0.65; x++)
        if (!isBare(x, y)) [x0, x1, y0, y1] = [Math.min(x0, x), Math.max(x1, x), Math.min(y0, y), Math.max(y1, y)];
    const [mx, my] = [Math.round(x1 - (y1 - y0) / 2), Math.round((y0 + y1) / 2)];
    let bare = 0;
    const reach = Math.round((y1 - y0) / 8);
    for (let y = -reach; y <= reach; y++) for (let x = -reach; x <= reach; x++) if (isBare(mx + x, my + y)) bare++;
    return { wide: x1 - x0, high: y1 - y0, bare: bare / (2 * reach + 1) ** 2 };
  }, png);
  expect(seen.wide).toBeGreaterThan(50);
  expect(seen.high).toBeGreaterThan(50);
  expect(seen.bare).toBe(1);
  expect(watched.errors).toEqual([]);
});

it('tells what the tube itself is, and marks a runner whose tube cannot be made; parts count once', async () => {
  const text = readFileSync('public/examples/four-4-1.evenrun.json', 'utf8');
  const design = JSON.parse(text);
  const open = async (name: string, lengths: readonly number[]) => {
    const ports = design.ports.map((port: object, i: number) => ({
      ...port,
      transition: { length: lengths[i] ?? 12 },
    }));
    await page
      .locator('input[type="file"]')
      .first()
      .setInputFiles({
        name: `${name}.evenrun.json`,
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify({ ...design, title: name, ports })),
      });
    await page.getByRole('tab', { name: /^Numbers/ }).click();
  };
  const note = page.getByRole('region', { name: 'Bend table', exact: true });
  await open('led', []);
  await note.getByText(/plus 12\.00 mm transition/).waitFor();
  expect(await page.getByText('Its tube cannot be made').count()).toBe(0);
  // Longer than its first straight by far: the transition and the tube are missing.
  await open('led too far', [400]);
  await note.getByText('Its tube cannot be made').waitFor();
  const first = page.getByRole('region', { name: 'Runners', exact: true }).locator('tbody tr').first();
  expect(await first.getByText('Its tube cannot be made').count()).toBe(1);
  await page.getByTitle('2 cannot be made').waitFor({ timeout: 60_000 });
  await note.getByRole('button', { name: 'Parts' }).click();
  await list().getByText('2 parts cannot be made').waitFor();
  expect(watched.errors).toEqual([]);
});
