/**
 * `pulse --rig RIG -o OUT.csv`: follows the waves of a rig and writes what its probes saw. An interrupt, or a step that cannot be
 * done, ends it early: what there is until then is written all the same.
 */
import { resolve } from 'node:path';
import type { Running } from '../../pulse/report';
import { accountText } from '../../pulse/rig/accountText';
import { profilePath } from '../../pulse/rig/csv';
import { MAX_RIG_BYTES } from '../../pulse/rig/limits';
import { readRig } from '../../pulse/rig/read';
import type { Rig } from '../../pulse/rig/types';
import { insistWritable, readText } from '../files';
import { FAILS, HOLDS, type Io, oneLine, UnusableInput } from '../io';
import { naming } from '../readDesign';
import { follow } from './follow';
import { leave, NOTHING, said, summary } from './leave';
import { insistOther } from './options';

export type RigArguments = { readonly rig: string; readonly output?: string; readonly json?: boolean };

const USAGE = 'evenrun pulse --rig RIG.json -o OUT.csv';

/** @param more what stands on the line besides options. */
export async function followRig(
  more: readonly string[],
  given: RigArguments,
  io: Io,
  start: (rig: Rig) => Running,
): Promise<number> {
  const { from, to, output } = paths(more, given, io);
  const rig = naming(from, () => readRig(readText(from, MAX_RIG_BYTES)));
  if (rig.profile) {
    insistOther(from, profilePath(to), isTheRig(profilePath(output)));
    insistWritable(profilePath(to));
  }

  const { onInterrupt, status = () => {} } = io.process ?? {};
  let isInterrupted = false;
  // Until all is written and told: a second interrupt would otherwise end the process in the midst of it.
  const quiet = onInterrupt?.(() => {
    isInterrupted = true;
  });
  try {
    const began = performance.now();
    const remark = (line: string) => {
      status('');
      io.err(`evenrun: ${line}\n`);
    };
    const followed = await follow(rig, start, () => isInterrupted, status, remark);
    const seconds = (performance.now() - began) / 1000;
    const { run, ended, message } = followed;
    status('writing…');
    const left = run ? leave(run, rig, to, output) : NOTHING;
    status('');
    const isAll = run !== null && left.unwritten.length === 0;
    if (message !== '') io.err(`evenrun: ${message}${isAll ? '; what there is until then is written' : ''}\n`);
    const rest = left.table ?? left.profile;
    for (const line of left.unwritten) io.err(`evenrun: ${line}; ${rest === null ? 'no table' : rest} is written\n`);
    if (run) io.err(accountText(run));
    if (given.json) io.out(`${JSON.stringify(summary(followed, rig, left, seconds), null, 2)}\n`);
    else if (run) io.out(said(run, rig, left, seconds));
    return ended === 'whole' && isAll ? HOLDS : FAILS;
  } finally {
    status('');
    quiet?.();
  }
}

function paths(more: readonly string[], { rig, output }: RigArguments, io: Io) {
  if (more.length > 0) throw new UnusableInput(`pulse: found "${oneLine(more[0]!)}" besides its options: ${USAGE}`);
  if (output === undefined) throw new UnusableInput(`-o, --output: say where to write the table: ${USAGE}`);
  if (!/[^/\\]\.csv$/i.test(output)) {
    const tip = `${output.replace(/[/\\]+$|\.[A-Za-z0-9]*$/, '')}.csv`;
    throw new UnusableInput(`-o, --output: found "${output}"; allowed: a name that ends in .csv, such as ${tip}`);
  }
  const from = resolve(io.cwd, rig);
  const to = resolve(io.cwd, output);
  insistOther(from, to, isTheRig(output));
  insistWritable(to);
  return { from, to, output };
}

/** @param name of what is to be written, as the user would give it */
const isTheRig = (name: string): string => `-o, --output: ${name} is the rig itself; choose another name`;
