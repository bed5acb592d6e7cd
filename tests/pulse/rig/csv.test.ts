/** Tables read back to the very doubles, columns by the names of the contract; the account says what it was given. */
import { expect, test } from 'vitest';
import { readCsv } from '../../../src/formats/csv/readCsv';
import type { RigRun } from '../../../src/pulse/report';
import { accountText } from '../../../src/pulse/rig/accountText';
import { probesCsv, profileCsv, profilePath } from '../../../src/pulse/rig/csv';

const awkward = [0.1 + 0.2, 1 / 3, 1e-7, 1e9 / 7, 5e-324, -2.5e-11];
const column = (shift: number) => Float64Array.from(awkward, (_, i) => awkward[(i + shift) % awkward.length]!);
const columns = {
  ...{ pressure: column(0), velocity: column(1), temperature: column(2), density: column(3) },
  fractions: [column(4)],
};
const run: RigRun = {
  components: ['air', 'burnt'],
  times: column(5),
  probes: [
    { pipe: 'primary 1', x: 0.5, ...columns },
    { pipe: 'b', x: 0, ...columns },
  ],
  profile: [{ pipe: 'b', x: column(2), ...columns }],
  picture: null,
  mass: { initial: 2, final: 1.5, left: 0.5, fromWalls: 0, drift: 1.25e-15 },
  energy: { initial: 300, final: 200, left: 90, fromWalls: -10, drift: -3e-16 },
  ...{ time: 1, steps: 20, cellUpdates: 200, retries: 2 },
};

test('rows of probes', () => {
  const text = probesCsv(run);
  const names = ['pressure', 'velocity', 'temperature', 'density', 'burnt'];
  expect(text.split('\n')[0]).toBe(
    ['time', ...names.map((n) => `primary 1@0.5.${n}`), ...names.map((n) => `b@0.${n}`)].join(','),
  );
  const rows = readCsv(text);
  expect(rows.map((row) => Number(row.time))).toEqual([...run.times]);
  expect(rows.map((row) => Number(row['b@0.velocity']))).toEqual([...columns.velocity]);
  expect(rows.map((row) => Number(row['primary 1@0.5.burnt']))).toEqual([...columns.fractions[0]!]);
});

test('the profile', () => {
  const rows = readCsv(profileCsv(run));
  expect(Object.keys(rows[0]!)).toEqual(['pipe', 'x', 'pressure', 'velocity', 'temperature', 'density', 'burnt']);
  expect(rows.map((row) => [row.pipe, Number(row.x), Number(row.density)])).toEqual(
    awkward.map((_, i) => ['b', run.profile[0]!.x[i], columns.density[i]]),
  );
});

test('one gas has no further columns', () => {
  const bare = { ...columns, fractions: [] };
  const plain = { ...run, components: ['gas'], probes: [{ pipe: 'b', x: 1, ...bare }], profile: [] };
  expect(probesCsv(plain).split('\n')[0]).toBe('time,b@1.pressure,b@1.velocity,b@1.temperature,b@1.density');
  expect(profileCsv(plain)).toBe('pipe,x,pressure,velocity,temperature,density\n');
});

test('the profile’s name', () => {
  expect(['a.csv', 'x.csv/b.CSV', 'c.csv.csv'].map(profilePath)).toEqual([
    ...['a.profile.csv', 'x.csv/b.profile.csv', 'c.csv.profile.csv'],
  ]);
});

test('the account', () => {
  expect(accountText(run)).toBe(
    'mass: initial 2 kg, final 1.5 kg, left 0.5 kg, drift 1.25e-15\n' +
      'energy: initial 300 J, final 200 J, left 90 J, -10 J from walls, drift -3.00e-16\n' +
      '20 steps, 200 cell updates; 2 failed and done again smaller\n',
  );
});
