import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Bench, bench, GOOD } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
});
afterEach(() => b.clear());

/** The good design with a point of r1 pulled and another title. */
function edited(): string {
  const design = JSON.parse(readFileSync(join(b.folder, GOOD), 'utf8'));
  design.runners[0].points[1][1] += 6 + 1 / 3;
  design.title = 'Edited';
  writeFileSync(join(b.folder, 'edited.json'), JSON.stringify(design));
  return 'edited.json';
}

describe('compare', () => {
  test('a design with itself: 0', async () => {
    expect(await b.evenrun('compare', GOOD, GOOD)).toEqual({
      code: 0,
      out: 'The two designs are the same.\n',
      err: '',
    });
  });

  test('with an edited one: 1, each difference by its path, and what it does to the runner', async () => {
    const { code, out } = await b.evenrun('compare', GOOD, edited());
    expect(code).toBe(1);
    expect(out).toMatch(/^2 differences$/m);
    const place = String.raw`\[-?\d+(\.\d{1,3})?(,-?\d+(\.\d{1,3})?){2}\]`;
    expect(out).toMatch(new RegExp(`^ {2}runners/r1/points/1 +changed +${place} → ${place}$`, 'm'));
    // A third of a millimetre, to a thousandth.
    expect(out).toMatch(/points\/1 .* → \[[^,]*,-?\d+\.\d{3},/);
    expect(out).toMatch(/^ {2}title +changed +".*" → "Edited"$/m);
    expect(out).toMatch(/^ {2}r1 +\d+\.\d{3} → \d+\.\d{3} /m);
    expect(out).toMatch(/^ {2}r2 +\d+\.\d{3} {2}/m);
  });

  test('numbers that differ by less than is printed are printed in full', async () => {
    const design = JSON.parse(readFileSync(join(b.folder, GOOD), 'utf8'));
    const was = design.runners[0].points[1][1];
    design.runners[0].points[1][1] += 0.00004;
    writeFileSync(join(b.folder, 'edited.json'), JSON.stringify(design));
    const { out } = await b.evenrun('compare', GOOD, 'edited.json');
    expect(out).toContain(`,${was + 0.00004},`);
  });

  test('what came or went whole is told by its fields', async () => {
    const design = JSON.parse(readFileSync(join(b.folder, GOOD), 'utf8'));
    design.wrap = { thickness: 1.6, layers: 2, roll: 20 };
    design.sensors = [{ id: 'egt 1', kind: 'temperature', on: { runner: 'r1' }, at: 60, clock: -45 }];
    writeFileSync(join(b.folder, 'fitted.json'), JSON.stringify(design));
    const { code, out } = await b.evenrun('compare', GOOD, 'fitted.json');
    expect(code).toBe(1);
    expect(out).toMatch(/^ {2}wrap +added +thickness 1.6, layers 2, roll 20$/m);
    expect(out).toMatch(/^ {2}sensors\/egt 1 +added +kind "temperature", on \(runner "r1"\), at 60, clock -45$/m);
    design.sensors[0].clock = 30;
    design.sensors.push({ ...design.sensors[0], id: 'egt 2' });
    writeFileSync(join(b.folder, 'more.json'), JSON.stringify(design));
    const more = (await b.evenrun('compare', 'fitted.json', 'more.json')).out;
    expect(more).toMatch(/^ {2}sensors\/egt 1\/clock +changed +-45 → 30$/m);
    expect(more).toMatch(/^ {2}sensors\/egt 2 +added +kind "temperature", on \(runner "r1"\), at 60, clock 30$/m);
  });

  test('--json, and a file that is not there: 2', async () => {
    const { out } = await b.evenrun('compare', GOOD, edited(), '--json');
    const answer = JSON.parse(out);
    expect(answer.same).toBe(false);
    expect(answer.changes.map((c: { path: string }) => c.path).sort()).toEqual(['runners/r1/points/1', 'title']);
    // Exact, however the text rounds.
    const pulled = JSON.parse(readFileSync(join(b.folder, 'edited.json'), 'utf8')).runners[0].points[1];
    expect(answer.changes.find((c: { path: string }) => c.path !== 'title').after).toEqual(pulled);
    const { code, err } = await b.evenrun('compare', GOOD, 'none.json');
    expect([code, err]).toEqual([2, expect.stringContaining('none.json: no such file')]);
  });
});
