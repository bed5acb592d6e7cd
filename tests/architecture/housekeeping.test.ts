/** What every file of the project keeps to: a header, a readable length, nothing of one machine or one registry. */
import { expect, test } from 'vitest';
import { isCode, sources } from './sources';

const files = sources();
const code = [...files].filter(([path]) => isCode(path));
const lines = (text: string): number => text.split('\n').length;

test('no file of code is 500 lines long, and the middle one is near 100', () => {
  expect(code.filter(([, text]) => lines(text) >= 500).map(([path, text]) => `${path}: ${lines(text)}`)).toEqual([]);
  const sorted = code.map(([, text]) => lines(text)).sort((a, b) => a - b);
  expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThan(150);
});

test('every file of code opens with a comment that says what it is', () => {
  const rooms = code.filter(([path]) => /^(shared|geometry|src|scripts)\//.test(path));
  const bare = rooms.filter(([, text]) => !text.startsWith('/**') && !text.startsWith('#!'));
  expect(bare.map(([path]) => path)).toEqual([]);
});

const MACHINE_PATH = /(?:^|[\s"'`(=:])(?:\/(?:home|root|Users|work|mnt)\/[\w.-]+|[A-Z]:\\Users\\)/m;
const REGISTRY = /\bregistry\.[a-z][a-z-]*\.[a-z]{2,}|\bnpm\.pkg\.[a-z]+\.[a-z]{2,}/i;
/** The registry that this run is set up with, whatever it is called. */
const host = (process.env.npm_config_registry ?? '').replace(/^https?:\/\//, '').replace(/[/:].*$/s, '');

test('no file names a path of one machine or the address of a registry', () => {
  const named = [...files].filter(
    ([, text]) => MACHINE_PATH.test(text) || REGISTRY.test(text) || (host.length > 4 && text.includes(host)),
  );
  expect(named.map(([path]) => path)).toEqual([]);
});

test('such paths and addresses would be found', () => {
  const folder = ['', 'home', 'someone', 'evenrun'].join('/');
  expect(`see ${folder}`).toMatch(MACHINE_PATH);
  expect(`"${folder}"`).toMatch(MACHINE_PATH);
  expect(['https://registry', 'example', 'org/zod'].join('.')).toMatch(REGISTRY);
});

test('the lock file carries no download address', () => {
  const lock = JSON.parse(files.get('package-lock.json')!) as { packages: Record<string, { resolved?: string }> };
  expect(Object.keys(lock.packages).length).toBeGreaterThan(50);
  // A package of the project's own, beside its sources, is resolved to its folder.
  const ours = /^geometry\/[\w/-]+$/;
  const elsewhere = Object.entries(lock.packages).filter(([, { resolved }]) => resolved && !ours.test(resolved));
  expect(elsewhere).toEqual([]);
});
