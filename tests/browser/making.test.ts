/**
 * Making in a real browser: the two ways beside each other and one of them chosen, the workshop edited and refused in place, then
 * at the workbench on a phone: ticked off, still so after the page was loaded again, changed once the numbers are others.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, openBench, runAction, type Watched, withoutPicture } from './page';

let bench: Bench;
/** Cutting plans take seconds, and other tests run beside. */
const LONG = 90_000;

beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench?.close());

const section = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const head = (page: Page, name: string) =>
  section(page, name)
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .first();

async function open(page: Page, name: string): Promise<void> {
  if ((await head(page, name).getAttribute('aria-expanded')) !== 'true') await head(page, name).click();
}

/** Whatever is asked is answered, of the design as it stands. */
async function answered(page: Page): Promise<void> {
  await page.locator('.make[aria-busy="false"] .make-ways').first().waitFor({ timeout: LONG });
}

const blob = (text: string) => ({
  name: 'other.evenrun.json',
  mimeType: 'application/json',
  buffer: Buffer.from(text),
});

describe('the Make leaf', { timeout: 240_000 }, () => {
  let watched: Watched;
  let page: Page;

  beforeAll(async () => {
    watched = await bench.newPage({}, withoutPicture);
    page = watched.page;
    page.setDefaultTimeout(60_000);
    await page.getByRole('heading', { name: 'Hillclimb four, 4-1' }).waitFor();
    await page.getByRole('tab', { name: 'Make' }).click();
    await answered(page);
  });

  const ways = () => page.getByRole('table', { name: 'Ways to make tube primary' });
  const undo = (label: string | RegExp) => page.getByRole('button', { name: label });

  it('shows both ways side by side, with all that they take', async () => {
    for (const row of ['Can be made', 'Pieces', 'Cuts', 'Welds', 'Bends', 'Stock kg', 'Time', 'Cost EUR']) {
      const cells = ways()
        .getByRole('row', { name: new RegExp(`^${row}`) })
        .locator('td');
      expect(await cells.allTextContents(), row).toHaveLength(2);
    }
    const welds = await ways()
      .getByRole('row', { name: /^Welds/ })
      .locator('td')
      .allTextContents();
    expect(Number(welds[0])).toBeGreaterThan(Number(welds[1]));
  });

  it('lights the piece that is picked, and names the stock that it is cut from', async () => {
    await page.getByRole('toolbar', { name: 'Runner' }).getByRole('button', { name: 'r1' }).click();
    const pieces = page.getByRole('table', { name: 'Pieces of r1, as sawn' });
    const row = pieces.getByRole('row', { name: 'Piece r1-1' });
    await row.click();
    expect(await row.getAttribute('class')).toContain('selected');
    expect(await page.locator('.rack .selected, .rack [data-selected]').count()).toBeGreaterThan(0);
    const stock = (await row.locator('td').last().textContent())!;
    await open(page, 'Stock');
    await section(page, 'Stock').locator('figcaption', { hasText: stock }).first().waitFor();
    expect(await section(page, 'Stock').locator('.make-cut.lit').textContent()).toBe('r1-1');
  });

  it('chooses a way in one press and one step', async () => {
    await page.getByRole('button', { name: 'Bent: tube primary' }).click();
    await undo(/^Undo: Make tube primary: bent/).waitFor();
    await answered(page);
    await page.getByRole('table', { name: 'Machine rows of r1' }).waitFor();
    await page.getByRole('button', { name: 'Bent: tube primary', pressed: true }).waitFor();
    await undo(/^Undo: Make tube primary: bent/).click();
    await answered(page);
    await page.getByRole('table', { name: 'Pieces of r1, as sawn' }).waitFor();
    expect(await undo('Undo').isDisabled()).toBe(true);
  });

  it('edits the shelf: a price, another bend, and none of it again', async () => {
    await open(page, 'Workshop');
    const shelf = section(page, 'Workshop').getByRole('list', { name: 'Stock bends' });
    const before = await shelf.getByRole('listitem').count();
    await shelf.getByRole('button').first().click();
    const price = shelf.getByRole('textbox', { name: 'Price' });
    await price.fill('99.5');
    await price.press('Enter');
    await undo(/^Undo: Price of .*: .* → 99.5/).waitFor();
    await shelf.getByText('99.50 EUR').waitFor();
    await shelf.getByRole('button', { name: 'Duplicate' }).click();
    await expect.poll(() => shelf.getByRole('listitem').count()).toBe(before + 1);
    await shelf.getByRole('button', { name: 'Remove' }).click();
    await expect.poll(() => shelf.getByRole('listitem').count()).toBe(before);
    await section(page, 'Workshop').getByRole('button', { name: '+ Add a bend' }).click();
    await expect.poll(() => shelf.getByRole('listitem').count()).toBe(before + 1);
    await undo(/^Undo: Add a bend/).click();
    await expect.poll(() => shelf.getByRole('listitem').count()).toBe(before);
  });

  it('refuses what cannot be in its place, with what would do, and keeps what was typed', async () => {
    const kerf = section(page, 'Workshop').getByRole('textbox', { name: 'Saw kerf' });
    await kerf.fill('9000');
    await kerf.press('Enter');
    const problem = section(page, 'Workshop').getByText(/allowed: more than the kerf, 9000 mm; or a smaller/);
    await problem.waitFor();
    expect(await kerf.inputValue()).toBe('9000');
    await kerf.fill('-1');
    await kerf.press('Enter');
    await section(page, 'Workshop')
      .getByText(/−1 mm is out of range/)
      .waitFor();
    await kerf.press('Escape');
    expect(await kerf.inputValue()).not.toBe('-1');
  });

  it('says that the shelf lacks a radius, and lists a bend of it in one press', async () => {
    const shelf = section(page, 'Workshop').getByRole('list', { name: 'Stock bends' });
    while ((await shelf.getByRole('listitem').count()) > 1) {
      if ((await shelf.getByRole('button', { name: 'Remove' }).count()) === 0)
        await shelf.getByRole('button').first().click();
      await shelf.getByRole('button', { name: 'Remove' }).click();
    }
    if ((await shelf.getByRole('textbox', { name: 'Radius' }).count()) === 0)
      await shelf.getByRole('button').first().click();
    const radius = shelf.getByRole('textbox', { name: 'Radius' });
    await radius.fill('100');
    await radius.press('Enter');
    const lacking = section(page, 'Workshop').getByRole('list', { name: 'Assumed' });
    await lacking.getByText(/no bend of .* with radius 63.6 mm is listed/).waitFor();
    await answered(page);
    await ways()
      .getByRole('row', { name: /^Can be made/ })
      .getByText('no')
      .waitFor();
    await lacking.getByRole('button', { name: 'List it' }).click();
    await lacking.waitFor({ state: 'detached' });
    // From then on bends are cut from it.
    await section(page, 'Stock').locator('figcaption', { hasText: 'U primary 64 no. 1' }).waitFor({ timeout: LONG });
  });

  it('takes the workshop of a design file as one step, or says that it has none', async () => {
    const input = section(page, 'Workshop').getByLabel('Design file to take the workshop from');
    const empty = {
      format: 'evenrun-design',
      version: 1,
      ports: [],
      tubes: {},
      tooling: {},
      merges: [],
      runners: [],
      groups: {},
    };
    await input.setInputFiles(blob(JSON.stringify(empty)));
    await page.getByText('“other.evenrun.json” has no workshop').waitFor();
    await input.setInputFiles(blob(JSON.stringify({ ...empty, workshop: { kerf: 3, currency: 'SEK' } })));
    await undo(/^Undo: Take the workshop of “other.evenrun.json”/).waitFor();
    expect(await section(page, 'Workshop').getByRole('textbox', { name: 'Saw kerf' }).inputValue()).toBe('3');
    await section(page, 'Workshop')
      .getByRole('list', { name: 'Assumed' })
      .getByText(/a U is assumed to be on sale/)
      .waitFor();
    await undo(/^Undo: Take the workshop/).click();
  });

  it('takes the workshop of another design that is kept in this browser', async () => {
    const kerf = () => section(page, 'Workshop').getByRole('textbox', { name: 'Saw kerf' });
    await kerf().fill('2.25');
    await kerf().press('Enter');
    await undo(/^Undo: Saw kerf of the workshop: .* → 2.25 mm/).waitFor();
    await page.getByRole('button', { name: 'Examples' }).click();
    await page.getByRole('list', { name: 'Examples' }).getByRole('button', { name: 'Road four, 4-2-1' }).click();
    await page.getByRole('heading', { name: /^Road four/ }).waitFor();
    await expect.poll(() => kerf().inputValue()).not.toBe('2.25');
    await section(page, 'Workshop')
      .getByLabel('Design kept in this browser')
      .selectOption({ label: 'Hillclimb four, 4-1' });
    await section(page, 'Workshop').getByRole('button', { name: 'Take its workshop' }).click();
    await undo(/^Undo: Take the workshop of “Hillclimb four, 4-1”/).waitFor();
    expect(await kerf().inputValue()).toBe('2.25');
    await undo(/^Undo: Take the workshop/).click();
    await expect.poll(() => kerf().inputValue()).not.toBe('2.25');
    expect(await undo('Undo').isDisabled()).toBe(true);
  });

  it('and nothing went wrong or away on the page meanwhile', () => {
    expect(watched.errors).toEqual([]);
    expect(watched.strays).toEqual([]);
  });
});

describe('at the workbench, on a phone', { timeout: 240_000 }, () => {
  let watched: Watched;
  let page: Page;

  beforeAll(async () => {
    watched = await bench.newPage(
      { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
      withoutPicture,
    );
    page = watched.page;
    page.setDefaultTimeout(60_000);
    await page.getByRole('heading', { name: 'Hillclimb four, 4-1' }).waitFor();
    await page.getByRole('navigation', { name: 'Show' }).getByRole('button', { name: 'Make' }).tap();
    await answered(page);
    await page.getByRole('button', { name: 'At the workbench…' }).tap();
  });

  const atBench = () => page.getByRole('dialog', { name: 'At the workbench' });
  const r1 = () => atBench().getByRole('button', { name: /^ *r1/ });
  const article = (name: string | RegExp) => atBench().getByRole('article', { name });
  const done = () => atBench().getByRole('button', { name: 'Done', exact: true });

  it('shows one step at a time, large, with thumb-sized controls that fit the screen', async () => {
    await r1().tap();
    await article('Saw piece r1-1').waitFor();
    const arc = article('Saw piece r1-1').locator('.bench-figure', { hasText: 'Arc' });
    expect(await arc.textContent()).toMatch(/Arc\d+\.[05]°/);
    const size = await arc
      .locator('.bench-number')
      .evaluate((node) => Number.parseFloat(getComputedStyle(node).fontSize));
    expect(size).toBeGreaterThanOrEqual(40);
    for (const button of await atBench().getByRole('button').all()) {
      const box = await button.boundingBox();
      // Those of the list are away while a step is on screen.
      if (!box) continue;
      expect(box.height, (await button.textContent()) ?? '').toBeGreaterThanOrEqual(44);
      expect(box.x + box.width).toBeLessThanOrEqual(390);
    }
    const small = await atBench().evaluate((dialog) =>
      [...dialog.querySelectorAll('*')]
        .filter((node) => [...node.childNodes].some((child) => child.nodeType === 3 && child.textContent?.trim()))
        .filter((node) => Number.parseFloat(getComputedStyle(node).fontSize) < 12)
        .map((node) => node.textContent),
    );
    expect(small).toEqual([]);
  });

  it('ticks off and goes on to the next', async () => {
    await done().tap();
    await article('Dress piece r1-1').waitFor();
    await done().tap();
    await article(/^Set piece r1-1/).waitFor();
    await atBench().getByText('2 done').waitFor();
  });

  it('is where it was after the page was loaded again, ticks and all', async () => {
    // A tick is kept before the page may go; what was not would be lost here.
    await page.waitForTimeout(1000);
    await page.reload();
    await article(/^Set piece r1-1/).waitFor({ timeout: LONG });
    await atBench().getByText('2 done').waitFor();
    await atBench().getByRole('button', { name: 'List', exact: true }).tap();
    const list = atBench().getByRole('list', { name: 'Steps' });
    await list.getByRole('button', { name: /Saw piece r1-1.*done/ }).waitFor();
    // Further on, to the straight that a weld's gap makes shorter.
    await list.getByRole('button', { name: /Saw piece r1-2/ }).tap();
    await done().tap();
    await atBench().getByText('3 done').waitFor();
  });

  it('closes to where one was, and says of a ticked step that its numbers are others since', async () => {
    await atBench().getByRole('button', { name: 'Runners' }).tap();
    await atBench().getByRole('button', { name: 'Close' }).tap();
    await atBench().waitFor({ state: 'hidden' });
    await page.getByRole('navigation', { name: 'Show' }).getByRole('button', { name: 'Make' }).tap();
    await open(page, 'Workshop');
    const gap = section(page, 'Workshop').getByRole('textbox', { name: 'Weld gap' });
    const before = await gap.inputValue();
    await gap.fill('4');
    await gap.press('Enter');
    await answered(page);
    await page.getByRole('button', { name: 'At the workbench…' }).tap();
    await r1().getByText('1 changed since ticked').waitFor({ timeout: LONG });
    await r1().tap();
    await article('Saw piece r1-2').getByText('Changed since ticked').waitFor();
    await article('Saw piece r1-2')
      .getByText(/^Length: was \d+\.[05] mm$/)
      .waitFor();
    await atBench().getByText('2 done').waitFor();
    // By the old numbers it is done again; ticked anew it stands by the new ones.
    await atBench().getByRole('button', { name: 'Done by the new numbers' }).tap();
    await atBench().getByText('3 done').waitFor();
    expect(before).not.toBe('4');
  });

  it('and nothing went wrong or away on the page meanwhile', async () => {
    expect(watched.errors).toEqual([]);
    expect(watched.strays).toEqual([]);
    await atBench().getByRole('button', { name: 'Close' }).tap();
    await runAction(page, 'go to the workbench');
    await atBench().waitFor();
  });
});
