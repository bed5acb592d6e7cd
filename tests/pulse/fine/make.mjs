/**
 * `node tests/pulse/fine/make.mjs [--times 16] [NAME …]`: makes the fixtures anew. Builds fine.c with the C compiler of the machine, runs each rig of rigs/
 * on a grid so many times finer and on one half as fine, and writes the finer one's pressures to NAME.csv and how far the two
 * differ to change.json: rms, and that over the peak of |p − ambient| at the probe.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { flatten } from './flatten.mjs';

const here = fileURLToPath(new URL('./', import.meta.url));

/** The built program's path; null where the machine has no C compiler. */
export function build() {
  const program = join(mkdtempSync(join(tmpdir(), 'fine-')), 'fine');
  const { status, error, stderr } = spawnSync(
    'gcc',
    ['-O3', '-std=c11', '-D_GNU_SOURCE', '-o', program, join(here, 'fine.c'), '-lm'],
    { encoding: 'utf8' },
  );
  if (error) return null;
  if (status !== 0) throw new Error(stderr);
  return program;
}

/** Rows of time and, for each probe, pressure, velocity, temperature, density; what it says of itself; every last cell where asked. */
export function solve(program, rig, times, { courant = 0.5, profile = false } = {}) {
  const { status, stdout, stderr } = spawnSync(program, [times, courant, ...(profile ? ['profile'] : [])].map(String), {
    input: flatten(rig),
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (status !== 0) throw new Error(stderr);
  const [said, ...cells] = stderr.trim().split('\n');
  return {
    said,
    rows: stdout
      .trim()
      .split('\n')
      .map((line) => line.split(',').map(Number)),
    cells: cells.map((line) => line.split(' ').map(Number)),
  };
}

function make(program, name, times) {
  const rig = JSON.parse(readFileSync(join(here, 'rigs', `${name}.json`), 'utf8'));
  const [half, fine] = [times / 2, times].map((n) => solve(program, rig, n));
  console.log(`${name}: ${fine.said}`);
  const pressures = fine.rows.map((row) => rig.probes.map((_, k) => row[1 + 4 * k]));
  const header = ['time', ...rig.probes.map(({ pipe, x }) => `${pipe}@${x}.pressure`)].join(',');
  const lines = fine.rows.map((row, i) =>
    [Number(row[0].toPrecision(7)), ...pressures[i].map((p) => Number(p.toPrecision(7)))].join(','),
  );
  writeFileSync(join(here, `${name}.csv`), `${header}\n${lines.join('\n')}\n`);
  const probes = rig.probes.map(({ pipe, x }, k) => {
    const rms = Math.sqrt(
      pressures.reduce((sum, row, i) => sum + (row[k] - half.rows[i][1 + 4 * k]) ** 2, 0) / pressures.length,
    );
    const peak = Math.max(...pressures.map((row) => Math.abs(row[k] - rig.ambient.pressure)));
    return { probe: `${pipe}@${x}`, rms: Number(rms.toPrecision(3)), ofPeak: Number((rms / peak).toPrecision(3)) };
  });
  const file = join(here, 'change.json');
  const all = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {};
  all[name] = { times, said: fine.said, probes };
  writeFileSync(file, `${JSON.stringify(Object.fromEntries(Object.entries(all).sort()), null, 2)}\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const words = process.argv.slice(2);
  const at = words.indexOf('--times');
  const times = at < 0 ? 16 : Number(words.splice(at, 2)[1]);
  const program = build();
  if (!program) throw new Error('No gcc is found: install a C compiler.');
  const names = words.length > 0 ? words : readdirSync(join(here, 'rigs')).map((file) => file.replace('.json', ''));
  for (const name of names) make(program, name, times);
}
