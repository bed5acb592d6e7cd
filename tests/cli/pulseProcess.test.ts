/** `pulse DESIGN` as a process of its own, with real threads and the real engine, on cells so long that it takes little time. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readCsv } from '../../src/formats/csv/readCsv';
import { readStudy } from '../../src/pulse/forecast/studyFile';
import { type Bench, bench } from './bench';
import { bringDesigns, DESIGN } from './pulseBench';

let b: Bench;
beforeEach(() => {
  b = bench();
  bringDesigns(b);
});
afterEach(() => b.clear());

const at = (name: string): string => join(b.folder, name);

/** Loaded first: tells over the channel once an interrupt is heard, so that none comes too soon and none is waited for. */
const TELLS = `data:text/javascript,${encodeURIComponent(
  "process.on('newListener', (name) => name === 'SIGINT' && setImmediate(() => process.send?.('hears')));",
)}`;

/** @param after the signal is heard at all, ms */
async function evenrun(args: string[], signal?: NodeJS.Signals, after = 0) {
  const child = spawn('node', ['--import', TELLS, '--import', 'tsx', 'src/cli/main.ts', ...args], {
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  let err = '';
  child.stderr!.on('data', (text) => {
    err += text;
  });
  const ended = new Promise<number | null>((resolve) => child.once('close', (code) => resolve(code)));
  if (signal) child.once('message', () => setTimeout(() => child.kill(signal), after));
  return { code: await ended, err };
}

test('two threads come to the same bytes as one', async () => {
  const asked = ['pulse', at(DESIGN), '--speeds', '6000,7000', '--cells', '90', '--trace', '7600'];
  const one = await evenrun([...asked, '--threads', '1', '-o', at('one.csv'), '-o', at('one.json')]);
  const two = await evenrun([...asked, '--threads', '2', '-o', at('two.csv'), '-o', at('two.json')]);
  expect([one.err, two.err]).toEqual(['', '']);
  expect(one.code).toBe(two.code);
  expect(readFileSync(at('two.csv'))).toEqual(readFileSync(at('one.csv')));
  expect(readFileSync(at('two.json'))).toEqual(readFileSync(at('one.json')));
  const traces = readCsv(readFileSync(at('one.trace.csv'), 'utf8'));
  // A row each degree of −360 to 360, of four cylinders at the speed asked for.
  expect(traces).toHaveLength(4 * 721);
  expect(new Set(traces.map(({ rpm }) => Number(rpm)))).toEqual(new Set([7600]));
  expect(readFileSync(at('two.trace.csv'))).toEqual(readFileSync(at('one.trace.csv')));
}, 120_000);

test.each([
  ['SIGINT', 1],
  ['SIGTERM', 143],
  ['SIGHUP', 129],
] as const)(
  '%s ends a study with what it has, which is read back, and the code %i',
  async (signal, code) => {
    const asked = [
      'pulse',
      at(DESIGN),
      '--study',
      '--speeds',
      '12',
      '--cells',
      '90',
      '--threads',
      '2',
      '-o',
      at('s.json'),
    ];
    // A machine may be so slow that there is no answer yet: then nothing is written, and it is asked again.
    let said = await evenrun(asked, signal, 3000);
    for (let ms = 6000; / 0 of /.test(said.err) && ms < 30_000; ms *= 2) said = await evenrun(asked, signal, ms);
    expect(said.code).toBe(code);
    expect(said.err).toMatch(
      /^evenrun: interrupted with [1-9]\d* of 576 speeds followed; --resume goes on from \S*s\.json\n$/,
    );
    expect(readStudy(readFileSync(at('s.json'), 'utf8')).sizes).toHaveLength(48);
    expect(b.listing().filter((name) => name.includes('.tmp'))).toEqual([]);
  },
  120_000,
);
