/** Laying from nothing by the command line. The header is one that every search must do: two runners in the open. */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Design } from '../../shared/design/types';
import { type Bench, bench, GOOD, UNROUTED } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
  write('two.json', two);
});
afterEach(() => b.clear());

const at = (name: string) => join(b.folder, name);
const read = (name: string): Design => JSON.parse(readFileSync(at(name), 'utf8'));
const write = (name: string, design: unknown) => writeFileSync(at(name), JSON.stringify(design));
const route = (...args: string[]) => b.evenrun('route', ...args);
/** The real process, which has threads of its own. */
const MAIN = ['--import', 'tsx', 'src/cli/main.ts', 'route'];
const processed = (...args: string[]) => spawnSync('node', [...MAIN, ...args], { encoding: 'utf8' });

const port = (id: string, x: number) => ({
  ...{ id, cylinder: 1, position: [x, 0, 0], direction: [0, 1, 0], up: [0, 0, 1] },
  opening: { shape: 'round', diameter: 34 },
});
const two = {
  ...{ format: 'evenrun-design', version: 1, title: 'Two in the open' },
  ports: [port('p1', 0), { ...port('p2', 100), cylinder: 2 }],
  tubes: { primary: { outsideDiameter: 40, wall: 1.5, material: 'stainless-304' } },
  tooling: {
    primary: {
      ...{ making: 'welded', centerlineRadius: 60, firstStraight: 20, betweenStraight: 0, lastStraight: 20 },
      ...{ maxBendAngle: 170, maxBends: 4 },
    },
  },
  merges: [
    {
      ...{ id: 'm1', inlets: 2, pattern: 'line', position: [50, 250, -250], axis: [0, 0, -1], up: [0, 1, 0] },
      ...{ pitch: 40, outletDiameter: 50, length: 100 },
    },
  ],
  runners: ['1', '2'].map((n) => ({
    ...{ id: `r${n}`, tube: 'primary', group: 'all', from: { port: `p${n}` }, to: { merge: 'm1' } },
  })),
  groups: { all: { length: null, tolerance: 1 } },
  clearance: { tubeToTube: 4 },
};

test('a length that cannot be had is said with the runner that sets the limit, after one round as after many', async () => {
  write('short.json', { ...two, groups: { all: { length: 90, tolerance: 1 } } });
  const { code, out } = await route('short.json', '-o', 'out.json', '--rounds', '1');
  expect(code).toBe(1);
  expect(out).toMatch(/^90 mm is out of reach for group all: runner r\d is [\d.]+ mm at the shortest found; /m);
});

describe('a header in the open', () => {
  test('0, said and written, and check agrees', async () => {
    const { code, out, err } = await route('two.json', '-o', 'out.json', '--rounds', '1');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Layouts\n +bends +turned +to spare mm +mass kg +inlets\n +1 +\d+ .* m1: r\d r\d$/m);
    expect(out).toMatch(/^\d+ bends, [\d.]+° in all; 1 round in [\d.]+ s, the first that holds after [\d.]+ s$/m);
    expect(out).toMatch(/^Laid: written to out\.json$/m);
    expect((await b.evenrun('check', 'out.json')).code).toBe(0);
  });

  test('--json: as check, and what was found and when', async () => {
    const { code, out } = await route('two.json', '-o', 'out.json', '--rounds', '2', '--json');
    const answer = JSON.parse(out);
    const checked = JSON.parse((await b.evenrun('check', 'out.json', '--json')).out);
    expect(code).toBe(0);
    const { ok, problems, clearance, runners, groups } = checked;
    expect(answer).toMatchObject({ ok, problems, clearance, rounds: 2, reach: [], output: 'out.json' });
    // check has length windows beside them.
    for (const [i, r] of answer.runners.entries()) expect(runners[i]).toMatchObject(r);
    for (const [i, g] of answer.groups.entries()) expect(groups[i]).toMatchObject(g);
    expect(answer.firstValidSeconds).toBeGreaterThan(0);
    expect(answer.firstValidSeconds).toBeLessThanOrEqual(answer.seconds);
    const { bends, angle, margin, length, mass, inlets } = answer.alternatives[0];
    expect([bends, angle]).toEqual([answer.bends, answer.angle]);
    expect(bends).toBe(checked.runners.reduce((sum: number, r: { bends: number }) => sum + r.bends, 0));
    expect(length).toBeCloseTo(checked.runners[0].centerline + checked.runners[1].centerline, 6);
    // Wall area by length by 7930 kg/m³, the density that the stock table has for this steel to within a percent.
    expect(mass / (Math.PI * 38.5 * 1.5 * length * 7.93e-6)).toBeCloseTo(1, 1);
    expect(margin).toBeGreaterThanOrEqual(0);
    expect([...inlets.m1].sort()).toEqual(['r1', 'r2']);
  });

  test('the same bytes from the same seed and rounds, however many threads', () => {
    const bytes = ['1', '2', '3'].map((threads) => {
      const args = ['--rounds', '3', '--seed', '7', '--threads', threads];
      expect(processed(at('two.json'), '-o', at(`${threads}.json`), ...args).status).toBe(0);
      return readFileSync(at(`${threads}.json`), 'utf8');
    });
    expect(bytes).toEqual([bytes[0], bytes[0], bytes[0]]);
  });

  test('a locked runner is left as it is', async () => {
    await route('two.json', '-o', 'first.json', '--rounds', '1');
    const first = read('first.json');
    const [one, other] = first.runners;
    const { points: _, ...bare } = other!;
    write('locked.json', { ...first, runners: [{ ...one!, locked: true }, bare] });
    expect((await route('locked.json', '-o', 'again.json', '--rounds', '2')).code).toBe(0);
    const again = read('again.json').runners;
    expect(again[0]).toEqual({ ...one, locked: true });
    expect(again[1]!.points!.length).toBeGreaterThan(2);
  });

  test('pinned inlets are kept', async () => {
    const pinned = (inlets: number[]) => two.runners.map((r, i) => ({ ...r, to: { merge: 'm1', inlet: inlets[i] } }));
    write('pinned.json', { ...two, runners: pinned([1, 2]) });
    write('crossed.json', { ...two, runners: pinned([2, 1]) });
    for (const name of ['pinned.json', 'crossed.json']) {
      await route(name, '-o', 'out.json', '--rounds', '1');
      expect(read('out.json').runners.map((r) => r.to)).toEqual(read(name).runners.map((r) => r.to));
    }
  });

  test('nothing to lay: said, and exits as check does', async () => {
    const good = read(GOOD);
    write('all.json', { ...good, runners: good.runners.map((r) => ({ ...r, locked: true })) });
    const { code, out } = await route('all.json', '-o', 'out.json');
    expect(code).toBe(0);
    expect(out).toContain('Nothing to lay: every runner is locked');
    expect(read('out.json')).toEqual(read('all.json'));
  });
});

describe('one that cannot be laid', () => {
  const far = { ...two, groups: { all: { length: 150, tolerance: 1 } } };

  test('ends in time, with 1, the best attempt, and what fails with amounts', async () => {
    write('far.json', far);
    const { code, out } = await route('far.json', '-o', 'out.json', '--seconds', '1', '--json');
    const answer = JSON.parse(out);
    expect(answer.seconds).toBeLessThan(1.3);
    expect([code, answer.ok, answer.firstValidSeconds, answer.alternatives]).toEqual([1, false, null, []]);
    expect(answer.problems.length).toBeGreaterThan(0);
    expect(existsSync(at('out.json'))).toBe(true);
  });

  test('a port that something stands around is named first, and little time is spent', async () => {
    const ball = { id: 'starter', shape: 'capsule', a: [0, 0, 0], b: [0, 1, 0], radius: 30, clearance: 5 };
    write('ball.json', { ...two, surroundings: [ball] });
    const { code, out } = await route('ball.json', '-o', 'out.json', '--seconds', '30');
    expect(code).toBe(1);
    expect(out).toMatch(
      /^1 finding\n +surroundings +The starter reaches [\d.]+ mm into .* leaves port p1: .*\n +at ports\/p1\n/,
    );
    expect(out).toMatch(/^Best attempt, not every rule holds: written to out\.json$/m);
  });

  test('an interrupt: 1, and no half file', async () => {
    write('far.json', far);
    const child = spawn('node', [...MAIN, at('far.json'), '-o', at('out.json'), '--seconds', '15']);
    const ended = new Promise<number | null>((resolve) => child.once('exit', (code) => resolve(code)));
    await new Promise((resume) => setTimeout(resume, 2500));
    child.kill('SIGINT');
    expect(await ended).toBe(1);
    expect(b.listing().filter((name) => name.includes('.tmp'))).toEqual([]);
    if (existsSync(at('out.json'))) expect(read('out.json').runners).toHaveLength(2);
  });
});

describe('refused, with nothing written', () => {
  test.each([
    [['--seed', '1.5'], '--seed: found "1.5"; allowed: a whole number from 0 to 4294967295'],
    [['--rounds', '0'], '--rounds: found "0"; allowed: a whole number from 1 to 1000000'],
    [['--rounds', 'many'], '--rounds: found "many"; allowed: a whole number'],
    [['--seconds', '-1'], '--seconds: found "-1"; allowed: more than 0'],
    [['--seconds', 'soon'], '--seconds: found "soon"; allowed: a number'],
    [['--inlets', 'random'], '--inlets: found "random"; allowed: free, firing'],
    [['--threads', '0'], '--threads: found "0"; allowed: a whole number from 1 to 256'],
    [['--alternatives', 'none/x'], 'the folder'],
  ])('%s', async (args, says) => {
    const { code, out, err } = await route(UNROUTED, '-o', 'out.json', ...args);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(says);
    expect(existsSync(at('out.json'))).toBe(false);
  });

  test('no design, or one that breaks the form', async () => {
    write('bad.json', { ...two, version: 9 });
    expect((await route('none.json', '-o', 'out.json')).code).toBe(2);
    expect((await route('bad.json', '-o', 'out.json')).err).toContain('version');
    expect(existsSync(at('out.json'))).toBe(false);
  });
});
