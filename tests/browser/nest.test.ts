/**
 * The solver in a browser, bundled by the app's own settings: in a worker and on the page it comes to what the command line comes
 * to, its WebAssembly comes from the page's own folder, and nothing of it is fetched before a plan is asked for.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { expect, test } from 'vitest';
import { CHROMIUM_REMEDY, findChromium } from '../../scripts/chromium.mjs';
import { serve } from '../../scripts/serve.mjs';
import { cutBars } from '../../src/shop/nest/bars';
import { problem } from './nestPage/problem';

const ROOT = join(import.meta.dirname, '../..');

test('a plan made in a worker, and one made on the page, are those made here', async () => {
  const executablePath = findChromium();
  if (!executablePath) throw new Error(CHROMIUM_REMEDY);
  const outDir = mkdtempSync(join(tmpdir(), 'evenrun-nest-'));
  const configFile = join(ROOT, 'vite.config.ts');
  const root = join(import.meta.dirname, 'nestPage');
  await build({ configFile, root, publicDir: false, logLevel: 'error', build: { outDir, emptyOutDir: true } });
  const server = await serve(outDir, 0);
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage();
    const asked: string[] = [];
    const errors: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    page.on('pageerror', (error) => errors.push(error.message));
    page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
    await page.goto(server.url);
    await page.getByText('ready').waitFor();
    expect(asked.filter((url) => /highs/.test(url))).toEqual([]);
    await page.locator('body').click();
    await page.waitForFunction(() => document.title.includes('/'), undefined, { timeout: 60_000 });
    const { value, bound, proved } = await cutBars(problem);
    const here = `${value} ${bound} ${proved}`;
    expect(proved).toBe(true);
    expect(await page.title()).toBe(`${here} / ${here}`);
    expect(errors).toEqual([]);
    expect(asked.filter((url) => !url.startsWith(server.url) && !/^(data|blob):/.test(url))).toEqual([]);
    expect(asked.some((url) => /highs-[\w-]+\.wasm$/.test(url))).toBe(true);
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  }
});
