import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { check, lengthWindows, resolveHeader, roomReport } from '../../geometry';
import { parseDesign } from '../../shared/design/parse';
import { readMesh } from '../../src/formats/mesh/readMesh';
import { loadLayout } from '../layouts/load';
import { type Bench, bench, GOOD, UNROUTED } from './bench';

const SCAN = 'v8-bay.ply';

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
    expect(out).toMatch(/^ {2}runner +length mm +from (target|mean) +bends +turned +could be$/m);
    expect(out).toMatch(/^ {2}r1 +\d+\.\d{3} +[+-]\d+\.\d{3} +\d+ +\d+\.\d° +\d+\.\d{3} or longer$/m);
    expect(out).toMatch(/^ {2}tube to tube +\d+\.\d\d +\d+\.\d\d +\d+\.\d\d +r\d and r\d$/m);
    expect(out).not.toMatch(/[ \t]$/m);
    expect(out).not.toContain('cannot be made');
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

  test('--json prints one object, the report as the kernel made it, and the length windows beside it', async () => {
    const { code, out } = await b.evenrun('check', GOOD, '--json');
    expect(code).toBe(0);
    const { windows, parts, gaps, ...report } = JSON.parse(out);
    expect(parts).toEqual({ notMade: [], warnings: expect.any(Array) });
    const { design } = loadLayout('known', 'c6-i3-3-1');
    expect(windows).toEqual(JSON.parse(JSON.stringify(lengthWindows(design))));
    expect(Object.keys(report)).toEqual(['ok', 'problems', 'runners', 'groups', 'clearance']);
    const without = (entry: Record<string, unknown>) => ({ ...entry, window: undefined });
    const bare = { ...report, runners: report.runners.map(without), groups: report.groups.map(without) };
    expect(bare).toEqual(JSON.parse(JSON.stringify(check(design))));
    const least = Math.min(...gaps.map((g: { margin: number }) => g.margin));
    expect(gaps[0].margin).toBe(least);
    expect(least).toBeCloseTo(
      Math.min(report.clearance.tubeToTube.margin, report.clearance.surroundings?.margin ?? 99),
      6,
    );
    for (const r of report.runners) expect(r.window.shortest).toBeLessThan(r.length);
    const [group] = report.groups;
    expect(group.window.shortest).toBe(
      Math.max(...report.runners.map((r: { window: { shortest: number } }) => r.window.shortest)),
    );
    expect(Object.keys(report.clearance)).toEqual(['tubeToTube', 'surroundings', 'mergeBodies']);
  });

  test('of one that is not routed has the windows of all its runners', async () => {
    const { windows, runners } = JSON.parse((await b.evenrun('check', UNROUTED, '--json')).out);
    expect(runners).toEqual([]);
    expect(windows.runners.map((r: { id: string }) => r.id)).toEqual(['r1', 'r2', 'r3']);
    for (const r of windows.runners) expect(r.shortest).toBeGreaterThan(300);
  });

  test('of a length that no layout has: names the runner that sets the limit, and what can be had', async () => {
    const { design } = loadLayout('known', 'c6-i3-3-1');
    const [id = ''] = Object.keys(design.groups);
    const short = { ...design, groups: { [id]: { length: 300, tolerance: 1 } } };
    writeFileSync(join(b.folder, 'short.evenrun.json'), JSON.stringify(short));
    const [window] = lengthWindows(short).groups;
    const { code, out } = await b.evenrun('check', 'short.evenrun.json');
    expect(code).toBe(1);
    const limit = String(Number(window!.shortest!.toFixed(2)));
    expect(out).toContain(
      `300 mm is out of reach for group ${id}: runner ${window!.shortestBy} is ${limit} mm at the shortest found; ${limit} mm or longer can be had.`,
    );
    const balanced = await b.evenrun('balance', 'short.evenrun.json', '-o', 'out.evenrun.json', '--json');
    expect(balanced.code).toBe(1);
    const { problems } = JSON.parse(balanced.out);
    expect(problems.map((p: { message: string }) => p.message).join(' ')).toContain(
      `300 mm is out of reach for group ${id}: runner ${window!.shortestBy}`,
    );
  });

  test('of one that holds with parts that cannot be made: still 0, one line, and --json says which', async () => {
    const { design } = loadLayout('known', 'c6-i3-3-1');
    const [port, ...others] = design.ports;
    const runner = design.runners.find(({ from }) => 'port' in from && from.port === port!.id)!;
    const led = { ...design, ports: [{ ...port!, transition: { length: 400 } }, ...others] };
    writeFileSync(join(b.folder, 'led.evenrun.json'), JSON.stringify(led));
    const { code, out } = await b.evenrun('check', 'led.evenrun.json');
    expect(code).toBe(0);
    expect(out).toContain('Every rule holds.\n\n2 parts cannot be made; shop says which and why.\n\n');
    const json = await b.evenrun('check', 'led.evenrun.json', '--json');
    expect(json.code).toBe(0);
    const { ok, parts } = JSON.parse(json.out);
    expect(ok).toBe(true);
    expect(parts.notMade.map(({ part }: { part: string }) => part)).toEqual([
      `port ${port!.id} transition`,
      `runner ${runner.id}`,
    ]);
  });

  test('says nothing of a space that the design does not speak of', async () => {
    const { surroundings: _, flanges: __, ...bare } = loadLayout('known', 'c6-i3-3-1').design;
    writeFileSync(join(b.folder, 'bare.evenrun.json'), JSON.stringify(bare));
    const { out } = await b.evenrun('check', 'bare.evenrun.json');
    for (const head of ['Least gaps', 'Reach', 'Wrap', 'Getting it off', 'Sensors']) expect(out).not.toContain(head);
    const answer = JSON.parse((await b.evenrun('check', 'bare.evenrun.json', '--json')).out);
    expect(answer.gaps.length).toBeGreaterThan(0);
    for (const key of ['access', 'removal', 'sensors']) expect(answer).not.toHaveProperty(key);
  });

  test('says what is found about the space, section by section, and exits as the rules alone say', async () => {
    const example = JSON.parse(readFileSync('public/examples/v8-left-bank-4-1.evenrun.json', 'utf8'));
    const fitted = {
      ...example,
      wrap: { thickness: 1.6, layers: 2, roll: 20 },
      sensors: [{ id: 'egt 1', kind: 'temperature', on: { runner: 'r1' }, at: 60, clock: -45 }],
    };
    writeFileSync(join(b.folder, 'fitted.evenrun.json'), JSON.stringify(fitted));
    cpSync(`public/examples/${SCAN}`, join(b.folder, SCAN));
    const { code, out } = await b.evenrun('check', 'fitted.evenrun.json');
    expect(code).toBe(0);
    const heads = [
      'Tightest places, in',
      'Least gaps, in',
      'Reach',
      'Wrap, 0.063 in, 2 layers',
      'Getting it off',
      'Sensors, in',
    ];
    const places = heads.map((head) => out.indexOf(`\n\n${head}`));
    expect(Math.min(...places)).toBeGreaterThan(0);
    expect(places.toSorted((x, y) => x - y)).toEqual(places);
    expect(out).not.toMatch(/[ \t]$/m);

    const json = await b.evenrun('check', 'fitted.evenrun.json', '--json');
    expect(json.code).toBe(0);
    const { gaps, access, removal, sensors } = JSON.parse(json.out);
    const header = resolveHeader(parseDesign(JSON.stringify(fitted)));
    const { soup } = readMesh(SCAN, readFileSync(`public/examples/${SCAN}`));
    const room = JSON.parse(JSON.stringify(roomReport(header, new Map([[SCAN, soup]]))));
    expect({ gaps, access, removal, sensors }).toEqual({ ...room, gaps: room.gaps.gaps });
    expect(access.entries).toHaveLength(13);
    expect(sensors.map((s: { id: string }) => s.id)).toEqual(['egt 1']);
  }, 30_000);

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
