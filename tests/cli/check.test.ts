import { cpSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { check } from '../../geometry';
import { loadLayout } from '../layouts/load';
import { type Bench, bench, GOOD, UNROUTED } from './bench';

let b: Bench;
beforeAll(() => {
  b = bench();
});
afterAll(() => b.clear());

describe('check', () => {
  test('of a header that holds: 0, and lengths and clearances in columns', async () => {
    const { code, out, err } = await b.evenrun('check', GOOD);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('Every rule holds.');
    expect(out).toMatch(/^ {2}runner +length mm +from (target|mean) +bends +turned$/m);
    expect(out).toMatch(/^ {2}r1 +\d+\.\d{3} +[+-]\d+\.\d{3} +\d+ +\d+\.\d°$/m);
    expect(out).toMatch(/^ {2}tube to tube +\d+\.\d\d +\d+\.\d\d +\d+\.\d\d +r\d and r\d$/m);
    expect(out).not.toMatch(/[ \t]$/m);
  });

  test('of one that is not routed: 1, and what is wrong comes first', async () => {
    const { code, out, err } = await b.evenrun('check', UNROUTED);
    expect([code, err]).toEqual([1, '']);
    expect(out.split('\n').slice(2, 5)).toEqual([
      '3 findings',
      '  routed  Runner r1 is not routed: give it points, or let the router lay it.',
      '          at runners/r1',
    ]);
  });

  test('--json prints one object, the report as the kernel made it', async () => {
    const { code, out } = await b.evenrun('check', GOOD, '--json');
    expect(code).toBe(0);
    const report = JSON.parse(out);
    expect(Object.keys(report)).toEqual(['ok', 'problems', 'runners', 'groups', 'clearance']);
    expect(report).toEqual(JSON.parse(JSON.stringify(check(loadLayout('known', 'c6-i3-3-1').design))));
    expect(Object.keys(report.clearance)).toEqual(['tubeToTube', 'surroundings', 'mergeBodies']);
  });

  test('reads a mesh from beside the design, and says so where it is missing', async () => {
    const name = 'c9-transverse-mesh-bay.evenrun.json';
    cpSync(`tests/layouts/known/${name}`, join(b.folder, name));
    cpSync('tests/layouts/known/bay.stl', join(b.folder, 'bay.stl'));
    expect((await b.evenrun('check', name)).code).toBe(0);
    rmSync(join(b.folder, 'bay.stl'));
    const { code, out } = await b.evenrun('check', name);
    expect(code).toBe(1);
    expect(out).toMatch(/document +The mesh bay\.stl .* is not loaded/);
  });

  test('--help and --version go to standard output and are no failure', async () => {
    expect(await b.evenrun('--version')).toEqual({ code: 0, out: '0.1.0\n', err: '' });
    const help = await b.evenrun('--help');
    expect([help.code, help.err]).toEqual([0, '']);
    for (const command of ['check', 'balance', 'route', 'shop']) expect(help.out).toContain(command);
  });
});
