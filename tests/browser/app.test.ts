/**
 * The main job in a real browser: open an example, see equal lengths, take the shop folder away and rebuild the same
 * centerlines from its tables; balance an uneven design as one step; refuse a bad file without losing the good one.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseDesign } from '../../shared/design/parse';
import type { Design } from '../../shared/design/types';
import { writeDesign } from '../../shared/design/write';
import { rebuildFromTables } from '../../src/shop/rebuild';
import { type Bench, openBench, type Watched } from './page';

/** What the kernel promises of a group's lengths after balancing, mm. */
const EQUAL = 0.001;
/** Tables carry at least five decimals of a mm and of a degree; over a metre of tube that is far inside this, mm. */
const SAME_PLACE = 0.01;

const EXAMPLES = join(import.meta.dirname, '../../public/examples');
const examples = JSON.parse(readFileSync(join(EXAMPLES, 'index.json'), 'utf8')) as { file: string; title: string }[];
const exampleText = (file: string) => readFileSync(join(EXAMPLES, file), 'utf8');

let bench: Bench;
let held: Watched[] = [];

beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench?.close());

async function open(options?: Parameters<Bench['newPage']>[0]): Promise<Page> {
  const watched = await bench.newPage(options);
  held.push(watched);
  await verdict(watched.page);
  return watched.page;
}

/** Waits until the rules have been measured. */
async function verdict(page: Page): Promise<string> {
  const panel = page.getByRole('region', { name: 'Problems', exact: true });
  await panel.getByRole('heading').waitFor();
  await page.waitForFunction(
    () => document.querySelector('[aria-label="Problems"]')?.getAttribute('aria-busy') === 'false',
  );
  return (await panel.getByRole('heading').textContent()) ?? '';
}

/** Every runner's length as the page's own table gives it, mm. */
async function lengths(page: Page): Promise<Map<string, number>> {
  const rows = await page.getByRole('region', { name: 'Runners', exact: true }).locator('tbody tr').all();
  const read = rows.map(async (row) => {
    const id = ((await row.getByRole('rowheader').textContent()) ?? '').trim();
    const value = await row.locator('data').first().getAttribute('value');
    return [id, Number(value)] as const;
  });
  return new Map(await Promise.all(read));
}

async function hand(page: Page, name: string, text: string): Promise<void> {
  await page
    .getByLabel('Design file, with its meshes')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

function spreads(design: Design, measured: ReadonlyMap<string, number>): number[] {
  return Object.keys(design.groups).map((id) => {
    const own = design.runners.filter((r) => r.group === id).map((r) => measured.get(r.id)!);
    return Math.max(...own) - Math.min(...own);
  });
}

/** The first example with one runner pulled 9 mm longer along its port's direction. */
function uneven(): Design {
  const design = parseDesign(exampleText(examples[0]!.file));
  const [runner, ...rest] = design.runners;
  const [start, first, ...others] = runner!.points!;
  const leg = Math.hypot(...first!.map((c, i) => c - start![i]!));
  const pulled = first!.map((c, i) => c + ((c - start![i]!) / leg) * 9) as unknown as typeof first;
  return { ...design, title: 'Pulled', runners: [{ ...runner!, points: [start!, pulled!, ...others] }, ...rest] };
}

describe('the app', () => {
  it.each(examples)('opens "$title" with equal lengths and every rule holding', async ({ file, title }) => {
    const page = await open();
    await page.getByRole('button', { name: 'Examples' }).click();
    await page.getByRole('list', { name: 'Examples' }).getByRole('button', { name: title }).click();
    await page.getByRole('heading', { level: 1, name: parseDesign(exampleText(file)).title! }).waitFor();
    expect(await verdict(page)).toContain('Every rule holds');
    const measured = await lengths(page);
    const design = parseDesign(exampleText(file));
    expect([...measured.keys()]).toEqual(design.runners.map((r) => r.id));
    for (const length of measured.values()) expect(length).toBeGreaterThan(100);
    for (const spread of spreads(design, measured)) expect(spread).toBeLessThan(EQUAL);
    await page.context().close();
  });

  it('hands over a shop folder whose tables rebuild the same centerlines', async () => {
    const page = await open();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Shop folder' }).click(),
    ]);
    const files = unzipSync(new Uint8Array(readFileSync(await download.path())));
    const find = (name: string) => strFromU8(files[Object.keys(files).find((path) => path.endsWith(`/${name}`))!]!);
    const design = parseDesign(exampleText(examples[0]!.file));
    const rebuilt = rebuildFromTables(design, find('bend-schedule.csv'), find('start-clocking.csv'));
    expect(rebuilt.map((r) => r.id).sort()).toEqual(design.runners.map((r) => r.id).sort());
    for (const { id, deviation } of rebuilt) expect(deviation, id).toBeLessThan(SAME_PLACE);
    const measured = await lengths(page);
    for (const { id, line } of rebuilt) {
      const runner = design.runners.find((r) => r.id === id)!;
      const port = 'port' in runner.from ? runner.from.port : null;
      const inHead = design.ports.find((p) => p.id === port)?.lengthInHead ?? 0;
      expect(line.length + inHead).toBeCloseTo(measured.get(id)!, 3);
    }
    await page.context().close();
  });

  it('balances an uneven design as one step that can be taken back', async () => {
    const page = await open();
    const design = uneven();
    await hand(page, 'pulled.evenrun.json', writeDesign(design));
    await page.getByRole('heading', { level: 1, name: 'Pulled' }).waitFor();
    expect(await verdict(page)).toMatch(/problem/);
    const before = await lengths(page);
    expect(Math.max(...spreads(design, before))).toBeGreaterThan(5);

    await page.getByRole('button', { name: 'Balance', exact: true }).click();
    await page.getByRole('heading', { name: 'Balanced: every rule holds' }).waitFor();
    expect(await verdict(page)).toContain('Every rule holds');
    for (const spread of spreads(design, await lengths(page))) expect(spread).toBeLessThan(EQUAL);

    await page.getByRole('button', { name: 'Undo: Balance' }).click();
    expect(await lengths(page)).toEqual(before);
    await page.context().close();
  });

  it('refuses a bad file by place, found and allowed, and keeps what is open', async () => {
    const page = await open();
    const before = await lengths(page);
    const broken = { ...uneven(), ports: uneven().ports.map((p) => ({ ...p, direction: [0, 0, 0] })) };
    await hand(page, 'broken.evenrun.json', JSON.stringify(broken));
    const alert = page.getByRole('alert');
    await alert.getByRole('heading', { name: 'broken.evenrun.json was not opened' }).waitFor();
    expect(await alert.textContent()).toMatch(/ports\/.+\/direction: found .+; allowed: /);
    await hand(page, 'cut.evenrun.json', '{"format": "evenrun-des');
    await alert.getByRole('heading', { name: 'cut.evenrun.json was not opened' }).waitFor();
    expect(await lengths(page)).toEqual(before);
    await page.context().close();
  });

  it('goes from a problem to its place, and lights one part on all three faces', async () => {
    const page = await open();
    await hand(page, 'pulled.evenrun.json', writeDesign(uneven()));
    await page.getByRole('heading', { level: 1, name: 'Pulled' }).waitFor();
    await verdict(page);
    const id = uneven().runners[0]!.id;
    await page
      .getByRole('region', { name: 'Problems', exact: true })
      .getByRole('button', { name: new RegExp(`\\b${id}\\b`) })
      .first()
      .click();
    await page
      .getByRole('row', { name: new RegExp(`^${id}\\b`) })
      .and(page.locator('[aria-selected="true"]'))
      .waitFor();

    const bend = page
      .getByRole('region', { name: /^Rack/ })
      .getByRole('button', { name: new RegExp(`^${id} bend 2:`) });
    await bend.click();
    expect(await bend.getAttribute('aria-pressed')).toBe('true');
    const row = page
      .getByRole('table', { name: `Bend table of ${id}` })
      .getByRole('row')
      .nth(2);
    expect(await row.getAttribute('aria-selected')).toBe('true');
    await page.context().close();
  });

  it('speaks inches as one undoable edit', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Inches' }).click();
    await page.getByRole('columnheader', { name: 'Length in' }).waitFor();
    await page.getByRole('button', { name: 'Undo: Show inches' }).click();
    await page.getByRole('columnheader', { name: 'Length mm' }).waitFor();
    await page.context().close();
  });

  it.each([
    [1280, 720],
    [1920, 1080],
    [390, 844],
  ])('fits %i × %i without scrolling the page', async (width, height) => {
    const page = await open({ viewport: { width, height } }).catch(() => held.at(-1)!.page);
    const over = await page.evaluate(() => [
      document.documentElement.scrollWidth - innerWidth,
      document.documentElement.scrollHeight - innerHeight,
    ]);
    expect(over.every((o) => o <= 0)).toBe(true);
    await page.context().close();
  });

  it('shows one face at a time on a phone, with targets for a thumb', async () => {
    const watched = await bench.newPage({ viewport: { width: 390, height: 844 } });
    held.push(watched);
    const { page } = watched;
    const faces = page.getByRole('navigation', { name: 'Show' });
    await faces.getByRole('button', { name: 'Rack' }).click();
    await page.getByRole('region', { name: /^Rack/ }).waitFor();
    expect(await page.getByRole('region', { name: 'Runners', exact: true }).isVisible()).toBe(false);
    await faces.getByRole('button', { name: 'Tables' }).click();
    await page.getByRole('region', { name: 'Runners', exact: true }).waitFor();
    expect(await page.getByRole('region', { name: /^Rack/ }).isVisible()).toBe(false);
    for (const button of await page.getByRole('button').all()) {
      const box = await button.boundingBox();
      if (box) expect(Math.min(box.width, box.height), (await button.textContent()) ?? '').toBeGreaterThanOrEqual(44);
    }
    await page.context().close();
  });

  it('shows no text under 12 px', async () => {
    const page = await open();
    const small = await page.evaluate(() => {
      const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      const found: string[] = [];
      for (let node = texts.nextNode(); node; node = texts.nextNode()) {
        const size = Number.parseFloat(getComputedStyle(node.parentElement!).fontSize);
        if (node.textContent?.trim() && size < 12) found.push(`${node.textContent.trim()}: ${size} px`);
      }
      return found;
    });
    expect(small).toEqual([]);
    await page.context().close();
  });

  it('did all of this without an error on the console or a request to anywhere else', () => {
    expect(held.length).toBeGreaterThan(5);
    expect(held.flatMap((w) => w.errors)).toEqual([]);
    expect(held.flatMap((w) => w.strays)).toEqual([]);
    held = [];
  });
});
