/** The real process, as a shell runs it: exit codes, streams, pipes that close, and other languages. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bench, bench, GOOD, UNROUTED } from './bench';

let b: Bench;
beforeAll(() => {
  b = bench();
});
afterAll(() => b.clear());

const MAIN = ['--import', 'tsx', 'src/cli/main.ts'];
const evenrun = (args: string[], env: NodeJS.ProcessEnv = {}) =>
  spawnSync('node', [...MAIN, ...args], { encoding: 'utf8', env: { ...process.env, ...env } });

test('0, 1 and 2', () => {
  expect(evenrun(['check', join(b.folder, GOOD)]).status).toBe(0);
  expect(evenrun(['check', join(b.folder, UNROUTED)]).status).toBe(1);
  const refused = evenrun(['check', join(b.folder, 'none')]);
  expect([refused.status, refused.stdout]).toEqual([2, '']);
  expect(refused.stderr).toMatch(/^evenrun: [^\n]*none: no such file\n$/);
});

test('by npm, in a checkout, built first where what is built is old', () => {
  const built = 'dist/cli/evenrun.js';
  if (existsSync(built)) utimesSync(built, 0, 0);
  const { status, stdout } = spawnSync('npm', ['run', '-s', 'evenrun', '--', 'check', join(b.folder, GOOD), '--json'], {
    encoding: 'utf8',
  });
  expect(status).toBe(0);
  expect(JSON.parse(stdout).ok).toBe(true);
  expect(statSync(built).mtimeMs).toBeGreaterThan(statSync('src/cli/main.ts').mtimeMs);
});

test('the built file alone, with nothing beside it, has the solver in it', () => {
  const alone = join(b.folder, 'evenrun.mjs');
  copyFileSync('dist/cli/evenrun.js', alone);
  writeFileSync(join(b.folder, 'list.csv'), '51,3\n');
  // By room alone two bars would do: that three are needed is found by the solver.
  const args = ['nest', 'list.csv', '--bar', '100', '--kerf', '0', '--end-trim', '0'];
  const { status, stdout, stderr } = spawnSync('node', [alone, ...args], { encoding: 'utf8', cwd: b.folder });
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toMatch(/Length bought: 300\.0 mm\. No plan has less: proved\./);
});

test('a reader that stops listening is no error', () => {
  const script = `node ${MAIN.join(' ')} check '${join(b.folder, GOOD)}' --json | head -c 1; echo "\${PIPESTATUS[0]}"`;
  const { stdout, stderr } = spawnSync('bash', ['-c', script], { encoding: 'utf8' });
  expect([stdout, stderr]).toEqual(['{0\n', '']);
});

// Only where there is such a device.
test.skipIf(!existsSync('/dev/full'))('an answer that cannot be said is no answer: one line and 2', () => {
  const run = `node ${MAIN.join(' ')} check '${join(b.folder, GOOD)}'`;
  const said = spawnSync('bash', ['-c', `${run} > /dev/full`], { encoding: 'utf8' });
  expect([said.status, said.stderr]).toEqual([2, 'evenrun: standard output: cannot write to it: the disk is full\n']);
  expect(spawnSync('bash', ['-c', `${run} > /dev/full 2> /dev/full`]).status).toBe(2);
  expect(spawnSync('bash', ['-c', `${run} 2> /dev/full`]).status).toBe(0);
});

test('the same tables in a language with commas', () => {
  const sums = ['C', 'de_DE.UTF-8'].map((locale) => {
    const folder = join(b.folder, locale);
    expect(
      evenrun(['shop', join(b.folder, GOOD), '-o', folder], { LC_ALL: locale, LANG: locale, LANGUAGE: 'de' }).status,
    ).toBe(0);
    return ['bend-schedule.csv', 'cut-list.csv', 'manifest.json'].map((name) =>
      createHash('sha256')
        .update(readFileSync(join(folder, name)))
        .digest('hex'),
    );
  });
  expect(sums[1]).toEqual(sums[0]);
});
