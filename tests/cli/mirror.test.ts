import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { parseDesign } from '../../shared/design/parse';
import { type Bench, bench, GOOD } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
});
afterEach(() => b.clear());
const at = (name: string) => join(b.folder, name);
const opposite = ['--cylinders', '1=4,2=5,3=6', '--point', '0,-300,0'];

/** A fixture without an engine names no number of cylinders: any may be opposite. */
test('the fixture says nothing against six cylinders', () => {
  expect(JSON.parse(readFileSync(at(GOOD), 'utf8')).engine?.cylinders ?? 6).toBeGreaterThanOrEqual(6);
});

describe('mirror', () => {
  test('adds a bank that holds: 0', async () => {
    const { surroundings: _, ...design } = JSON.parse(readFileSync(at(GOOD), 'utf8'));
    writeFileSync(at('bank.json'), JSON.stringify(design));
    const { code, out, err } = await b.evenrun('mirror', 'bank.json', ...opposite, '-o', 'out.json');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Mirrored: written to out\.json$/m);
    const { ports, runners } = parseDesign(readFileSync(at('out.json'), 'utf8'));
    expect(ports.map((p) => p.cylinder)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(runners.map((r) => r.id)).toEqual(['r1', 'r2', 'r3', 'r4', 'r5', 'r6']);
    expect((await b.evenrun('check', 'out.json')).code).toBe(0);
  });

  test.each([
    ['no cylinder opposite', ['--point', '0,-300,0'], /ports\/p1\/cylinder: found 1, with no cylinder opposite/],
    ['a plane through the bank', opposite.slice(0, 2), /ports\/p1\/position: found an image at/],
    ['half a vector', [...opposite.slice(0, 2), '--point', '0,1'], /--point: found "0,1"; allowed: three numbers/],
    ['no direction', [...opposite, '--normal', '0,0,0'], /--normal: found 0,0,0; allowed: a vector with a direction/],
    ['no pairs', ['--cylinders', '1-4'], /--cylinders: found "1-4"; allowed: pairs such as/],
  ])('%s: 2, one line, nothing written', async (_, args, line) => {
    const { code, err } = await b.evenrun('mirror', GOOD, ...args, '-o', 'out.json');
    expect(code).toBe(2);
    expect(err).toMatch(line);
    expect(err.trimEnd()).not.toContain('\n');
    expect(existsSync(at('out.json'))).toBe(false);
  });

  test('a drawn four is sized and becomes an eight, which is said: the README’s three lines', async () => {
    const lines = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8')
      .replaceAll('\\\n', ' ')
      .split('\n')
      .filter((line) => /^npm run -s evenrun -- (new --|size four|mirror four)/.test(line));
    expect(lines).toHaveLength(3);
    for (const line of lines) {
      const { code, out, err } = await b.evenrun(...line.split(/\s+/).slice(5));
      expect([code, err]).toEqual([0, '']);
      if (line.includes('mirror'))
        expect(out).toContain(
          'The engine has 8 cylinders now, in two banks; its firing order is left out: type the whole engine’s.',
        );
    }
    const { engine, runners } = parseDesign(readFileSync(at('eight.evenrun.json'), 'utf8'));
    expect(engine).toEqual({
      cylinders: 8,
      bore: 85,
      stroke: 88,
      rpm: [1500, 7000],
      banks: [
        [1, 2, 3, 4],
        [5, 6, 7, 8],
      ],
    });
    expect(runners).toHaveLength(12);
  });

  test('an engine that had the cylinders is as it was, and nothing is said of it', async () => {
    const design = JSON.parse(readFileSync(at(GOOD), 'utf8'));
    const engine = { cylinders: 6, firingOrder: [1, 2, 3, 4, 5, 6] };
    writeFileSync(at('bank.json'), JSON.stringify({ ...design, engine, surroundings: undefined }));
    const { code, out } = await b.evenrun('mirror', 'bank.json', ...opposite, '-o', 'out.json', '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out).notes).toBeUndefined();
    expect(parseDesign(readFileSync(at('out.json'), 'utf8')).engine).toEqual(engine);
    writeFileSync(at('bank.json'), JSON.stringify({ ...design, engine: { cylinders: 3 }, surroundings: undefined }));
    const grown = await b.evenrun('mirror', 'bank.json', ...opposite, '-o', 'out.json', '--json');
    expect(JSON.parse(grown.out).notes).toEqual(['The engine has 6 cylinders now, in two banks.']);
  });
});
