/**
 * docs/screenshots/NAME.png from the built app: the same pictures every time (fixed sizes, no motion, no system
 * preferences), so that a change in them is a change in the app. Run `npm run build` first, then `npm run screenshots`.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { CHROMIUM_REMEDY, findChromium } from './chromium.mjs';
import { serve } from './serve.mjs';

type Shot = {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly dark?: boolean;
  /** What to do before the picture is taken. */
  readonly act?: (page: Page) => Promise<void>;
  /** The pointer stays where `act` left it; else it goes out of the way. */
  readonly holds?: boolean;
};

const ROOT = join(import.meta.dirname, '..');
const OUT = join(ROOT, 'docs/screenshots');
/** Drawing in software: the last frame may take this long after everything else is still. */
const LAST_FRAME_MS = 4000;

const example = (title: string) => async (page: Page) => {
  const before = await page.locator('.title h1').textContent();
  await page.getByRole('button', { name: 'Examples' }).click();
  await page.getByRole('list', { name: 'Examples' }).getByRole('button', { name: title }).click();
  // One with a scan takes a while to open: until then the design before it is there, and settled.
  await page.waitForFunction((was) => document.querySelector('.title h1')?.textContent !== was, before);
  await settled(page);
};
const press = (name: string) => (page: Page) => page.getByRole('button', { name, exact: true }).first().click();
const inTurn =
  (...acts: ((page: Page) => Promise<void>)[]) =>
  async (page: Page) => {
    for (const act of acts) await act(page);
  };

/** Takes hold of the first bend mark after so many presses of B, and pulls. */
const pull = (presses: number, x: number, y: number) => async (page: Page) => {
  await page.locator('.viewport').focus();
  for (let k = 0; k < presses; k++) await page.keyboard.press('b');
  const mark = await page.locator('[data-handle^="bend"]').first().boundingBox();
  if (!mark) throw new Error('No bend mark came up.');
  const [fromX, fromY] = [mark.x + mark.width / 2, mark.y + mark.height / 2];
  await page.mouse.move(fromX, fromY);
  await page.mouse.down();
  await page.mouse.move(fromX + x, fromY + y, { steps: 6 });
};

/** Lays anew in so many rounds, which come to the same layouts on any machine; how long they took is left out of the picture. */
const laid = (rounds: number) => async (page: Page) => {
  await page.keyboard.press('Shift+L');
  const panel = page.getByRole('region', { name: 'Lay the header', exact: true });
  await panel.getByLabel('Search for').selectOption('60');
  await panel.getByText('To repeat a search').click();
  await panel.getByLabel('Rounds').fill(String(rounds));
  await panel.getByRole('button', { name: 'Lay anew' }).click();
  await panel.getByText(/layouts? holds? every rule/).waitFor({ timeout: 60_000 });
  await page.addStyleTag({ content: '.lay-spent { visibility: hidden }' });
};

/** Once every part is made, so that all are in their places. */
const partsLeaf = async (page: Page) => {
  await page.getByRole('tab', { name: 'Parts' }).click();
  await page.getByText(/parts in all/).waitFor();
};

/** A bolt that the wrap would hide, with the tool that its wrapped tube is in the way of. */
const hiddenBolt = async (page: Page) => {
  await page.getByRole('tab', { name: 'Room' }).click();
  await page.getByRole('button', { name: /^Gaps/ }).click();
  await page.getByRole('button', { name: /^Tools/ }).click();
  await page.getByText('left flange bolt 7').first().click();
};

/** The leaf for making, once its plans are found. */
const makeLeaf = async (page: Page) => {
  const tab = page.getByRole('tab', { name: 'Make' });
  // On a phone the leaves are faces of their own.
  if (await tab.isVisible()) await tab.click();
  else await page.getByRole('navigation', { name: 'Show' }).getByRole('button', { name: 'Make' }).click();
  await page.locator('.make[aria-busy="false"] .make-ways').first().waitFor({ timeout: 60_000 });
};

/** At the workbench, on the first step that turns one piece on another. */
const workbench = async (page: Page) => {
  await makeLeaf(page);
  await page.getByRole('button', { name: /^At the workbench/ }).click();
  const bench = page.getByRole('dialog', { name: 'At the workbench' });
  await bench.getByRole('button').filter({ hasText: 'r2' }).click();
  for (let k = 0; k < 6; k++) await bench.getByRole('button', { name: 'Done' }).click();
};

/** The waves of four cylinders into one pipe, read where two of them meet; how long it took is left out of the picture. */
const waves = async (page: Page) => {
  await page.keyboard.press('Control+k');
  await page.getByRole('listbox', { name: 'Actions' }).waitFor();
  await page.keyboard.type('pressure waves');
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Pressure waves in pipes' });
  await dialog.getByRole('button', { name: /^Four into one/ }).click();
  await dialog.getByRole('button', { name: 'Run again' }).waitFor({ timeout: 120_000 });
  await page.addStyleTag({ content: '.waves-clock { visibility: hidden }' });
  const box = await dialog.getByRole('application').boundingBox();
  if (!box) throw new Error('The picture of the waves did not come.');
  await page.mouse.move(Math.round(box.x + 0.37 * box.width), Math.round(box.y + 0.45 * box.height));
};

const SHOTS: readonly Shot[] = [
  { name: 'wide', width: 1280, height: 720 },
  { name: 'dark', width: 1280, height: 720, dark: true, act: example('V8, left bank, 4-1') },
  { name: 'large', width: 1920, height: 1080, act: example('V8, both banks') },
  { name: 'pairs', width: 1280, height: 720, act: example('Road four, 4-2-1') },
  { name: 'tacked', width: 1280, height: 720, act: inTurn(example('The same four, as tacked'), press('r2')) },
  {
    name: 'balanced',
    width: 1280,
    height: 720,
    act: inTurn(example('The same four, as tacked'), press('Balance'), settled),
  },
  { name: 'shaping', width: 1280, height: 720, act: inTurn(example('V8, both banks'), pull(5, 0, 40)), holds: true },
  { name: 'laying', width: 1280, height: 720, act: inTurn(example('V8, left bank, 4-1'), laid(8)) },
  { name: 'parts', width: 1280, height: 720, act: inTurn(press('Explode'), partsLeaf) },
  { name: 'room', width: 1280, height: 720, act: inTurn(example('V8, left bank, 4-1'), hiddenBolt) },
  { name: 'make', width: 1280, height: 720, act: makeLeaf },
  { name: 'waves', width: 1440, height: 900, act: waves, holds: true },
  { name: 'new', width: 1280, height: 720, act: press('New…') },
  { name: 'phone', width: 390, height: 844 },
  { name: 'phone-balanced', width: 390, height: 844, act: inTurn(press('Balance'), settled) },
  { name: 'phone-workbench', width: 390, height: 844, act: workbench },
  { name: 'phone-rack', width: 390, height: 844, act: press('Rack') },
  { name: 'phone-tables', width: 390, height: 844, dark: true, act: press('Tables') },
  {
    name: 'phone-problems',
    width: 390,
    height: 844,
    act: inTurn(
      press('Files and settings'),
      example('The same four, as tacked'),
      press('Files and settings'),
      async (page) => page.getByRole('navigation', { name: 'Show' }).getByRole('button', { name: 'Problems' }).click(),
    ),
  },
];

/** Until the rules have been measured and no job runs. */
async function settled(page: Page): Promise<void> {
  await page.locator('.verdict h2').first().waitFor({ state: 'attached' });
  await page.locator('.problems[aria-busy="false"]').first().waitFor({ state: 'attached' });
  await page.locator('.busy').waitFor({ state: 'detached' });
}

async function main(): Promise<void> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error(CHROMIUM_REMEDY);
  const wanted = process.argv.slice(2);
  mkdirSync(OUT, { recursive: true });
  const server = await serve(join(ROOT, 'dist'), 0);
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  try {
    for (const { name, width, height, dark, act, holds } of SHOTS) {
      if (wanted.length > 0 && !wanted.includes(name)) continue;
      const page = await browser.newPage({
        viewport: { width, height },
        deviceScaleFactor: 1,
        colorScheme: dark ? 'dark' : 'light',
        reducedMotion: 'reduce',
      });
      await page.goto(server.url);
      await settled(page);
      await act?.(page);
      if (!holds) await page.mouse.move(0, 0);
      await page.waitForTimeout(LAST_FRAME_MS);
      await page.screenshot({ path: join(OUT, `${name}.png`) });
      await page.close();
      console.log(`docs/screenshots/${name}.png`);
    }
  } finally {
    await browser.close();
    await server.close();
  }
}

await main();
