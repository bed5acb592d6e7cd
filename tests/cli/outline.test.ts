import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { encode } from 'jpeg-js';
import { PNG } from 'pngjs';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Loop, Raster } from '../../geometry';
import { parseDesign } from '../../shared/design/parse';
import { writeDesign } from '../../shared/design/write';
import { dxf, polyline } from '../formats/dxf/drawn';
import { DESIGN, HOLES, LOOPS, OUTLINE } from '../geometry/flange/drawings';
import * as d from '../geometry/trace/drawn';
import { type Bench, bench } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
  writeFileSync(at('f.json'), writeDesign(DESIGN));
});
afterEach(() => b.clear());
const at = (name: string) => join(b.folder, name);
const put = (name: string, loops: readonly Loop[], unit: number | null = 4) =>
  writeFileSync(
    at(name),
    dxf(
      loops.map((loop) => polyline(loop)),
      unit,
    ),
  );
const outline = (...args: string[]) => b.evenrun('outline', 'f.json', '--flange', 'f1', ...args, '-o', 'out.json');
const written = () => parseDesign(readFileSync(at('out.json'), 'utf8'));

describe('outline from a DXF', () => {
  test('with holes and openings: 0, what was found and how well it fits', async () => {
    put('f.dxf', LOOPS);
    const { code, out, err } = await outline('--dxf', 'f.dxf', '--fasteners', '--openings');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/outline +300\.00 × 70\.00 mm, 8 straights and arcs/);
    expect(out).toMatch(
      /opening of p2 +rounded rectangle, 40 × 34 mm, corners 8 mm, its middle 0\.00 mm from the port/,
    );
    expect(out).toMatch(/0\.00 mm off the ports in the mean/);
    expect(out).toMatch(/Taken: the outline, 3 holes as fasteners, 3 openings\. Written to out\.json/);
    const [flange] = written().flanges!;
    expect(flange!.outline).toHaveLength(OUTLINE.length);
    expect(flange!.fasteners!.map(({ thread }) => thread)).toEqual(['M8', 'M10', 'M8']);
    expect(written().ports).toEqual(DESIGN.ports);
  });

  test('in inches, which must be said', async () => {
    put(
      'f.dxf',
      LOOPS.map((loop) => loop.map(([x, y, k]): Loop[number] => [x / 25.4, y / 25.4, k])),
      1,
    );
    const asked = await outline('--dxf', 'f.dxf');
    expect(asked.code).toBe(2);
    expect(asked.err).toMatch(/f\.dxf: it says that it is in inches.* \(--unit mm or --unit in\)\n$/);
    expect(existsSync(at('out.json'))).toBe(false);
    expect((await outline('--dxf', 'f.dxf', '--unit', 'in', '--json')).code).toBe(0);
    const xs = written().flanges![0]!.outline!.map(([x]) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(300, 3);
    const wrong = await outline('--dxf', 'f.dxf', '--unit', 'mm');
    expect(wrong.err).toMatch(/check its unit or scale/);
  });

  test('by an offset', async () => {
    put(
      'f.dxf',
      LOOPS.map((loop) => loop.map(([x, y, k]): Loop[number] => [x + 10, y - 4, k])),
    );
    const { code, out } = await outline('--dxf', 'f.dxf', '--offset=-10,4', '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ fit: null, shift: [-10, 4], mirrored: false });
    expect(written().flanges![0]!.outline).toEqual(OUTLINE);
  });
});

describe('outline from a picture', () => {
  const metal = d.without(
    d.roundedRectangle(-90, 0, 300, 70, 10),
    d.disc(0, 0, 18),
    d.roundedRectangle(-90, 3, 40, 34, 8),
    d.bar(-191, 0, -179, 0, 16),
    ...HOLES.map(([x, y, diameter]) => d.disc(x, y, diameter / 2)),
  );
  const scan: Raster = d.drawn({
    width: 320,
    height: 90,
    dpi: 150,
    shape: (x, y) => metal(x - 250, y - 45),
    noise: 5,
    seed: 7,
  });
  const rgba = (): Buffer => {
    const data = Buffer.alloc(4 * scan.data.length, 255);
    for (const [k, v] of scan.data.entries()) data.fill(v, 4 * k, 4 * k + 3);
    return data;
  };
  const between = ['--between', '20,10,1520,10', '--distance', '10 in'];

  const writePng = (name: string): void => {
    const png = new PNG({ width: scan.width, height: scan.height });
    png.data = rgba();
    writeFileSync(at(name), PNG.sync.write(png));
  };

  test('PNG and JPEG: holes within 0.1 mm', async () => {
    writePng('scan.png');
    writeFileSync(at('scan.jpg'), encode({ width: scan.width, height: scan.height, data: rgba() }, 90).data);
    for (const file of ['scan.png', 'scan.jpg']) {
      const { code, out, err } = await outline('--picture', file, ...between, '--fasteners');
      expect([code, err]).toEqual([0, '']);
      expect(out).toMatch(/Traced what is darker than 13\d of 255, 150\.0 dots an inch/);
      for (const [k, { position, hole }] of written().flanges![0]!.fasteners!.entries()) {
        const [x, y, diameter] = HOLES[k]!;
        expect(Math.hypot(position[0] - (500 - x), position[2] - (30 + y))).toBeLessThan(0.1);
        expect(Math.abs(hole - diameter)).toBeLessThan(0.1);
      }
    }
  });

  test('a distance that is wrong is told from ports that are wrong', async () => {
    writePng('scan.png');
    const { code, out } = await outline('--picture', 'scan.png', '--between', '20,10,1520,10', '--distance', '247.65');
    expect(code).toBe(0);
    expect(out).toMatch(/At 1\.02[56] times it fits within 0\.0\d mm: check the distance that set its scale/);
    expect(out).not.toMatch(/measure the port again/);
  });

  test.each([
    ['-5', /--distance: found "-5"; allowed: a length above 0/],
    ['0', /--distance: found "0"; allowed: a length above 0/],
    ['4', /a pixel would be 0\.0027 mm, 9525 dots an inch.*check the two points and their distance/],
  ])('a distance of %s is refused for what it is', async (distance, words) => {
    writePng('scan.png');
    const { code, err } = await outline(
      '--picture',
      'scan.png',
      '--between',
      '20,10,1520,10',
      `--distance=${distance}`,
    );
    expect(code).toBe(2);
    expect(err).toMatch(words);
  });

  test('a picture cut short says so, in no library’s words', async () => {
    writePng('scan.png');
    writeFileSync(at('scan.jpg'), encode({ width: scan.width, height: scan.height, data: rgba() }, 90).data);
    for (const file of ['scan.png', 'scan.jpg']) {
      const whole = readFileSync(at(file));
      writeFileSync(at(file), whole.subarray(0, Math.floor(whole.length / 3)));
      const { code, err } = await outline('--picture', file, ...between);
      expect(code).toBe(2);
      expect(err).toMatch(/: the picture ends too soon; copy or save it again\n$/);
    }
  });

  test('a picture that claims to be huge is refused before it is unpacked', async () => {
    const png = PNG.sync.write(new PNG({ width: 2, height: 2 }));
    png.writeUInt32BE(100_000, 16);
    png.writeUInt32BE(100_000, 20);
    writeFileSync(at('bomb.png'), png);
    const { code, err } = await outline('--picture', 'bomb.png', ...between);
    expect(code).toBe(2);
    expect(err).toMatch(/100000 × 100000 pixels, at most 40 million are read/);
  });
});

test.each<[string, string[], RegExp]>([
  ['neither', [], /one of --dxf and --picture is wanted/],
  ['both', ['--dxf', 'a', '--picture', 'b'], /one of --dxf and --picture is wanted/],
  ['no scale', ['--picture', 'a.png'], /--between X1,Y1,X2,Y2 names two of its points/],
  [
    'half a scale',
    ['--picture', 'f.json', '--between', '1,2,3', '--distance', '5'],
    /--between: found "1,2,3"; allowed: four/,
  ],
  ['no length', ['--picture', 'f.json', '--between', '1,2,3,4', '--distance', 'far'], /--distance: /],
  ['no picture', ['--picture', 'f.json', '--between', '1,2,90,4', '--distance', '5'], /neither a PNG nor a JPEG/],
  ['no DXF', ['--dxf', 'f.json'], /it is not a DXF file/],
  ['no such file', ['--dxf', 'no.dxf'], /no such file/],
  ['a unit of a picture', ['--picture', 'a', '--unit', 'mm'], /--unit belongs to --dxf/],
  ['a strange unit', ['--dxf', 'f.json', '--unit', 'ft'], /--unit: found "ft"; allowed: mm or in/],
  ['a turn alone', ['--dxf', 'a', '--turn', '3'], /--turn belongs to --offset/],
])('%s: 2, one line, nothing written', async (_, args, words) => {
  const { code, err } = await outline(...args);
  expect(code).toBe(2);
  expect(err).toMatch(words);
  expect(err.trimEnd()).not.toContain('\n');
  expect(existsSync(at('out.json'))).toBe(false);
});

test('no such flange: 2', async () => {
  put('f.dxf', LOOPS);
  const { code, err } = await b.evenrun('outline', 'f.json', '--flange', 'x', '--dxf', 'f.dxf', '-o', 'out.json');
  expect(code).toBe(2);
  expect(err).toMatch(/flanges\/x: found no such flange; allowed: one of "f1"/);
});
