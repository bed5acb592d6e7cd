import { createHash } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Bench, bench, GOOD, UNROUTED } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
});
afterEach(() => b.clear());

const at = (...parts: string[]) => join(b.folder, ...parts);
const hashes = () =>
  b
    .listing()
    .filter((name) => /\.(csv|stl|pdf|svg|dxf)$|manifest/.test(name) && statSync(at(name)).isFile())
    .map((name) => [
      name,
      createHash('sha256')
        .update(readFileSync(at(name)))
        .digest('hex'),
    ]);

/** The good design without its last runner. */
function withoutLast(): string {
  const design = JSON.parse(readFileSync(at(GOOD), 'utf8'));
  design.runners.pop();
  writeFileSync(at('two.evenrun.json'), JSON.stringify(design));
  return 'two.evenrun.json';
}

describe('shop', () => {
  test('writes the folder, whole, and the same over an earlier run', async () => {
    const first = await b.evenrun('shop', GOOD, '-o', 'out');
    expect([first.code, first.err]).toEqual([0, '']);
    const before = hashes();
    expect(before.map(([name]) => name)).toEqual(
      [
        'bend-schedule.csv',
        'bill-of-materials.csv',
        'check-heights.csv',
        'clearances.csv',
        'collectors/m1 cone.stl',
        'collectors/m1 filler.stl',
        'collectors/m1 outlet.stl',
        'collectors/m1 plate-r12.dxf',
        'collectors/m1 plate.dxf',
        'collectors/m1 plate.stl',
        'cut-list.csv',
        'header.stl',
        'intersection-points.csv',
        'joints.csv',
        'manifest.json',
        'packet.pdf',
        'pieces.csv',
        'reach.csv',
        'runners/r1.stl',
        'runners/r2.stl',
        'runners/r3.stl',
        'start-clocking.csv',
        'stock.csv',
      ].map((n) => `out/${n}`),
    );
    const manifest = JSON.parse(readFileSync(at('out/manifest.json'), 'utf8'));
    const sums = Object.fromEntries(before.map(([name, sum]) => [name!.slice('out/'.length), sum]));
    for (const file of manifest.files) expect(sums[file.name]).toBe(file.sha256);

    expect((await b.evenrun('shop', GOOD, '-o', 'out')).code).toBe(0);
    expect(hashes()).toEqual(before);
    expect(b.listing().filter((name) => name.includes('.tmp'))).toEqual([]);
  });

  test('prints on the paper asked for', async () => {
    const pageOf = async (...options: string[]) => {
      expect((await b.evenrun('shop', GOOD, '-o', 'out', ...options)).code).toBe(0);
      const [page] = (await PDFDocument.load(readFileSync(at('out/packet.pdf')))).getPages();
      return [page!.getWidth(), page!.getHeight()].map((points) => Math.round((points * 254) / 72) / 10);
    };
    expect(await pageOf()).toEqual([210, 297]);
    expect(await pageOf('--paper', 'Letter', '--paper-thickness', '0.08')).toEqual([215.9, 279.4]);
  });

  test('of a header that fails writes what can be made, says what not, and exits 1', async () => {
    const { code, out } = await b.evenrun('shop', UNROUTED, '-o', 'out');
    expect(code).toBe(1);
    expect(out).toMatch(/Left out\n +runner r1 .*not routed/);
    expect(existsSync(at('out/manifest.json'))).toBe(true);
    expect(existsSync(at('out/runners/r1.stl'))).toBe(false);
  });

  test('keeps what is not ours beside it, and writes into an empty folder', async () => {
    mkdirSync(at('out'));
    expect((await b.evenrun('shop', GOOD, '-o', 'out')).code).toBe(0);
    writeFileSync(at('out/notes.txt'), 'mine');
    expect((await b.evenrun('shop', GOOD, '-o', 'out')).code).toBe(0);
    expect(readFileSync(at('out/notes.txt'), 'utf8')).toBe('mine');
  });

  test('takes away what an earlier run wrote and this one does not, unless someone changed it', async () => {
    await b.evenrun('shop', GOOD, '-o', 'out');
    const { out } = await b.evenrun('shop', withoutLast(), '-o', 'out');
    expect(out).toContain('Removed, of an earlier run: runners/r3.stl');
    expect(existsSync(at('out/runners/r3.stl'))).toBe(false);

    await b.evenrun('shop', GOOD, '-o', 'out');
    writeFileSync(at('out/runners/r3.stl'), 'repaired by hand');
    expect((await b.evenrun('shop', withoutLast(), '-o', 'out')).out).toContain('changed since: runners/r3.stl');
    expect(readFileSync(at('out/runners/r3.stl'), 'utf8')).toBe('repaired by hand');
  });

  test('a manifest that names files elsewhere leads nowhere', async () => {
    await b.evenrun('shop', GOOD, '-o', 'out');
    const mine = 'dear to me';
    writeFileSync(at('precious'), mine);
    const manifest = JSON.parse(readFileSync(at('out/manifest.json'), 'utf8'));
    const sum = createHash('sha256').update(mine).digest('hex');
    for (const name of ['../precious', at('precious'), 'runners/../../precious', '..'])
      manifest.files.push({ name, size: 10, sha256: sum });
    writeFileSync(at('out/manifest.json'), JSON.stringify(manifest));
    expect((await b.evenrun('shop', GOOD, '-o', 'out')).code).toBe(0);
    expect(readFileSync(at('precious'), 'utf8')).toBe(mine);
  });

  test.skipIf(process.getuid?.() === 0)('a folder that may not be written is left as it is', async () => {
    mkdirSync(at('locked'));
    chmodSync(at('locked'), 0o500);
    const { code, err } = await b.evenrun('shop', GOOD, '-o', 'locked/out');
    chmodSync(at('locked'), 0o700);
    expect([code, err.includes('permission denied')]).toEqual([2, true]);
  });

  test('an earlier run that stopped before its manifest is taken up again', async () => {
    await b.evenrun('shop', GOOD, '-o', 'out');
    const whole = hashes();
    for (const name of ['manifest.json', 'header.stl', 'runners/r2.stl']) rmSync(at(`out/${name}`));
    expect((await b.evenrun('shop', GOOD, '-o', 'out')).code).toBe(0);
    expect(hashes()).toEqual(whole);
  });

  test('a folder in the way is found before anything is moved', async () => {
    await b.evenrun('shop', GOOD, '-o', 'out');
    rmSync(at('out/runners/r2.stl'));
    mkdirSync(at('out/runners/r2.stl'));
    const before = hashes();
    const { code, err } = await b.evenrun('shop', withoutLast(), '-o', 'out');
    expect(code).toBe(2);
    expect(err).toMatch(/^evenrun: [^\n]*r2\.stl: not of an earlier run[^\n]*\n$/);
    expect(hashes()).toEqual(before);
    expect(b.listing().filter((name) => name.includes('.tmp'))).toEqual([]);
  });
});
