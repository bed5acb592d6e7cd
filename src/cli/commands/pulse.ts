/**
 * `pulse --rig RIG -o OUT.csv`: follows the waves of a rig and writes what its probes saw. An interrupt, or a step that cannot be
 * done, ends it early: what there is until then is written all the same.
 */
import { existsSync, realpathSync } from 'node:fs';
import { resolve } from 'node:path';
import { FlowStopped, type RigRun, type Running } from '../../pulse/report';
import { accountText } from '../../pulse/rig/accountText';
import { probesCsv, profileCsv, profilePath } from '../../pulse/rig/csv';
import { MAX_RIG_BYTES, readRig } from '../../pulse/rig/read';
import type { Rig } from '../../pulse/rig/types';
import { startRig } from '../../pulse/startRig';
import { insistWritable, readText, writeWhole } from '../files';
import { FAILS, HOLDS, type Io, oneLine, UnusableInput } from '../io';
import { naming } from '../readDesign';

export type PulseArguments = { readonly rig?: string; readonly output?: string; readonly json?: boolean };

const USAGE = 'evenrun pulse --rig RIG.json -o OUT.csv';
/** So often an interrupt is heard, and progress told, ms. */
const BREATH = 25;
const PROGRESS = 200;

/** @param more what stands on the line besides options. @param start for tests */
export async function pulseCommand(
  more: readonly string[],
  given: PulseArguments,
  io: Io,
  start: (rig: Rig) => Running = (rig) => startRig(rig),
): Promise<number> {
  const { from, to } = paths(more, given, io);
  const rig = naming(from, () => readRig(readText(from, MAX_RIG_BYTES)));
  if (rig.profile) insistWritable(profilePath(to));

  const began = performance.now();
  const { run, ended, message } = await follow(rig, start, io);
  const seconds = (performance.now() - began) / 1000;
  const written = run ? write(run, rig, to, given.output!) : [];
  if (message !== '')
    io.err(`evenrun: ${message}${written.length > 0 ? `; what there is until then is written` : ''}\n`);
  if (run) io.err(accountText(run));
  if (given.json) io.out(`${JSON.stringify(summary(run, rig, ended, seconds, written), null, 2)}\n`);
  else if (run) io.out(said(run, rig, written, seconds));
  return ended === 'whole' ? HOLDS : FAILS;
}

function paths(more: readonly string[], { rig, output }: PulseArguments, io: Io): { from: string; to: string } {
  if (rig === undefined) {
    const design = more.length > 0 ? `found "${oneLine(more[0]!)}"; it does not read designs yet. ` : '';
    throw new UnusableInput(`pulse: ${design}Give it a rig of pipes: ${USAGE}`);
  }
  if (more.length > 0) throw new UnusableInput(`pulse: found "${oneLine(more[0]!)}" besides its options: ${USAGE}`);
  if (output === undefined) throw new UnusableInput(`-o, --output: say where to write the table: ${USAGE}`);
  if (!/[^/\\]\.csv$/i.test(output)) {
    const tip = `${output.replace(/[/\\]+$|\.[A-Za-z0-9]*$/, '')}.csv`;
    throw new UnusableInput(`-o, --output: found "${output}"; allowed: a name that ends in .csv, such as ${tip}`);
  }
  const from = resolve(io.cwd, rig);
  const to = resolve(io.cwd, output);
  if (existsSync(from) && existsSync(to) && realpathSync(from) === realpathSync(to)) {
    throw new UnusableInput(`-o, --output: ${output} is the rig itself; choose another name`);
  }
  insistWritable(to);
  return { from, to };
}

type Ended = 'whole' | 'interrupted' | 'stopped';

/** Steps in turns short enough to hear an interrupt between. */
async function follow(
  rig: Rig,
  start: (rig: Rig) => Running,
  io: Io,
): Promise<{ run: RigRun | null; ended: Ended; message: string }> {
  const { onInterrupt, status } = io.process ?? {};
  let interrupted = false;
  const quiet = onInterrupt?.(() => {
    interrupted = true;
  });
  let running: Running | null = null;
  try {
    running = start(rig);
    let turn = 8;
    let told = performance.now();
    for (let done = false; !done && !interrupted; ) {
      const at = performance.now();
      done = running.advance(turn);
      const took = performance.now() - at;
      if (took < BREATH / 2) turn *= 2;
      else if (took > 2 * BREATH && turn > 1) turn = Math.ceil(turn / 2);
      if (at + took - told > PROGRESS) {
        told = at + took;
        status?.(progressLine(running));
      }
      await new Promise((resume) => setImmediate(resume));
    }
    const isWhole = running.time >= running.duration;
    const message = isWhole ? '' : `interrupted at ${instant(running.time)} of ${instant(running.duration)}`;
    return { run: running.result(), ended: isWhole ? 'whole' : 'interrupted', message };
  } catch (error) {
    if (!(error instanceof FlowStopped)) throw error;
    return { run: running?.result() ?? null, ended: 'stopped', message: error.message.replace(/\.$/, '') };
  } finally {
    quiet?.();
    status?.('');
  }
}

const instant = (seconds: number): string => `${Number(seconds.toPrecision(6))} s`;

const progressLine = ({ time, duration, steps }: Running): string =>
  `${instant(time)} of ${instant(duration)}, ${Math.floor((100 * time) / duration)} %, ${steps} steps`;

/** @returns the files' names as the user would give them */
function write(run: RigRun, rig: Rig, to: string, output: string): string[] {
  writeWhole(to, probesCsv(run));
  if (!rig.profile) return [output];
  writeWhole(profilePath(to), profileCsv(run));
  return [output, profilePath(output)];
}

function said(
  { times, probes, profile, time }: RigRun,
  { sample }: Rig,
  written: readonly string[],
  seconds: number,
): string {
  const [rows, cells] = written;
  const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
  const none = sample === 0 ? ' ("sample" is 0)' : '';
  const lines = [
    `${instant(time)} followed in ${seconds.toFixed(2)} s`,
    `${rows}: ${count(times.length, 'row')} of ${count(probes.length, 'probe')}${none}`,
  ];
  if (cells !== undefined) {
    const all = profile.reduce((sum, { x }) => sum + x.length, 0);
    lines.push(`${cells}: ${count(all, 'cell')} at the last instant`);
  }
  return `${lines.join('\n')}\n`;
}

function summary(run: RigRun | null, rig: Rig, ended: Ended, seconds: number, written: readonly string[]) {
  const { time = 0, steps = 0, cellUpdates = 0, retries = 0, mass = null, energy = null, beyond = null } = run ?? {};
  return {
    ...{ ended, time, duration: rig.duration, seconds, steps, cellUpdates, retries, mass, energy, beyond },
    rows: run?.times.length ?? 0,
    output: written[0] ?? null,
    profile: written[1] ?? null,
  };
}
