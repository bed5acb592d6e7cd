/**
 * The bank of the V8 example in its scanned bay, from check to a new layout: two bolts that the wrap would hide, told; what
 * must be reachable, refused; laid anew, all of it reachable. The scan is what its script makes.
 */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bayScan } from '../../scripts/bay';
import { type Bench, bench } from './bench';

const EXAMPLE = 'v8-left-bank-4-1.evenrun.json';
const SCAN = 'v8-bay.ply';
const REQUIRED = 'required.evenrun.json';
const LAID = 'laid.evenrun.json';
const HIDDEN = ['left flange bolt 6', 'left flange bolt 7'];

type Entry = { readonly id: string; readonly reach: string; readonly kind: string };
type Answer = {
  readonly ok: boolean;
  readonly problems: readonly { readonly rule: string; readonly where: string }[];
  readonly access: { readonly entries: readonly Entry[] };
  readonly removal: { readonly pieces: readonly { readonly slides: boolean; readonly leaves: boolean }[] };
};

let b: Bench;
beforeAll(() => {
  b = bench();
  for (const file of [EXAMPLE, SCAN]) cpSync(join('public/examples', file), join(b.folder, file));
  const design = JSON.parse(readFileSync(join(b.folder, EXAMPLE), 'utf8'));
  const required = { ...design, access: { ...design.access, required: true } };
  writeFileSync(join(b.folder, REQUIRED), JSON.stringify(required));
});
afterAll(() => b.clear());

const asked = async (file: string): Promise<Answer & { readonly code: number }> => {
  const { code, out } = await b.evenrun('check', file, '--json');
  return { code, ...(JSON.parse(out) as Answer) };
};
const reached = ({ access }: Answer, reach: string): string[] =>
  access.entries.filter((e) => e.reach === reach).map(({ id }) => id);

test('the scan is what its script makes, to the byte', () => {
  expect(Buffer.compare(readFileSync(join('public/examples', SCAN)), Buffer.from(bayScan()))).toBe(0);
});

test('as it comes every rule holds, all comes off, and two bolts are reached before wrapping only', async () => {
  const answer = await asked(EXAMPLE);
  expect([answer.code, answer.ok]).toEqual([0, true]);
  expect(reached(answer, 'before-wrapping')).toEqual(HIDDEN);
  expect(reached(answer, 'blocked')).toEqual([]);
  expect(answer.removal.pieces.map(({ slides, leaves }) => [slides, leaves])).toEqual([[true, true]]);
  const { out } = await b.evenrun('check', EXAMPLE);
  expect(out).toContain(`2 before wrapping only: ${HIDDEN.join(', ')}`);
}, 60_000);

test('where all must be reachable those two fail, and a layout is found in which nothing does', async () => {
  const before = await asked(REQUIRED);
  expect([before.code, before.ok]).toEqual([1, false]);
  expect(before.problems.map(({ rule, where }) => [rule, where])).toEqual([
    ['reach', 'flanges/left flange/fasteners/5'],
    ['reach', 'flanges/left flange/fasteners/6'],
  ]);
  const { code } = await b.evenrun('route', REQUIRED, '-o', LAID, '--rounds', '2', '--threads', '1');
  expect(code).toBe(0);
  const after = await asked(LAID);
  expect([after.code, after.problems]).toEqual([0, []]);
  expect([...reached(after, 'before-wrapping'), ...reached(after, 'blocked')]).toEqual([]);
}, 120_000);
