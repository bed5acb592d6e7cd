/** A Chromium on the built app, served on loopback: what the browser tests share. Fails where the app was not built. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { CHROMIUM_REMEDY, findChromium } from '../../scripts/chromium.mjs';
import { serve } from '../../scripts/serve.mjs';

const DIST = process.env.EVENRUN_DIST ?? join(import.meta.dirname, '../../dist');

export type Bench = {
  readonly url: string;
  /** A fresh page with the app on it, and what went wrong on it so far. `prepare` runs before it loads. */
  newPage(options?: BrowserContextOptions, prepare?: (context: BrowserContext) => Promise<void>): Promise<Watched>;
  close(): Promise<void>;
};

export type Watched = {
  readonly page: Page;
  /** Errors on the console and exceptions. */
  readonly errors: string[];
  /** Requests that left the app's own origin. */
  readonly strays: string[];
};

export async function openBench(): Promise<Bench> {
  if (!existsSync(join(DIST, 'index.html'))) throw new Error('dist/ is missing: run npm run build first.');
  const executablePath = findChromium();
  if (!executablePath) throw new Error(CHROMIUM_REMEDY);
  const server = await serve(DIST, 0);
  let browser: Browser;
  try {
    browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  } catch (error) {
    await server.close();
    throw error;
  }
  return {
    url: server.url,
    async newPage(options = {}, prepare = async () => {}) {
      const context = await browser.newContext({
        viewport: { width: 1280, height: 720 },
        deviceScaleFactor: 1,
        reducedMotion: 'reduce',
        colorScheme: 'light',
        acceptDownloads: true,
        ...options,
      });
      await prepare(context);
      const page = await context.newPage();
      const watched: Watched = { page, errors: [], strays: [] };
      page.on('console', (message) => message.type() === 'error' && watched.errors.push(message.text()));
      page.on('pageerror', (error) => watched.errors.push(error.message));
      page.on('request', (request) => {
        const url = request.url();
        if (!url.startsWith(server.url) && !/^(blob|data):/.test(url)) watched.strays.push(url);
      });
      await page.goto(server.url);
      return watched;
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

/** Finds an action in the list of them by its words, and does it. */
export async function runAction(page: Page, words: string): Promise<void> {
  const sheet = page.getByRole('listbox', { name: 'Actions' });
  await page.keyboard.press('Control+k');
  await sheet.waitFor();
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
  await sheet.waitFor({ state: 'detached' });
}

/** The view as the app saves it. */
export async function pictureOf(page: Page): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), runAction(page, 'save picture for paper')]);
  return readFileSync(await download.path());
}

/** For tests that do not look at the picture: drawing it without a graphics card takes longer than all the rest. */
export async function withoutPicture(context: BrowserContext): Promise<void> {
  await context.route('**/assets/viewport-*.js', (route) =>
    route.fulfill({ contentType: 'text/javascript', body: 'export const Viewport = () => null;' }),
  );
}
