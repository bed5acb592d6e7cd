/**
 * The bundle budget: how much a browser must fetch before the app answers, and that no heavy kernel is in it. Held against
 * the built files, against what a real page asks for, and against small pages that break it.
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, type Plugin } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { firstLoad, heavyIn, loaded, staleness, TELLTALES } from './firstLoad';
import { type Bench, openBench } from './page';

const ROOT = join(import.meta.dirname, '../..');
const DIST = process.env.EVENRUN_DIST ?? join(ROOT, 'dist');

/** Bytes. Measured: 252 800 for scripts and styles; a tenth for what the app has still to learn without a heavy kernel. */
const BUDGET = 280_000;
/** Of the 3D view, asked for at once but not waited for. Measured: 309 200, nearly all of it the drawing library. */
const VIEW_BUDGET = 310_000;

const folder = mkdtempSync(join(tmpdir(), 'evenrun-first-load-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('the built app', () => {
  beforeAll(() => {
    const stale = staleness(ROOT, DIST);
    if (stale) throw new Error(stale);
  });

  test('starts within its budget and without a heavy kernel', () => {
    const { files, gzipped, heavy } = firstLoad(DIST);
    expect(files.some((file) => file.endsWith('.css'))).toBe(true);
    expect(heavy).toEqual([]);
    expect(gzipped, files.join(', ')).toBeLessThan(BUDGET);
    // A budget far above what is there holds nothing.
    expect(gzipped).toBeGreaterThan(BUDGET * 0.8);
  });

  test('and so does its 3D view', () => {
    const assets = join(DIST, 'assets');
    const view = readdirSync(assets).filter((name) => /^viewport-.*\.(js|css)$/.test(name));
    expect(view.length).toBe(2);
    const first = firstLoad(DIST).gzipped;
    const { heavy, gzipped } = loaded(DIST, [join(DIST, 'index.html'), ...view.map((name) => join(assets, name))]);
    expect(heavy).toEqual([]);
    expect(gzipped - first).toBeLessThan(VIEW_BUDGET);
  });

  test('and every worker, which fetches a heavy kernel once something needs it', () => {
    const assets = join(DIST, 'assets');
    const workers = readdirSync(assets).filter((name) => /\.worker-.*\.js$/.test(name));
    expect(workers.length).toBeGreaterThanOrEqual(3);
    for (const name of workers) expect(loaded(DIST, [join(assets, name)]).heavy, name).toEqual([]);
  });
});

describe('a real page', () => {
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench();
  });
  afterAll(() => bench?.close());

  // A worker may fetch one for a header that needs it; the page itself never.
  test('that shows a header holds no heavy kernel of its own, and nothing to play waves with', async () => {
    const { page, errors } = await bench.newPage();
    await page.locator('.viewport-label[data-kind="runner"]').first().waitFor({ state: 'attached' });
    await page.waitForLoadState('networkidle');
    const asked = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
    const names = asked.map((url) => new URL(url).pathname.slice(1)).filter((name) => /\.(m?js|wasm)$/.test(name));
    for (const part of ['index-', 'viewport-', 'worker-'])
      expect(names.filter((name) => name.includes(part)).length, part).toBeGreaterThan(0);
    // What plays waves on the header waits until something is played.
    expect(readdirSync(join(DIST, 'assets')).filter((name) => /^play-.*\.js$/.test(name))).toHaveLength(1);
    expect(names.filter((name) => name.includes('/play-'))).toEqual([]);
    expect(heavyIn(names.map((name) => `${name} ${readFileSync(join(DIST, name), 'latin1')}`))).toEqual([]);
    expect(errors).toEqual([]);
  });
});

/** A page of one script, built as the app is. */
async function builtPage(name: string, script: string): Promise<string> {
  const root = join(folder, name);
  mkdirSync(root);
  writeFileSync(join(root, 'index.html'), '<!doctype html><script type="module" src="/main.js"></script>');
  writeFileSync(join(root, 'main.js'), script);
  const ours: Plugin = {
    name: 'packages of this project',
    enforce: 'pre',
    resolveId(id, importer) {
      return importer?.startsWith(root) && !/^[./\0]/.test(id) ? this.resolve(id, join(ROOT, 'index.html')) : null;
    },
  };
  const dist = join(root, 'dist');
  await build({
    root,
    base: './',
    configFile: false,
    logLevel: 'silent',
    plugins: [ours],
    build: { outDir: dist, target: 'es2022' },
  });
  return dist;
}

const SEEDED = Object.keys(TELLTALES).map((name) => [name, name === 'manifold-3d' ? 'manifold-3d/manifold' : name]);

describe('the budget bites', () => {
  test.each(SEEDED)('where %s is imported outright', async (name, module) => {
    const script = `import * as all from '${module}'; globalThis.kept = { ...all };`;
    expect(firstLoad(await builtPage(`outright-${name}`, script)).heavy).toEqual([name]);
  });

  test('not where one is imported when needed', async () => {
    const script = `globalThis.make = () => import('pdf-lib').then((all) => ({ ...all }));`;
    const dist = await builtPage('when-needed', script);
    const { heavy, gzipped } = firstLoad(dist);
    expect(heavy).toEqual([]);
    expect(gzipped).toBeLessThan(5_000);
    const chunks = readdirSync(join(dist, 'assets')).map((file) => join(dist, 'assets', file));
    expect(loaded(dist, chunks).heavy).toEqual(['pdf-lib']);
  });

  test('where a script behind another one brings it, and counts both', async () => {
    const shared = `export const filler = ${JSON.stringify(Array.from({ length: 4000 }, (_, i) => (i * i * 7919) % 10007))};`;
    const root = join(folder, 'behind');
    mkdirSync(join(root, 'assets'), { recursive: true });
    writeFileSync(join(root, 'index.html'), '<script type="module" crossorigin src="./assets/a.js"></script>');
    writeFileSync(join(root, 'assets/a.js'), 'import{filler as f}from"./b.js";import("./late.js");console.log(f)');
    writeFileSync(join(root, 'assets/b.js'), `import"./c.js";${shared}`);
    writeFileSync(join(root, 'assets/c.js'), `console.log("${TELLTALES['pdf-lib']}")`);
    const { files, gzipped, heavy } = firstLoad(root);
    expect(files).toEqual(['assets/a.js', 'assets/b.js', 'assets/c.js']);
    expect(heavy).toEqual(['pdf-lib']);
    expect(gzipped).toBeGreaterThan(5_000);
  });

  test('where nothing was built, or the sources are newer, with the remedy', () => {
    expect(staleness(ROOT, join(folder, 'nowhere'))).toBe('dist/ is missing: run npm run build first.');
    const old = join(folder, 'old');
    mkdirSync(old);
    writeFileSync(join(old, 'index.html'), '');
    utimesSync(join(old, 'index.html'), 1, 1);
    expect(staleness(ROOT, old)).toMatch(/^dist\/ is older than shared\/.*: run npm run build first\.$/);
  });
});
