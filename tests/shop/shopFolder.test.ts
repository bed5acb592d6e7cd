import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { PDFDocument } from 'pdf-lib';
import { describe, expect, test } from 'vitest';
import { centerline, loopArea, measureMesh, resolveHeader, roomReport, tubeMeshVolume } from '../../geometry';
import { parseDesign } from '../../shared/design/parse';
import type { Design, Flange } from '../../shared/design/types';
import { writeDesign } from '../../shared/design/write';
import { VERSION } from '../../shared/version';
import { readCsv } from '../../src/formats/csv/readCsv';
import { readDxf } from '../../src/formats/dxf/read';
import { readStl } from '../../src/formats/stl/read';
import type { Manifest } from '../../src/shop/manifest';
import { type ShopFolder, shopFolder } from '../../src/shop/shopFolder';
import { loadLayout } from '../layouts/load';
import { ONE_BEND, oneRunner } from './designs';

const hash = (bytes: Uint8Array | string) => createHash('sha256').update(bytes).digest('hex');
const bytesOf = (folder: ShopFolder, name: string) => folder.files.find((f) => f.name === name)!.bytes;
const textOf = (folder: ShopFolder, name: string) => new TextDecoder().decode(bytesOf(folder, name));
const manifestIn = (folder: ShopFolder) => JSON.parse(textOf(folder, 'manifest.json')) as Manifest;

describe('the shop folder of a header that holds', () => {
  const design = loadLayout('known', 'c6-i3-3-1').design;

  test('has the same names and the same bytes every time', async () => {
    const [a, b] = [await shopFolder(design), await shopFolder(structuredClone(design))];
    expect(a.files.map((f) => f.name)).toEqual([
      'bend-schedule.csv',
      'start-clocking.csv',
      'intersection-points.csv',
      'cut-list.csv',
      'clearances.csv',
      'reach.csv',
      'pieces.csv',
      'joints.csv',
      'check-heights.csv',
      'stock.csv',
      'bill-of-materials.csv',
      'runners/r1.stl',
      'runners/r2.stl',
      'runners/r3.stl',
      'collectors/m1 filler.stl',
      'collectors/m1 plate.stl',
      'collectors/m1 cone.stl',
      'collectors/m1 outlet.stl',
      'header.stl',
      'collectors/m1 plate.dxf',
      'collectors/m1 plate-r12.dxf',
      'packet.pdf',
      'manifest.json',
    ]);
    for (const [i, file] of a.files.entries()) expect(hash(file.bytes)).toBe(hash(b.files[i]!.bytes));
    expect(a.problems).toEqual([]);
    expect(a.leftOut).toEqual([]);
  });

  test('its manifest tells the truth of every other file, and of the design', async () => {
    const folder = await shopFolder(design);
    const manifest = manifestIn(folder);
    expect(manifest.version).toBe(VERSION);
    expect(manifest.design).toEqual({ title: design.title, sha256: hash(writeDesign(design)) });
    const others = folder.files.filter((f) => f.name !== 'manifest.json');
    expect(manifest.files).toEqual(others.map((f) => ({ name: f.name, size: f.bytes.length, sha256: hash(f.bytes) })));
    expect(manifest.check).toEqual({ ok: true, problems: [] });
  });

  test('its manifest names what the contract has and this version cannot make', async () => {
    const names = manifestIn(await shopFolder(design)).notMade.map((n) => n.name);
    expect(names).toEqual(expect.arrayContaining(['header.step', 'header.3mf', 'header.glb']));
  });

  test('a collector’s plate is cut from a drawing: outline and a bore for each tube, as its solid has them', async () => {
    const folder = await shopFolder(design);
    const drawn = readDxf(bytesOf(folder, 'collectors/m1 plate.dxf'));
    const layers = drawn.loops.map((c) => c.layer).sort();
    expect(layers).toEqual(['OUTLINE', 'PORTS', 'PORTS', 'PORTS']);
    const [outline, ...bores] = drawn.loops
      .toSorted((a, b) => a.layer.localeCompare(b.layer))
      .map((c) => Math.abs(loopArea(c.loop)));
    const soup = readStl(bytesOf(folder, 'collectors/m1 plate.stl'));
    const triangles = Uint32Array.from({ length: soup.length / 3 }, (_, i) => i);
    const flat = outline! - bores.reduce((sum, area) => sum + area, 0);
    // Tubes of 1.5 mm wall end at a plate of twice that.
    expect(
      Math.abs(measureMesh({ positions: Float64Array.from(soup), triangles }).volume / (3 * flat) - 1),
    ).toBeLessThan(2e-3);
  });

  test('the header is its parts, one after another, not fused', async () => {
    const folder = await shopFolder(design);
    const parts = folder.files.filter(({ name }) => name.endsWith('.stl') && name !== 'header.stl');
    expect(parts.length).toBeGreaterThan(6);
    const soups = parts.map(({ bytes }) => [...readStl(bytes)]);
    expect(readStl(bytesOf(folder, 'header.stl'))).toEqual(Float32Array.from(soups.flat()));
  });

  test('a tube file holds the metal of its runner', async () => {
    const bend = oneRunner(ONE_BEND);
    const soup = readStl(bytesOf(await shopFolder(bend), 'runners/r1.stl'));
    const triangles = Uint32Array.from({ length: soup.length / 3 }, (_, i) => i);
    const expected = tubeMeshVolume(centerline(ONE_BEND.points, [60]), { outsideDiameter: 42.4, wall: 1.5 });
    expect(measureMesh({ positions: Float64Array.from(soup), triangles }).volume / expected).toBeCloseTo(1, 5);
  });
});

describe('the shop folder of a header in its bay', () => {
  const example = parseDesign(
    readFileSync(new URL('../../public/examples/v8-left-bank-4-1.evenrun.json', import.meta.url), 'utf8'),
  );
  const design: Design = {
    ...example,
    motion: { heat: { temperature: 600 } },
    wrap: { thickness: 1.6, layers: 2, roll: 20 },
    sensors: [{ id: 'egt 1', kind: 'temperature', on: { runner: 'r1' }, at: 60, clock: -45 }],
  };

  test('has its tables, as the kernel finds them, listed and the same every time; and its sheets', async () => {
    const [a, b] = [await shopFolder(design), await shopFolder(structuredClone(design))];
    const tables = ['clearances.csv', 'reach.csv', 'wrap.csv', 'sensors.csv', 'removal.csv'];
    for (const name of tables) {
      expect(hash(bytesOf(a, name)), name).toBe(hash(bytesOf(b, name)));
      expect(manifestIn(a).files.find((f) => f.name === name)?.sha256).toBe(hash(bytesOf(a, name)));
    }
    expect(hash(bytesOf(a, 'packet.pdf'))).toBe(hash(bytesOf(b, 'packet.pdf')));
    const { gaps, access } = roomReport(resolveHeader(design), new Map());
    expect(readCsv(textOf(a, 'clearances.csv')).map((r) => Number(r.margin))).toEqual(
      gaps!.gaps.map((g) => Number(g.margin.toFixed(8))),
    );
    expect(readCsv(textOf(a, 'reach.csv')).map((r) => r.id)).toEqual(access!.entries.map((e) => e.id));
    const pages = async (folder: ShopFolder) => (await PDFDocument.load(bytesOf(folder, 'packet.pdf'))).getPageCount();
    const { surroundings: _, flanges: __, wrap: ___, motion: ____, sensors: _____, ...bare } = design;
    const less = await shopFolder(bare);
    expect(less.files.map((f) => f.name).filter((name) => tables.includes(name))).toEqual(tables.slice(0, 2));
    expect(await pages(a)).toBeGreaterThan((await pages(less)) + 1);
  }, 60_000);
});

describe('what cannot be made is left out of every file and named', () => {
  test('a runner that is not routed', async () => {
    const folder = await shopFolder(loadLayout('public', 'p01-easy').design);
    expect(folder.files.map((f) => f.name)).not.toContain('runners/r1.stl');
    expect(textOf(folder, 'bend-schedule.csv')).toBe('runner,row,length,rotation,angle,radius\r\n');
    expect(folder.leftOut.map((n) => n.name)).toEqual(expect.arrayContaining(['runner r1', 'runner r2']));
    expect(manifestIn(folder).notMade[0]).toEqual({
      name: 'runner r1',
      why: 'In no table and no file, because it is not routed yet; give it points.',
    });
    expect(manifestIn(folder).check.ok).toBe(false);
  });

  test('a runner whose bends do not fit, beside one that is fine', async () => {
    const design = loadLayout('known', 'c6-i3-3-1').design;
    const [first, ...rest] = design.runners;
    // The first bend half a millimetre from the port: there is no room for its tangent.
    const [x, y, z] = first!.points![0]!;
    const points = first!.points!.with(1, [x, y + 0.5, z]);
    const folder = await shopFolder({ ...design, runners: [{ ...first!, points }, ...rest] });
    expect(folder.leftOut[0]!.name).toBe('runner r1');
    expect(folder.leftOut[0]!.why).toMatch(/straight 1 comes out at -\d+\.\d\d mm/);
    for (const name of ['bend-schedule.csv', 'start-clocking.csv', 'intersection-points.csv', 'cut-list.csv']) {
      expect(textOf(folder, name)).not.toMatch(/^r1,/m);
      expect(textOf(folder, name)).toMatch(/^r2,/m);
    }
    expect(folder.files.map((f) => f.name)).not.toContain('runners/r1.stl');
  });

  test('a bend tighter than the tube', async () => {
    const folder = await shopFolder(oneRunner({ ...ONE_BEND, radii: [20] }));
    expect(folder.leftOut[0]!.why).toMatch(/radius of 20 mm.*21\.2 mm/);
  });
});

test('the version is the package’s', () => {
  expect(VERSION).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version);
});

describe('flange drawings', () => {
  const withFlange = (more: Partial<Flange>, id = 'head'): Design => ({
    ...oneRunner(ONE_BEND),
    flanges: [{ id, ports: ['p1'], thickness: 10, fasteners: [-38, 38].map((x) => ({ position: [x, 0, 0], kind: 'stud', thread: 'M8', hole: 9 })), ...more }], // biome-ignore format: one line
  });

  test('two files for each, named by the flange, in the manifest', async () => {
    const folder = await shopFolder(withFlange({}));
    const names = manifestIn(folder).files.map((f) => f.name);
    expect(names).toEqual(expect.arrayContaining(['flange-head.dxf', 'flange-head-r12.dxf']));
    expect(textOf(folder, 'flange-head.dxf')).toContain('AC1015');
    expect(textOf(folder, 'flange-head-r12.dxf')).toContain('AC1009');
    expect(manifestIn(folder).notMade.map((n) => n.name)).not.toContain('flange-head.dxf');
  });

  test('one that cannot be cut is named with the reason and the place; all else is written', async () => {
    const crossed = [[-60, -60, 0], [60, 60, 0], [60, -60, 0], [-60, 60, 0]] as const; // biome-ignore format: one line
    const folder = await shopFolder(withFlange({ outline: crossed }));
    const names = folder.files.map((f) => f.name);
    expect(names).not.toContain('flange-head.dxf');
    expect(names).toEqual(
      expect.arrayContaining(['bend-schedule.csv', 'runners/r1.stl', 'header.stl', 'manifest.json']),
    );
    for (const name of ['flange-head.dxf', 'flange-head-r12.dxf']) {
      const missing = manifestIn(folder).notMade.find((n) => n.name === name);
      expect(missing?.why).toMatch(/crosses or touches itself.*\(flanges\/head\/outline\)/);
      expect(folder.leftOut.map((n) => n.name)).toContain(name);
    }
  });

  test('two flanges whose files would have one name', async () => {
    const design = withFlange({});
    const [flange] = design.flanges!;
    const folder = await shopFolder({ ...design, flanges: [flange!, { ...flange!, id: 'Head-R12' }] });
    const names = folder.files.map((f) => f.name.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
    expect(folder.leftOut.map((n) => n.name)).toEqual(['flange-Head-R12.dxf, of flange Head-R12']);
  });
});
