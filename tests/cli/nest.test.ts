/** `nest` by its words, its JSON and its refusals. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Bench, bench } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
  list('length,count\n1200,3\n900,5\n88.9,4\n2500,4\n');
});
afterEach(() => b.clear());

const list = (text: string) => writeFileSync(join(b.folder, 'list.csv'), text);
const nest = (...args: string[]) => b.evenrun('nest', 'list.csv', ...args);

test('the plan, what to buy, and that none is better', async () => {
  const { code, out, err } = await nest('--bar', '6000', '--bar', '3100x1');
  expect([code, err]).toEqual([0, '']);
  expect(out).toMatch(
    /^16 pieces, 18455\.6 mm in all; a cut takes 1\.5 mm, 5\.0 mm comes off both ends of every bar\n/,
  );
  expect(out).toMatch(/1 × +3100\.0 mm +from the shelf /);
  expect(out).toMatch(/To buy: 3 × 6000\.0 mm\nLength bought: 18000\.0 mm\. No plan has less: proved\.\n$/);
});

test('what comes out as JSON is the same plan, each piece once', async () => {
  const { code, out } = await nest('--bar', '6000@30', '--bar', '3000@14.5', '--json');
  const plan = JSON.parse(out);
  expect(code).toBe(0);
  expect([plan.least, plan.value, plan.bound, plan.proved]).toEqual(['money', 102.5, 102.5, true]);
  const cut = plan.used.flatMap(({ cuts }: { cuts: { piece: string }[] }) => cuts.map(({ piece }) => piece));
  expect(cut.sort()).toEqual(plan.pieces.map(({ id }: { id: string }) => id).sort());
});

test('kerf and end trim count', async () => {
  list('100,10');
  expect((await nest('--bar', '1000', '--kerf', '0', '--end-trim', '0')).out).toMatch(/To buy: 1 × 1000/);
  expect((await nest('--bar', '1000', '--kerf', '0.1', '--end-trim', '0')).out).toMatch(/To buy: 2 × 1000/);
  expect((await nest('--bar', '1000', '--kerf', '0', '--end-trim', '0.1')).out).toMatch(/To buy: 2 × 1000/);
});

test('lengths with units, semicolons, comments, one length a line', async () => {
  list('# tubes\n3 1/2 in;2\n\n"1 m"\n50\n');
  const { code, out } = await nest('--unit', 'in', '--bar', '236');
  expect(code).toBe(0);
  expect(out).toMatch(/^4 pieces, 96\.370 in in all/);
  list('250\n250\n');
  expect((await nest('--bar', '6000')).out).toMatch(/^2 pieces, 500\.0 mm in all/);
});

test('a shelf too small: the plan all the same, how many are left over, exit code 1', async () => {
  const { code, out } = await nest('--bar', '2600x2');
  expect(code).toBe(1);
  expect(out).toMatch(/Nothing to buy\.\n.*\nLeft over, 8 pieces: .* the shelf has no more/);
});

test.each([
  ['1200,0', [], /list\.csv, line 1: found a count of "0"; allowed: a whole number from 1/],
  ['1200,3\n-5,2', [], /list\.csv, line 2: found a length of "-5"; allowed: more than 0/],
  ['1200,3\nabc,2', [], /list\.csv, line 2: found "abc"/],
  ['1200,3,4', [], /list\.csv, line 1: found "1200,3,4"; allowed: a length and a count/],
  ['', [], /list\.csv: no piece in it/],
  ['100,10001', [], /more than 10000 pieces/],
  [
    '1200',
    ['--bar', '1000'],
    /line 1: 1200\.00 mm is 210\.00 mm more than the longest bar gives, 990\.00 mm of 1000\.00 mm; give a --bar of 1210\.00 mm/,
  ],
  ['12', ['--kerf', '20'], /line 1: 12\.00 mm is less than the kerf of 20\.00 mm/],
  ['12', ['--kerf', '-1'], /--kerf: found "-1"; allowed: 0 or more/],
  ['12', ['--end-trim', 'x'], /--end-trim: found "x"/],
  ['12', ['--end-trim', '500', '--bar', '1000'], /--end-trim: 500\.00 mm off both ends leaves nothing/],
  ['12', ['--bar', '6000x-2'], /--bar: found a count of "-2"/],
  ['12', ['--bar', '6000@cheap'], /--bar: found a price of "cheap"/],
  ['12', ['--bar', '6000', '--bar', '6000'], /--bar: "6000" is given twice/],
  ['12', ['--seconds', '0'], /--seconds: found "0"/],
  ['12', ['--unit', 'ft'], /--unit: found "ft"/],
] as const)('refused: %j %j', async (text, args, message) => {
  list(text);
  const { code, out, err } = await nest(...args);
  expect(err).toMatch(/^evenrun: [^\n]+\n$/);
  expect(err).toMatch(message);
  expect([code, out]).toEqual([2, '']);
});

test('no such list', async () => {
  const { code, err } = await b.evenrun('nest', 'none.csv');
  expect([code, err]).toEqual([2, expect.stringMatching(/none\.csv: no such file/)]);
});
