/** C programs built with the machine's compiler, and the fine-grid solver run on a rig. SI units. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { flatten } from './flatten.mjs';

/** The built program's path; null where the machine has no C compiler. */
export function build(source) {
  const program = join(mkdtempSync(join(tmpdir(), 'evenrun-')), 'program');
  // Plain -O3: the same on every machine. The second definition is for π.
  const options = ['-O3', '-std=c11', '-D_GNU_SOURCE', '-o', program, source, '-lm'];
  const { status, error, stderr } = spawnSync('gcc', options, { encoding: 'utf8' });
  if (error) return null;
  if (status !== 0) throw new Error(stderr);
  return program;
}

/** Rows of time and, for each probe, pressure, velocity, temperature, density; what it says of itself; every last cell where asked. */
export function solve(program, rig, times, { courant = 0.5, profile = false } = {}) {
  const words = [times, courant, ...(profile ? ['profile'] : [])].map(String);
  const ran = spawnSync(program, words, { input: flatten(rig), encoding: 'utf8', maxBuffer: 1 << 28 });
  if (ran.status !== 0) throw new Error(ran.stderr);
  const [said, ...cells] = ran.stderr.trim().split('\n');
  const table = (lines, by) => lines.map((line) => line.split(by).map(Number));
  return { said, rows: table(ran.stdout.trim().split('\n'), ','), cells: table(cells, ' ') };
}
