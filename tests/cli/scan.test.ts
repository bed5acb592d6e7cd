/** `scan`: a mesh of any kind beside a design, read back by `check`; and what it refuses. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { tetrahedronGlb, tetrahedronPly, text } from '../formats/mesh/make';
import { type Bench, bench, GOOD } from './bench';

let b: Bench;
const at = (name: string): string => join(b.folder, name);
beforeAll(() => {
  b = bench();
  writeFileSync(at('bay.ply'), tetrahedronPly('little'));
  writeFileSync(at('bay.glb'), tetrahedronGlb());
  writeFileSync(at('torn.ply'), tetrahedronPly('little').slice(0, -5));
  writeFileSync(at('far.obj'), text('v 0 0 0\nv 90000 0 0\nv 0 90000 0\nf 1 2 3\n'));
});
afterAll(() => b.clear());

const scan = (...args: string[]) => b.evenrun('scan', GOOD, ...args);
const surroundings = (name: string) => JSON.parse(readFileSync(at(name), 'utf8')).surroundings;

describe('scan', () => {
  test('adds it, says what was read, and check reads it', async () => {
    const args = ['--file', 'bay.ply', '--unit', 'cm', '--kind', 'brake line', '-o', 'out.json'];
    const { code, out, err } = await scan(...args);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('bay.ply: PLY, 4 triangles, read in cm');
    expect(out).toContain('3 x 4 x 5 units: as mm 5 mm, as cm 5 cm');
    expect(out).toContain('It stands from 0.0, 0.0, 0.0 to 30.0, 40.0, 50.0 mm as "bay"');
    expect(out).toContain('Clearance 40 mm, as proposed for brake-line: common practice');
    expect(surroundings('out.json').at(-1)).toEqual({
      id: 'bay',
      shape: 'mesh',
      file: 'bay.ply',
      unit: 'cm',
      clearance: 40,
      kind: 'brake-line',
    });
    expect((await b.evenrun('check', 'out.json')).err).toBe('');
  });

  test('GLB is in metres; three points place it, and say how well', async () => {
    const points = ['--points', '0,0,0;3,0,0;0,4,0', '--at', '1000,0,0;1000,3000,0;-2999,0,1'];
    const { code, out } = await scan('--file', 'bay.glb', '--id', 'scan', ...points, '-o', 'glb.json', '--json');
    expect(code).toBe(0);
    const { unit, posed, surrounding } = JSON.parse(out);
    expect(unit).toBe('m');
    expect(Math.max(...posed.residuals)).toBeLessThan(1);
    expect(Math.max(...posed.residuals)).toBeGreaterThan(0.1);
    expect(posed.warning).toBeNull();
    expect(surrounding.pose.x[1]).toBeCloseTo(1, 3);
  });

  test('GLB in another unit is read as asked, and that is said; a kind of one’s own comes with its clearance', async () => {
    const asked = ['--unit', 'mm', '--kind', 'shield', '--clearance', '3'];
    const { code, out } = await scan('--file', 'bay.glb', ...asked, '-o', 'glb-mm.json');
    expect(code).toBe(0);
    expect(out).toContain('GLB is in metres by its standard, and was read in mm as asked');
    expect(surroundings('glb-mm.json').at(-1)).toMatchObject({ unit: 'mm', kind: 'shield', clearance: 3 });
  });

  test('one of the same name is replaced, and keeps its clearance; another is added beside it', async () => {
    await scan('--file', 'bay.ply', '--unit', 'mm', '--id', 'b', '--clearance', '7', '--thin', '1', '-o', 'one.json');
    const count = surroundings('one.json').length;
    const crop = ['--crop', '0,0,0,90,90,90'];
    expect(
      (await b.evenrun('scan', 'one.json', '--file', 'bay.ply', '--unit', 'in', '--id', 'b', ...crop, '-o', 'two.json'))
        .code,
    ).toBe(0);
    expect(surroundings('two.json')).toHaveLength(count);
    expect(surroundings('two.json').at(-1)).toMatchObject({
      unit: 'in',
      clearance: 7,
      thin: 1,
      crop: [
        [0, 0, 0],
        [90, 90, 90],
      ],
    });
    await b.evenrun('scan', 'two.json', '--file', 'bay.ply', '--unit', 'in', '-o', 'three.json');
    await b.evenrun('scan', 'three.json', '--file', 'bay.ply', '--unit', 'in', '-o', 'three.json');
    expect(
      surroundings('three.json')
        .slice(count)
        .map((s: { id: string }) => s.id),
    ).toEqual(['bay', 'bay 2']);
  });

  test('the mesh is copied beside the design, never over another', async () => {
    mkdirSync(at('else'));
    const args = ['--file', 'bay.ply', '--unit', 'mm', '-o', join('else', 'out.json')];
    const { out } = await scan(...args);
    expect(out).toMatch(/Copied to .*else.bay\.ply, beside the design/);
    expect(existsSync(at(join('else', 'bay.ply')))).toBe(true);
    expect((await scan(...args)).out).not.toContain('Copied');
    writeFileSync(at(join('else', 'bay.ply')), 'another');
    const { code, err } = await scan(...args);
    expect(code).toBe(2);
    expect(err).toMatch(/another file of this name/);
    expect(readFileSync(at(join('else', 'bay.ply')), 'utf8')).toBe('another');
  });

  test.each<[string, string[], RegExp]>([
    ['no unit', ['--file', 'bay.ply'], /--unit: bay\.ply does not say its unit; allowed: mm, cm, m, in/],
    ['an odd unit', ['--file', 'bay.ply', '--unit', 'feet'], /--unit: found "feet"/],
    [
      'a kind misspelt',
      ['--file', 'bay.ply', '--unit', 'mm', '--kind', 'brakeline'],
      /--kind: found "brakeline".*brake-line.*or give --clearance/,
    ],
    ['no file', ['--file', 'none.ply', '--unit', 'mm'], /none\.ply: no such file/],
    ['a torn one', ['--file', 'torn.ply', '--unit', 'mm'], /torn\.ply: it is cut short/],
    [
      'metres that are millimetres',
      ['--file', 'far.obj', '--unit', 'm'],
      /far\.obj: it reaches 90 km from its origin in that unit/,
    ],
    [
      'a crop beside it',
      ['--file', 'bay.ply', '--unit', 'mm', '--crop', '9,9,9,10,10,10'],
      /--crop: nothing.*0,0,0,3,4,5/,
    ],
    ['a crop of five numbers', ['--file', 'bay.ply', '--unit', 'mm', '--crop', '9,9,9,10,10'], /--crop: .*six numbers/],
    [
      'points without places',
      ['--file', 'bay.ply', '--unit', 'mm', '--points', '0,0,0;1,0,0;0,1,0'],
      /--points and --at belong together/,
    ],
    [
      'points on a line',
      ['--file', 'bay.ply', '--unit', 'mm', '--points', '0,0,0;1,0,0;2,0,0', '--at', '0,0,0;1,0,0;0,1,0'],
      /--points: .*on one line/,
    ],
    [
      'two points',
      ['--file', 'bay.ply', '--unit', 'mm', '--points', '0,0,0;1,0,0', '--at', '0,0,0;1,0,0;0,1,0'],
      /found 2 points/,
    ],
    ['a clearance below nothing', ['--file', 'bay.ply', '--unit', 'mm', '--clearance', '-1'], /clearance/],
  ])('refuses %s, and writes nothing', async (_, args, why) => {
    const { code, err } = await scan(...args, '-o', 'refused.json');
    expect(code).toBe(2);
    expect(err).toMatch(why);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(existsSync(at('refused.json'))).toBe(false);
  });
});
