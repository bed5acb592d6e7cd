/** `pulse` by its tables, its account, its endings and its refusals. */
import { spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { pulseCommand } from '../../src/cli/commands/pulse';
import { readCsv } from '../../src/formats/csv/readCsv';
import { FlowStopped, type Running } from '../../src/pulse/report';
import { startRig } from '../../src/pulse/startRig';
import { type Bench, bench } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
  copyFileSync('public/examples/rigs/shock-tube.rig.json', at('tube.rig.json'));
});
afterEach(() => b.clear());

const at = (name: string): string => join(b.folder, name);
const table = (name: string) => readCsv(readFileSync(at(name), 'utf8'));
const pulse = (...args: string[]) => b.evenrun('pulse', '--rig', 'tube.rig.json', ...args);

/** The tube with some of its fields set. */
function change(fields: Record<string, unknown>): void {
  const rig = JSON.parse(readFileSync(at('tube.rig.json'), 'utf8'));
  writeFileSync(at('tube.rig.json'), JSON.stringify({ ...rig, ...fields }));
}

test('rows of the probes, the profile beside them, and what was kept on standard error', async () => {
  const { code, out, err } = await pulse('-o', 'out.csv');
  expect(code).toBe(0);
  expect(out).toMatch(/^0\.004 s followed in [\d.]+ s\nout\.csv: 401 rows of 3 probes\nout\.profile\.csv: 400 cells/);
  const header = readFileSync(at('out.csv'), 'utf8').split('\n')[0]!.split(',');
  expect(header.slice(0, 6)).toEqual([
    ...['time', 'tube@0.25.pressure', 'tube@0.25.velocity', 'tube@0.25.temperature', 'tube@0.25.density'],
    'tube@0.75.pressure',
  ]);
  const rows = table('out.csv');
  expect(rows).toHaveLength(401);
  expect([Number(rows[1]!.time), Number(rows[400]!.time)]).toEqual([1e-5, 0.004]);
  expect(Number(rows[0]!['tube@0.75.pressure'])).toBeCloseTo(100_000, 6);
  const profile = table('out.profile.csv');
  expect(Object.keys(profile[0]!)).toEqual(['pipe', 'x', 'pressure', 'velocity', 'temperature', 'density']);
  expect(profile.map(({ pipe, x }) => [pipe, Number(x).toFixed(5)]).slice(0, 2)).toEqual([
    ['tube', '0.00125'],
    ['tube', '0.00375'],
  ]);
  expect(err).toMatch(
    /^mass: initial 0\.0058334\d* kg, final 0\.0058334\d* kg, left 0 kg, drift -?\d\.\d\de-1\d\nenergy: initial .* J, final .* J, left 0 J, 0 J from walls, drift -?\d\.\d\de-1\d\n1200 steps, 480000 cell updates; none failed/,
  );
});

test('as JSON, with the account on standard error all the same; no profile unless asked for', async () => {
  change({ profile: false });
  const { code, out, err } = await pulse('-o', 'out.csv', '--json');
  expect(code).toBe(0);
  const said = JSON.parse(out);
  expect(said).toMatchObject({
    ended: 'whole',
    time: 0.004,
    duration: 0.004,
    rows: 401,
    output: 'out.csv',
    profile: null,
  });
  expect(Math.abs(said.mass.drift)).toBeLessThan(1e-12);
  expect(err).toMatch(/^mass: .*\nenergy: /);
  expect(existsSync(at('out.profile.csv'))).toBe(false);
});

test('sample 0: nothing but the profile', async () => {
  change({ sample: 0 });
  const { code, out } = await pulse('-o', 'out.csv');
  expect(code).toBe(0);
  expect(out).toMatch(/out\.csv: 0 rows of 3 probes \("sample" is 0\)/);
  expect(readFileSync(at('out.csv'), 'utf8')).toMatch(/^time,[^\n]*\n$/);
  expect(table('out.profile.csv')).toHaveLength(400);
});

test('the same rig, the same bytes', async () => {
  await pulse('-o', 'one.csv');
  await pulse('-o', 'two.csv');
  expect(readFileSync(at('two.csv'))).toEqual(readFileSync(at('one.csv')));
});

/** In this process, with what a shell would do to it. */
async function around(
  start: (running: Running, act: () => void) => Running,
  { json = false, onStatus = (_line: string, _heard: number): void => {} } = {},
) {
  const printed = { out: '', err: '', shown: [] as string[] };
  let act = (): void => {};
  let heard = 0;
  const io = {
    out(text: string) {
      printed.out += text;
    },
    err(text: string) {
      printed.err += text;
    },
    cwd: b.folder,
    process: {
      startThread: () => {
        throw new Error('none is needed');
      },
      onInterrupt(then: () => void) {
        act = then;
        heard++;
        return () => void heard--;
      },
      status: (line: string) => {
        onStatus(line, heard);
        printed.shown.push(line);
      },
    },
  };
  const options = { rig: 'tube.rig.json', output: 'out.csv', json };
  const code = await pulseCommand([], options, io, (rig) => start(startRig(rig), () => act()));
  // The interrupt is given back, the line of progress cleared.
  expect(heard).toBe(0);
  expect(printed.shown.at(-1)).toBe('');
  return { code, ...printed };
}

/** A run that something befalls once it is half done. */
const halfway = (running: Running, befall: () => void): Running => ({
  duration: running.duration,
  get time() {
    return running.time;
  },
  get steps() {
    return running.steps;
  },
  advance(most) {
    const done = running.advance(Math.min(most, 10));
    if (running.time > 0.002) befall();
    return done;
  },
  result: () => running.result(),
});

test('an interrupt ends it: said at which instant, and what there is until then is written', async () => {
  const { code, out, err } = await around((running, act) => halfway(running, act));
  expect(code).toBe(1);
  expect(err).toMatch(/^evenrun: interrupted at 0\.002\d* s of 0\.004 s; what there is until then is written\nmass: /);
  const rows = table('out.csv');
  expect(rows.length).toBeGreaterThan(200);
  expect(rows.length).toBeLessThan(210);
  expect(out).toContain(`out.csv: ${rows.length} rows of 3 probes`);
  expect(table('out.profile.csv')).toHaveLength(400);
});

test('an interrupt that comes as the last step is done changes nothing', async () => {
  const { code, err } = await around((running, act) => ({
    ...halfway(running, () => {}),
    get time() {
      return running.time;
    },
    advance(most) {
      const done = running.advance(most);
      if (done) act();
      return done;
    },
  }));
  expect(code).toBe(0);
  expect(err).toMatch(/^mass: /);
});

test('a step that cannot be done: when, where, the remedy, and what there is until then', async () => {
  const { code, err } = await around((running) =>
    halfway(running, () => {
      throw new FlowStopped(running.time, 'tube', 17, 0.04375, 'no pressure');
    }),
  );
  expect(code).toBe(1);
  expect(err).toMatch(
    /^evenrun: The flow could not be followed beyond 0\.002\d+ s: no pressure in cell 18 of pipe "tube", 0\.04375 m from its start\. Give that pipe more cells.*; what there is until then is written\nmass: /,
  );
  expect(table('out.csv').length).toBeGreaterThan(200);
});

test('as JSON, it says where and why', async () => {
  const befall = (running: Running) =>
    halfway(running, () => {
      throw new FlowStopped(running.time, 'tube', 17, 0.04375, 'no pressure');
    });
  const { out } = await around(befall, { json: true });
  const { ended, time, stopped } = JSON.parse(out);
  expect(ended).toBe('stopped');
  expect(stopped).toMatchObject({ time, pipe: 'tube', cell: 18, x: 0.04375 });
  expect(stopped.message).toMatch(/^The flow could not .* no pressure in cell 18 of pipe "tube".*more cells/);
});

test('an interrupt is heard, and so does no harm, until all is written', async () => {
  const heardAt: number[] = [];
  const onStatus = (line: string, heard: number) => {
    if (line === 'writing…') heardAt.push(heard, Number(existsSync(at('out.csv'))));
    else if (line === '') heardAt.push(heard, Number(existsSync(at('out.profile.csv'))));
  };
  const { code } = await around((running, act) => halfway(running, act), { onStatus });
  expect(code).toBe(1);
  expect(heardAt.slice(0, 4)).toEqual([1, 0, 1, 1]);
});

describe('what cannot be written at the end is told, with the account and whatever else there is', () => {
  /** @param befall once, as the work is done */
  const spoiltBy = (befall: () => void, json = false) =>
    around((running) => running, {
      json,
      onStatus: (line) => {
        if (line === 'writing…') befall();
      },
    });

  test('the profile', async () => {
    const { code, out, err } = await spoiltBy(() => mkdirSync(at('out.profile.csv')));
    expect(code).toBe(1);
    expect(err).toMatch(
      /^evenrun: \S+out\.profile\.csv: cannot write it: it is a folder; out\.csv is written\nmass: .*\nenergy: /,
    );
    expect(out).toMatch(/followed in .*\nout\.csv: 401 rows of 3 probes\n$/);
    expect(table('out.csv')).toHaveLength(401);
  });

  test('the table', async () => {
    const { code, out, err } = await spoiltBy(() => mkdirSync(at('out.csv')), true);
    expect(code).toBe(1);
    expect(err).toMatch(/out\.csv: cannot write it: it is a folder; out\.profile\.csv is written\nmass: /);
    const said = JSON.parse(out);
    expect(said).toMatchObject({ ended: 'whole', output: null, profile: 'out.profile.csv' });
    expect(said.unwritten).toEqual([expect.stringMatching(/out\.csv: cannot write it/)]);
    expect(b.listing().filter((name) => name.includes('.tmp'))).toEqual([]);
  });

  test('both, as their folder is gone', async () => {
    const { code, out, err } = await spoiltBy(() => rmSync(b.folder, { recursive: true }));
    mkdirSync(b.folder);
    expect(code).toBe(1);
    expect(err.match(/cannot write it: no such file or folder; no table is written\n/g)).toHaveLength(2);
    expect(err).toMatch(/\nmass: .*\nenergy: /);
    expect(out).toMatch(/^0\.004 s followed in [\d.]+ s\n$/);
  });
});

test('a fault of the program is none of the flow', async () => {
  const befall = () => {
    throw new TypeError('no such thing');
  };
  await expect(around((running) => halfway(running, befall))).rejects.toThrow('no such thing');
  expect(existsSync(at('out.csv'))).toBe(false);
});

test('progress is shown where there is a terminal', async () => {
  const { shown } = await around((running) =>
    halfway(running, () => {
      const until = performance.now() + 5;
      while (performance.now() < until);
    }),
  );
  expect(shown.some((line) => /^0\.00\d+ s of 0\.004 s, \d+ %, \d+ steps$/.test(line))).toBe(true);
});

test('what will take long is said once, early, with what makes it long; and how long is left', async () => {
  let clock = 0;
  const now = vi.spyOn(performance, 'now').mockImplementation(() => clock);
  try {
    const { code, err, shown } = await around((running) => ({
      ...halfway(running, () => {}),
      get time() {
        return running.time;
      },
      // One of 1200 steps takes a second: twenty minutes.
      advance(most) {
        const before = running.steps;
        const done = running.advance(Math.min(most, 4));
        clock += 1000 * (running.steps - before);
        return done;
      },
    }));
    expect(code).toBe(0);
    expect(err).toMatch(
      /^evenrun: At this pace about (19|20) min to go\. .* pipe "tube" are the smallest, 0\.0025 m: [^\n]*less\.\nmass: /,
    );
    const halfDone = /^0\.002\d* s of 0\.004 s, 5\d %, \d+ steps, about (9|10) min left$/;
    expect(shown.filter((line) => halfDone.test(line))).not.toEqual([]);
  } finally {
    now.mockRestore();
  }
});

/** The real process, interrupted after a while: one that had not begun yet is ended by the signal itself, which says nothing. */
async function interruptedAfter(ms: number): Promise<{ code: number | null; err: string }> {
  const main = ['--import', 'tsx', 'src/cli/main.ts', 'pulse', '--rig', at('tube.rig.json'), '-o', at('out.csv')];
  const child = spawn('node', main);
  let err = '';
  child.stderr.on('data', (text) => {
    err += text;
  });
  const ended = new Promise<number | null>((resolve) => child.once('close', (code) => resolve(code)));
  await new Promise((resume) => setTimeout(resume, ms));
  child.kill('SIGINT');
  return { code: await ended, err };
}

test('Ctrl-C ends the real process with what it has, and no file half written', async () => {
  change({ duration: 1000, sample: 0.01, probes: [{ pipe: 'tube', x: 0.5 }] });
  let said = await interruptedAfter(3000);
  for (let ms = 6000; said.code === null && ms < 50_000; ms *= 2) said = await interruptedAfter(ms);
  expect(said.code).toBe(1);
  expect(said.err).toMatch(
    /^(evenrun: At this pace [^\n]*\n)?evenrun: interrupted at [\d.e-]+ s of 1000 s; what there is until then is written\n/,
  );
  expect(table('out.csv').length).toBeGreaterThan(0);
  expect(b.listing().filter((name) => name.includes('.tmp'))).toEqual([]);
}, 120_000);

describe('refused, with nothing written', () => {
  test.each<[string[], RegExp]>([
    [['pulse', 'x', '--rig', 'tube.rig.json', '-o', 'out.csv'], /found "x" besides its options/],
    [['pulse', '--rig', 'tube.rig.json'], /-o, --output: say where to write the table/],
    [
      ['pulse', '--rig', 'tube.rig.json', '-o', 'out.txt'],
      /found "out\.txt"; allowed: a name that ends in \.csv, such as out\.csv/,
    ],
    [['pulse', '--rig', 'tube.rig.json', '-o', '.'], /a name that ends in \.csv/],
    [['pulse', '--rig', 'tube.rig.json', '-o', 'no/out.csv'], /the folder .*no does not exist; make it first/],
    [['pulse', '--rig', 'none.json', '-o', 'out.csv'], /none\.json: no such file/],
    [
      ['pulse', '--rig', 'good.evenrun.json', '-o', 'out.csv'],
      /format: found "evenrun-design"; allowed: "evenrun-rig".*header/,
    ],
    [['pulse', '--rig', 'tube.rig.json', '-o', 'out.csv', '--fast'], /unknown option '--fast'/],
  ])('%j', async (args, message) => {
    const before = b.listing();
    const { code, out, err } = await b.evenrun(...args);
    expect(err).toMatch(/^evenrun: [^\n]+\n$/);
    expect(err).toMatch(message);
    expect([code, out]).toEqual([2, '']);
    expect(b.listing()).toEqual(before);
  });

  test('the rig itself as the table', async () => {
    copyFileSync(at('tube.rig.json'), at('tube.csv'));
    const { code, err } = await b.evenrun('pulse', '--rig', 'tube.csv', '-o', 'tube.csv');
    expect([code, err]).toEqual([2, 'evenrun: -o, --output: tube.csv is the rig itself; choose another name\n']);
  });

  test('the rig itself as the profile', async () => {
    copyFileSync(at('tube.rig.json'), at('r.profile.csv'));
    const { code, err } = await b.evenrun('pulse', '--rig', 'r.profile.csv', '-o', 'r.csv');
    expect([code, err]).toEqual([2, 'evenrun: -o, --output: r.profile.csv is the rig itself; choose another name\n']);
    expect(existsSync(at('r.csv'))).toBe(false);
  });

  test('a rig with something wrong, by its file and place', async () => {
    change({ duration: -1 });
    const { code, err } = await pulse('-o', 'out.csv');
    expect(code).toBe(2);
    expect(err).toMatch(/^evenrun: \S+tube\.rig\.json: duration: found -1; allowed: a number above 0/);
    expect(existsSync(at('out.csv'))).toBe(false);
  });

  test('a folder where the profile is to lie is found out before the work', async () => {
    mkdirSync(at('out.profile.csv'));
    const { code, err } = await pulse('-o', 'out.csv');
    expect(code).toBe(2);
    expect(err).toMatch(/out\.profile\.csv: a folder, where a file is wanted/);
    expect(existsSync(at('out.csv'))).toBe(false);
  });
});
