/** Every bad input: exit code 2, one line on standard error that names the place, nothing on standard output, nothing written. */
import { mkdirSync, readFileSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Bench, bench, GOOD } from './bench';

let b: Bench;

/** Where the good design's first runner starts. */
const PORT = JSON.parse(readFileSync('tests/layouts/known/c6-i3-3-1.evenrun.json', 'utf8')).ports[0].position;

beforeEach(() => {
  b = bench();
});
afterEach(() => b.clear());

async function refused(args: string[], ...message: RegExp[]) {
  const before = b.listing();
  const { code, out, err } = await b.evenrun(...args);
  expect(err).toMatch(/^evenrun: [^\n]+\n$/);
  for (const part of message) expect(err).toMatch(part);
  expect(err).not.toMatch(/\.ts:|\bat \w+ \(|fault of the program/);
  expect(out).toBe('');
  expect(code).toBe(2);
  expect(b.listing()).toEqual(before);
}

/** The good design with the value at `path` (such as `ports/0/id`) set, as `bad.evenrun.json`. */
function spoil(path: string, value: unknown): string {
  const design = JSON.parse(readFileSync(join(b.folder, GOOD), 'utf8'));
  const steps = path.split('/');
  const last = steps.pop()!;
  const parent = steps.reduce((at, step) => at[step], design);
  if (parent === undefined) throw new Error(`The good design has no ${path}`);
  parent[last] = value;
  return write('bad.evenrun.json', JSON.stringify(design));
}

const write = (name: string, content: string | Uint8Array): string => {
  writeFileSync(join(b.folder, name), content);
  return name;
};

describe('the design file', () => {
  test('that is not there', () => refused(['check', 'none.json'], /none\.json: no such file/));
  test('that is a folder', () => refused(['check', '.'], /a folder, where a file is wanted/));
  test('that is a device', () => refused(['check', '/dev/zero'], /\/dev\/zero: not a regular file/));
  test('that lies below a file', () => refused(['check', `${GOOD}/x`], /not a folder|no such file/));
  test('that is empty', () => refused(['check', write('a.json', '')], /a\.json: .*line 1/));
  test('that is cut short', () => {
    const whole = readFileSync(join(b.folder, GOOD), 'utf8');
    return refused(['check', write('a.json', whole.slice(0, 700))], /a\.json: .*line \d+/);
  });
  test('that is not UTF-8', () => refused(['check', write('a.json', new Uint8Array([0xff, 0xfe, 0x7b]))], /not UTF-8/));
  test('that is far too large', () => {
    truncateSync(join(b.folder, write('a.json', '')), 2 ** 33);
    return refused(['check', 'a.json'], /8589934592 bytes; at most \d+/);
  });
  test('that is a link in a circle', () => {
    symlinkSync('loop', join(b.folder, 'loop'));
    return refused(['check', 'loop'], /loop: /);
  });
});

describe('the design', () => {
  test.each<[string, string, unknown, RegExp]>([
    ['of another format', 'format', 'other', /format: found "other"; allowed/],
    ['of a later version', 'version', 99, /version: found 99/],
    ['with text for a number', 'tubes/primary/wall', '1.5', /tubes\/primary\/wall: found "1\.5"; allowed/],
    ['with a zero vector', 'ports/0/direction', [0, 0, 0], /ports\/p1\/direction: found \[0, 0, 0\]/],
    ['with an id twice', 'ports/1/id', 'P1', /ports\/1\/id: found "P1"/],
    ['with a runner to nowhere', 'runners/0/to/merge', 'm9', /runners\/r1\/to\/merge: found "m9"/],
    ['with two runners on one inlet', 'runners/1/to/inlet', 1, /runners\/r\d\/to\/inlet: found inlet 1 of "m1"/],
    ['with two points in one place', 'runners/0/points/1', PORT, /runners\/r1\/points\/1/],
    ['with negative trim', 'tooling/primary/trimStart', -1, /tooling\/primary\/trimStart: found -1/],
    [
      'with a folder in a mesh name',
      'surroundings',
      [{ id: 'x', shape: 'mesh', file: '../x.stl' }],
      /surroundings\/x\/file/,
    ],
  ])('%s is refused by its path, by every command', async (_, path, value, message) => {
    const name = spoil(path, value);
    await refused(['check', name], /bad\.evenrun\.json: /, message);
    await refused(['check', name, '--json'], message);
    await refused(['balance', name, '-o', 'out.json'], message);
    await refused(['shop', name, '-o', 'out'], message);
  });

  test('with a mesh beside it that is no mesh', async () => {
    const name = spoil('surroundings', [{ id: 'bay', shape: 'mesh', file: 'bay.stl' }]);
    write('bay.stl', 'not a mesh');
    await refused(['check', name], /bay\.stl: it is not an STL file/);
  });
});

test.each([
  [['--paper', 'a3'], /--paper: "a3" is none of a4 and letter/],
  [['--paper-thickness', 'thin'], /--paper-thickness: "thin" is no number of mm from 0 to 2/],
  [['--paper-thickness', '5'], /from 0 to 2/],
  [['--stations', '12'], /--stations: found "12"; allowed: 8 or 16/],
])('paper that is none: %j', (options, message) => refused(['shop', GOOD, '-o', 'out', ...options], message));

describe('where to write', () => {
  test('left out', async () => {
    await refused(['balance', GOOD], /-o, --output <file>/);
    await refused(['shop', GOOD], /-o, --output <folder>/);
  });
  test('a folder that does not exist', async () => {
    await refused(['balance', GOOD, '-o', 'no/out.json'], /no\/out\.json: the folder .*no does not exist/);
    await refused(['shop', GOOD, '-o', 'no/out'], /no\/out: the folder .*no does not exist/);
  });
  test('a folder for a file, a file for a folder', async () => {
    await refused(['balance', GOOD, '-o', '.'], /a folder, where a file is wanted/);
    await refused(['shop', GOOD, '-o', GOOD], /a file, where a folder is wanted/);
  });
  test('a folder with someone else’s manifest, or with files of ours that no manifest names', async () => {
    mkdirSync(join(b.folder, 'out'));
    write('out/cut-list.csv', 'mine');
    await refused(['shop', GOOD, '-o', 'out'], /cut-list\.csv: not of an earlier run/);
    write('out/manifest.json', '{"name":"a web page"}');
    await refused(['shop', GOOD, '-o', 'out'], /manifest\.json: not a manifest of an earlier run/);
    expect(readFileSync(join(b.folder, 'out/cut-list.csv'), 'utf8')).toBe('mine');
  });
});

describe('the command', () => {
  test('left out', () =>
    refused(
      [],
      /which command\? check, balance, route, shop, make, template, nest, size, new, mirror, scan, outline, pulse or compare;/,
    ));
  test('unknown', () => refused(['bend', GOOD], /there is no command "bend": check, balance/));
  test('with an unknown option', () =>
    refused(['check', GOOD, '--fast'], /unknown option '--fast'; evenrun check --help says what can be asked/));
  test('without a design', () => refused(['check'], /missing required argument 'design'/));
  test('with too much', () => refused(['check', GOOD, GOOD], /too many arguments/));
});
