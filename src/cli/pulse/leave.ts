/**
 * What a followed rig leaves behind: its tables, and what is said of them. A table that cannot be written takes nothing else with it:
 * the other one and the account are all there is of the work.
 */
import type { RigRun } from '../../pulse/report';
import { probesCsv, profileCsv, profilePath } from '../../pulse/rig/csv';
import type { Rig } from '../../pulse/rig/types';
import { writeWhole } from '../files';
import { UnusableInput } from '../io';
import { type Followed, instant } from './follow';

/** Names as the user would give them; null: there is none. */
export type Left = {
  readonly table: string | null;
  readonly profile: string | null;
  /** A line for each that was to be written and could not be. */
  readonly unwritten: readonly string[];
};

export const NOTHING: Left = { table: null, profile: null, unwritten: [] };

/** @param to the whole path of `output` */
export function leave(run: RigRun, rig: Rig, to: string, output: string): Left {
  const unwritten: string[] = [];
  const attempt = (path: string, name: string, text: () => string): string | null => {
    try {
      writeWhole(path, text());
      return name;
    } catch (error) {
      if (!(error instanceof UnusableInput)) throw error;
      unwritten.push(error.message);
      return null;
    }
  };
  const table = attempt(to, output, () => probesCsv(run));
  const profile = rig.profile ? attempt(profilePath(to), profilePath(output), () => profileCsv(run)) : null;
  return { table, profile, unwritten };
}

export function said(
  { times, probes, profile: pipes, time }: RigRun,
  { sample }: Rig,
  { table, profile }: Left,
  seconds: number,
): string {
  const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
  const none = sample === 0 ? ' ("sample" is 0)' : '';
  const lines = [`${instant(time)} followed in ${seconds.toFixed(2)} s`];
  if (table !== null) lines.push(`${table}: ${count(times.length, 'row')} of ${count(probes.length, 'probe')}${none}`);
  if (profile !== null) {
    const all = pipes.reduce((sum, { x }) => sum + x.length, 0);
    lines.push(`${profile}: ${count(all, 'cell')} at the last instant`);
  }
  return `${lines.join('\n')}\n`;
}

export function summary({ run, ended, stopped }: Followed, rig: Rig, left: Left, seconds: number) {
  const { time = 0, steps = 0, cellUpdates = 0, retries = 0, mass = null, energy = null, beyond = null } = run ?? {};
  return {
    ...{ ended, time, duration: rig.duration, seconds, steps, cellUpdates, retries, mass, energy, beyond },
    // The cell as the message counts it, from 1.
    stopped: stopped && {
      time: stopped.time,
      pipe: stopped.pipe,
      cell: stopped.cell + 1,
      x: stopped.x,
      message: stopped.message,
    },
    rows: run?.times.length ?? 0,
    output: left.table,
    profile: left.profile,
    unwritten: left.unwritten,
  };
}
