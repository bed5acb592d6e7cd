import { lstatSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { parseDesign } from '../../shared/design/parse';
import { type Bench, bench, GOOD, UNROUTED } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
});
afterEach(() => b.clear());

const at = (name: string) => join(b.folder, name);

/** The good design with one point of each runner pulled some millimetres away, or another length asked for. */
function pulled(name: string, length?: number): string {
  const design = JSON.parse(readFileSync(at(GOOD), 'utf8'));
  for (const runner of design.runners) runner.points[1][1] += 6;
  for (const group of Object.values<{ length: number | null }>(design.groups)) group.length = length ?? group.length;
  writeFileSync(at(name), JSON.stringify(design));
  return name;
}

describe('balance', () => {
  test('of a header pulled out of shape: 0, and what it writes holds to a thousandth', async () => {
    const name = pulled('pulled.json');
    expect((await b.evenrun('check', name)).code).toBe(1);
    const { code, out, err } = await b.evenrun('balance', name, '-o', 'out.json');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Balanced: written to out\.json$/m);
    expect(out).toMatch(/^ {2}r1 +\d+\.\d{3}$/m);
    const checked = await b.evenrun('check', 'out.json', '--json');
    expect(checked.code).toBe(0);
    for (const { spread } of JSON.parse(checked.out).groups) expect(spread).toBeLessThan(0.001);
  });

  test('--json adds to the report how far and where to', async () => {
    const { code, out } = await b.evenrun('balance', pulled('pulled.json'), '-o', 'out.json', '--json');
    const answer = JSON.parse(out);
    expect([code, answer.ok, answer.output]).toEqual([0, true, 'out.json']);
    expect(answer.moved.map((m: { id: string }) => m.id)).toEqual(['r1', 'r2', 'r3']);
  });

  test('to a length out of reach: 1, the best attempt written, what stops it said', async () => {
    const { code, out } = await b.evenrun('balance', pulled('short.json', 300), '-o', 'out.json');
    expect(code).toBe(1);
    expect(out).toMatch(/balance +Runner r1 is [\d.]+ mm longer than/);
    expect(out).toContain('What stands at its limit');
    expect(out).toMatch(/^Best attempt, not every rule holds: written to out\.json$/m);
    expect(parseDesign(readFileSync(at('out.json'), 'utf8')).runners).toHaveLength(3);
  });

  test('of one that is not routed: 1, and says so', async () => {
    const { code, out } = await b.evenrun('balance', UNROUTED, '-o', 'out.json');
    expect([code, out.includes('Runner r1 is not routed')]).toEqual([1, true]);
  });

  test('over its own input, and through a link, which stays a link', async () => {
    const name = pulled('pulled.json');
    symlinkSync('pulled.json', at('link.json'));
    expect((await b.evenrun('balance', name, '-o', 'link.json')).code).toBe(0);
    expect(lstatSync(at('link.json')).isSymbolicLink()).toBe(true);
    expect((await b.evenrun('check', name)).code).toBe(0);
    expect(b.listing().filter((entry) => entry.includes('.tmp'))).toEqual([]);
  });
});
