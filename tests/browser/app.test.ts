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
/** The one that is there to be balanced; every other holds as it is. */
const TACKED = 'four-4-1-as-tacked.evenrun.json';
const sound = examples.filter((e) => e.file !== TACKED);
const exampleText = (file: string) => readFileSync(join(EXAMPLES, file), 'utf8');

let bench: Bench;
/** One page for all: drawing in software takes seconds to start, and what one test leaves the next opens over. */
let watched: Watched;
let page: Page;

beforeAll(async () => {
  bench = await openBench();
  watched = await bench.newPage();
  page = watched.page;
  await verdict();
});
afterAll(() => bench?.close());

/** Opens an example through the menu. */
async function openExample({ file, title }: (typeof examples)[number]): Promise<Design> {
  const design = parseDesign(exampleText(file));
  await page.getByRole('button', { name: 'Examples' }).click();
  await page.getByRole('list', { name: 'Examples' }).getByRole('button', { name: title }).click();
  await opened(design);
  return design;
}

async function openUneven(): Promise<Design> {
  const design = uneven();
  await hand('pulled.evenrun.json', writeDesign(design));
  await opened(design);
  return design;
}

async function opened(design: Design): Promise<void> {
  await page.getByRole('heading', { level: 1, name: design.title!, exact: true }).waitFor();
  await verdict();
}

/** Waits until the rules have been measured. */
async function verdict(): Promise<string> {
  const panel = page.getByRole('region', { name: 'Problems', exact: true });
  await panel.getByRole('heading').waitFor();
  await page.waitForFunction(
    () => document.querySelector('[aria-label="Problems"]')?.getAttribute('aria-busy') === 'false',
  );
  return (await panel.getByRole('heading').textContent()) ?? '';
}

/** Every runner's length as the page's own table gives it, mm. */
async function lengths(): Promise<Map<string, number>> {
  const rows = await page.getByRole('region', { name: 'Runners', exact: true }).locator('tbody tr').all();
  const read = rows.map(async (row) => {
    const id = ((await row.getByRole('rowheader').textContent()) ?? '').trim();
    const value = await row.locator('data').first().getAttribute('value');
    return [id, Number(value)] as const;
  });
  return new Map(await Promise.all(read));
}

async function hand(name: string, text: string): Promise<void> {
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

/** The first example with one runner pulled 40 mm longer along its port's direction. */
function uneven(): Design {
  const design = parseDesign(exampleText(examples[0]!.file));
  const [runner, ...rest] = design.runners;
  const [start, first, ...others] = runner!.points!;
  const leg = Math.hypot(...first!.map((c, i) => c - start![i]!));
  const pulled = first!.map((c, i) => c + ((c - start![i]!) / leg) * 40) as unknown as typeof first;
  return { ...design, title: 'Pulled', runners: [{ ...runner!, points: [start!, pulled!, ...others] }, ...rest] };
}

describe('the app', () => {
  it('opens with an example on it', async () => {
    expect(await verdict()).toContain('Every rule holds');
    const { title } = parseDesign(exampleText(examples[0]!.file));
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(title);
  });

  it.each(sound)('opens "$title" with equal lengths and every rule holding', async (example) => {
    const design = await openExample(example);
    expect(await verdict()).toContain('Every rule holds');
    const measured = await lengths();
    expect([...measured.keys()]).toEqual(design.runners.map((r) => r.id));
    for (const length of measured.values()) expect(length).toBeGreaterThan(100);
    for (const spread of spreads(design, measured)) expect(spread).toBeLessThan(EQUAL);
  });

  it('hands over a shop folder whose tables rebuild the same centerlines', async () => {
    const design = await openExample(examples[0]!);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Shop folder' }).click(),
    ]);
    const files = unzipSync(new Uint8Array(readFileSync(await download.path())));
    const find = (name: string) => strFromU8(files[Object.keys(files).find((path) => path.endsWith(`/${name}`))!]!);
    const rebuilt = rebuildFromTables(design, find('bend-schedule.csv'), find('start-clocking.csv'));
    expect(rebuilt.map((r) => r.id).sort()).toEqual(design.runners.map((r) => r.id).sort());
    for (const { id, deviation } of rebuilt) expect(deviation, id).toBeLessThan(SAME_PLACE);
    const measured = await lengths();
    for (const { id, line } of rebuilt) {
      const { from } = design.runners.find((r) => r.id === id)!;
      const inHead = 'port' in from ? (design.ports.find((p) => p.id === from.port)!.lengthInHead ?? 0) : 0;
      expect(line.length + inHead).toBeCloseTo(measured.get(id)!, 3);
    }
  });

  it('balances an uneven design as one step that can be taken back', async () => {
    const design = await openExample(examples.find((e) => e.file === TACKED)!);
    expect(await verdict()).toMatch(/problem/);
    const before = await lengths();
    expect(Math.max(...spreads(design, before))).toBeGreaterThan(1);

    await page.getByRole('button', { name: 'Balance', exact: true }).click();
    await page.getByRole('heading', { name: 'Balanced: every rule holds' }).waitFor();
    expect(await verdict()).toContain('Every rule holds');
    for (const spread of spreads(design, await lengths())) expect(spread).toBeLessThan(EQUAL);

    await page.getByRole('button', { name: 'Undo: Balance' }).click();
    expect(await lengths()).toEqual(before);
    await page.getByRole('button', { name: 'Redo: Balance' }).click();
    for (const spread of spreads(design, await lengths())) expect(spread).toBeLessThan(EQUAL);
  });

  it('keeps the edits of a design that is left for another', async () => {
    await openUneven();
    await page.getByRole('button', { name: 'Inches' }).click();
    const other = { ...uneven(), title: 'Other' };
    await hand('other.evenrun.json', writeDesign(other));
    await opened(other);
    await page.getByRole('button', { name: 'Designs' }).click();
    await page
      .getByRole('list', { name: 'Designs' })
      .getByRole('button', { name: /^Pulled/ })
      .first()
      .click();
    await opened({ ...other, title: 'Pulled' });
    await page.getByRole('columnheader', { name: 'Length in' }).waitFor();
    await page.getByRole('button', { name: 'Undo: Show inches' }).click();
  });

  it('refuses a bad file by place, found and allowed, and keeps what is open', async () => {
    await openExample(examples[0]!);
    const before = await lengths();
    const broken = { ...uneven(), ports: uneven().ports.map((p) => ({ ...p, direction: [0, 0, 0] })) };
    await hand('broken.evenrun.json', JSON.stringify(broken));
    const alert = page.getByRole('alert');
    await alert.getByRole('heading', { name: 'broken.evenrun.json was not opened' }).waitFor();
    expect(await alert.textContent()).toMatch(/ports\/.+\/direction: found .+; allowed: /);
    await hand('cut.evenrun.json', '{"format": "evenrun-des');
    await alert.getByRole('heading', { name: 'cut.evenrun.json was not opened' }).waitFor();
    expect(await lengths()).toEqual(before);
  });

  it('goes from a problem to its place, and lights one part on all faces', async () => {
    const { id } = (await openUneven()).runners[0]!;
    const problems = page.getByRole('region', { name: 'Problems', exact: true });
    await problems
      .getByRole('button', { name: new RegExp(`\\b${id}\\b`) })
      .first()
      .click();
    const rack = page.getByRole('region', { name: /^Rack/ });
    const lit = rack.getByRole('button', { name: new RegExp(`^${id}\\b`), pressed: true });
    await lit.first().waitFor();

    const bend = rack.getByRole('button', { name: new RegExp(`^${id} bend 2:`) });
    await bend.click();
    expect(await bend.getAttribute('aria-pressed')).toBe('true');
    const row = page
      .getByRole('table', { name: `Bend table of ${id}` })
      .getByRole('row')
      .nth(2);
    expect(await row.getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Enter');
    expect(await bend.getAttribute('aria-pressed')).toBe('false');
    const straight = rack.getByRole('button', { name: new RegExp(`^${id} straight 2:`) });
    expect(await straight.getAttribute('aria-pressed')).toBe('true');
  });

  it('speaks inches as one undoable edit', async () => {
    await openExample(examples[0]!);
    await page.getByRole('button', { name: 'Inches' }).click();
    await page.getByRole('columnheader', { name: 'Length in' }).waitFor();
    await page.getByRole('button', { name: 'Undo: Show inches' }).click();
    await page.getByRole('columnheader', { name: 'Length mm' }).waitFor();
  });

  it.each([
    [1280, 720],
    [1920, 1080],
    [760, 1000],
    [390, 844],
  ])('fits %i × %i without scrolling the page', async (width, height) => {
    await page.setViewportSize({ width, height });
    const over = await page.evaluate(() => [
      document.documentElement.scrollWidth - innerWidth,
      document.documentElement.scrollHeight - innerHeight,
    ]);
    expect(Math.max(...over)).toBeLessThanOrEqual(0);
  });

  it('shows no text under 12 px', async () => {
    await page.setViewportSize({ width: 1280, height: 720 });
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
  });

  it('shows one face at a time on a phone, with targets for a thumb', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    const faces = page.getByRole('navigation', { name: 'Show' });
    const rack = page.getByRole('region', { name: /^Rack/ });
    const runners = page.getByRole('region', { name: 'Runners', exact: true });
    const thumbs = async () => {
      for (const button of await page.locator('button').all()) {
        const box = await button.boundingBox();
        const name = (await button.getAttribute('aria-label')) ?? (await button.textContent()) ?? '';
        if (box) expect(Math.min(box.width, box.height), name).toBeGreaterThanOrEqual(44);
      }
    };
    await faces.getByRole('button', { name: 'Rack' }).click();
    await rack.waitFor();
    expect(await runners.isVisible()).toBe(false);
    await thumbs();
    await faces.getByRole('button', { name: 'Tables' }).click();
    await runners.waitFor();
    expect(await rack.isVisible()).toBe(false);
    await thumbs();
    await page.getByRole('button', { name: 'Files and settings' }).click();
    await faces.getByRole('button', { name: 'Header' }).click();
    await thumbs();
  });

  it('takes a phone from a problem to the picture with its pin, and the pin away once it is balanced', async () => {
    await page.setViewportSize({ width: 1280, height: 720 });
    await openUneven();
    await page.setViewportSize({ width: 390, height: 844 });
    const faces = page.getByRole('navigation', { name: 'Show' });
    const header = faces.getByRole('button', { name: 'Header' });
    await faces.getByRole('button', { name: 'Problems' }).click();
    const problems = page.getByRole('region', { name: 'Problems', exact: true });
    await problems.getByRole('button').first().click();
    await problems.waitFor({ state: 'hidden' });
    expect(await header.getAttribute('aria-pressed')).toBe('true');
    await page.locator('.viewport-pin').waitFor({ state: 'attached' });
    await page.getByRole('button', { name: 'Balance', exact: true }).click();
    await page.locator('.viewport-pin').waitFor({ state: 'detached' });
  });

  it('did all of this without an error on the console or a request to anywhere else', () => {
    expect(watched.errors).toEqual([]);
    expect(watched.strays).toEqual([]);
  });
});
