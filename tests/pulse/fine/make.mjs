/**
 * `node tests/pulse/fine/make.mjs [--times 8] [--in FOLDER] [NAME …]`: makes the fixtures anew. Builds fine.c with the machine's
 * C compiler, runs each rig of FOLDER/rigs (FOLDER: where this file lies) on a grid so many times finer and on one half as fine;
 * writes the finer one's pressures to FOLDER/NAME.csv and how far the two differ to FOLDER/change.json: rms in Pa, and that over
 * the peak of |p − ambient| at the probe; and how far fine.c itself is off on the rig's own cells, over that peak.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, solve } from './program.mjs';

const here = fileURLToPath(new URL('./', import.meta.url));

const words = process.argv.slice(2);
const option = (name, otherwise) => {
  const at = words.indexOf(name);
  return at < 0 ? otherwise : words.splice(at, 2)[1];
};
const times = Number(option('--times', '8'));
const folder = option('--in', here);
const program = build(join(here, 'fine.c'));
if (!program) throw new Error('No gcc is found: install a C compiler.');
const all = readdirSync(join(folder, 'rigs')).map((file) => file.replace('.json', ''));
for (const name of words.length > 0 ? words : all) make(program, folder, name, times);

function make(program, folder, name, times) {
  const rig = JSON.parse(readFileSync(join(folder, 'rigs', `${name}.json`), 'utf8'));
  const [own, half, fine] = [1, times / 2, times].map((n) => solve(program, rig, n));
  console.log(`${name}: ${fine.said}`);
  const digits = (value, count) => Number(value.toPrecision(count));
  const header = ['time', ...rig.probes.map(({ pipe, x }) => `${pipe}@${x}.pressure`)].join(',');
  const lines = fine.rows.map((row) =>
    [row[0], ...rig.probes.map((_, k) => row[1 + 4 * k])].map((v) => digits(v, 7)).join(','),
  );
  writeFileSync(join(folder, `${name}.csv`), `${header}\n${lines.join('\n')}\n`);
  const probes = rig.probes.map(({ pipe, x }, k) => {
    const apart = ({ rows }) =>
      Math.sqrt(fine.rows.reduce((sum, row, i) => sum + (row[1 + 4 * k] - rows[i][1 + 4 * k]) ** 2, 0) / rows.length);
    const peak = Math.max(...fine.rows.map((row) => Math.abs(row[1 + 4 * k] - rig.ambient.pressure)));
    const rms = apart(half);
    return {
      probe: `${pipe}@${x}`,
      rms: digits(rms, 3),
      ofPeak: digits(rms / peak, 3),
      onItsOwnCells: digits(apart(own) / peak, 3),
    };
  });
  const file = join(folder, 'change.json');
  const all = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {};
  all[name] = { times, said: fine.said, probes };
  writeFileSync(file, `${JSON.stringify(Object.fromEntries(Object.entries(all).sort()), null, 2)}\n`);
}
