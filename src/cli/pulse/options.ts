/** What `pulse DESIGN` is asked for, from options as people type them. Each refusal names its option. */

import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import {
  type Band,
  FASTEST,
  FEWEST_SPEEDS,
  MOST_SPEEDS,
  SLOWEST,
  speedsOf,
  USUAL_SPEEDS,
} from '../../pulse/forecast/speeds';
import type { SubjectKind } from '../../pulse/forecast/subject';
import { numberArgument, rangeArgument, wholeArgument } from '../arguments';
import { insistWritable, isSamePath } from '../files';
import { type Io, UnusableInput } from '../io';

/** As commander hands them over. */
export type PulseArguments = {
  readonly rig?: string;
  readonly output?: string | readonly string[];
  readonly json?: boolean;
  readonly on?: string;
  readonly speeds?: string;
  readonly band?: string;
  readonly cells?: string;
  readonly threads?: string;
  readonly trace?: string;
  readonly against?: string;
  readonly imbalance?: string;
  readonly study?: boolean;
  readonly lengths?: string;
  readonly bores?: string;
  readonly arrangements?: string;
  readonly outlets?: string;
  readonly resume?: boolean;
  readonly best?: string;
  readonly fit?: boolean;
};

const KINDS: readonly SubjectKind[] = ['header', 'cast', 'sketch'];

export function kindArgument(text: string | undefined): SubjectKind {
  if (text === undefined) return 'header';
  const found = KINDS.find((kind) => kind === text);
  if (found) return found;
  throw new UnusableInput(`--on: found "${text}"; allowed: ${KINDS.join(', ')}`);
}

const SPEEDS_ALLOWED = `${SLOWEST} to ${FASTEST} rpm`;

function speedArgument(option: string, text: string): number {
  const rpm = numberArgument(option, text);
  if (rpm >= SLOWEST && rpm <= FASTEST) return rpm;
  throw new UnusableInput(`${option}: found "${text}"; allowed: speeds from ${SPEEDS_ALLOWED}`);
}

const rising = (numbers: readonly number[]): number[] => [...new Set(numbers)].sort((a, b) => a - b);

export type Speeds = { readonly speeds: readonly number[]; readonly band: Band };

/** `--speeds` is a count, or a list; `--band` is where sums are taken and a count is spread. @param used lowest and highest that the engine is used at */
export function speedsArgument(
  given: Pick<PulseArguments, 'speeds' | 'band' | 'study' | 'imbalance'>,
  used: Band,
  usual = USUAL_SPEEDS,
): Speeds {
  const found = speedsGiven(given, used, usual);
  if (given.band !== undefined || given.study || given.imbalance !== undefined) insistMean(found);
  return found;
}

/** A mean torque is taken between speeds: two at least, with some of the band between them. */
function insistMean({ speeds, band }: Speeds): void {
  const [low, high] = [Math.max(band[0], speeds[0]!), Math.min(band[1], speeds.at(-1)!)];
  if (low < high) return;
  const found = speeds.length === 1 ? `${speeds[0]} rpm alone` : `${speeds[0]} to ${speeds.at(-1)} rpm`;
  throw new UnusableInput(
    `--speeds: found ${found}; allowed: at least two speeds within ${band[0]} to ${band[1]} rpm, as a mean is taken between them`,
  );
}

function speedsGiven(given: Pick<PulseArguments, 'speeds' | 'band'>, used: Band, usual: number): Speeds {
  const asked = given.band === undefined ? null : bandArgument(given.band);
  const text = given.speeds ?? String(usual);
  if (/^\s*\d{1,3}\s*$/.test(text) && Number(text) < SLOWEST) {
    const count = Number(text);
    if (count < FEWEST_SPEEDS || count > MOST_SPEEDS)
      throw new UnusableInput(
        `--speeds: found "${text}"; allowed: a whole number from ${FEWEST_SPEEDS} to ${MOST_SPEEDS}, how many; or single speeds from ${SPEEDS_ALLOWED}`,
      );
    const band = asked ?? used;
    if (band[0] < SLOWEST || band[1] > FASTEST)
      throw new UnusableInput(
        `engine/rpm: found [${band.join(', ')}]; allowed: speeds from ${SPEEDS_ALLOWED}; or say where with --band or --speeds`,
      );
    return { speeds: speedsOf(band, count), band };
  }
  if (/^\s*\d+\s*-\s*\d+\s*$/.test(text))
    throw new UnusableInput(
      `--speeds: found "${text}"; allowed: how many, or single speeds such as 2000,3500,5000; from where to where is --band`,
    );
  const speeds = rising(text.split(',').map((part) => speedArgument('--speeds', part)));
  if (speeds.length > MOST_SPEEDS)
    throw new UnusableInput(`--speeds: found ${speeds.length} speeds; allowed: at most ${MOST_SPEEDS}`);
  return { speeds, band: asked ?? (speeds.length > 1 ? [speeds[0]!, speeds.at(-1)!] : used) };
}

function bandArgument(text: string): Band {
  const [low, high] = rangeArgument('--band', text);
  if (low >= SLOWEST && high <= FASTEST) return [low, high];
  throw new UnusableInput(`--band: found "${text}"; allowed: speeds from ${SPEEDS_ALLOWED}`);
}

/** Speeds whose traces are wanted. */
export const traceArgument = (text: string | undefined): readonly number[] =>
  text === undefined ? [] : rising(text.split(',').map((part) => speedArgument('--trace', part)));

/** mm: shorter cells take all day, longer ones show no wave. */
const CELLS = [1, 100] as const;

/** @param usual m @returns m */
export function cellArgument(text: string | undefined, usual: number): number {
  if (text === undefined) return usual;
  const mm = numberArgument('--cells', text);
  if (mm >= CELLS[0] && mm <= CELLS[1]) return mm / 1000;
  throw new UnusableInput(`--cells: found "${text}"; allowed: the longest cell, ${CELLS[0]} to ${CELLS[1]} mm`);
}

export const threadsArgument = (text: string | undefined): number =>
  text === undefined ? availableParallelism() : wholeArgument('--threads', text, 1, 256);

/** Several numbers with commas between them, each within bounds. */
export function listArgument(option: string, text: string, least: number, most: number, unit: string): number[] {
  return rising(
    text.split(',').map((part) => {
      const value = numberArgument(option, part);
      if (value >= least && value <= most) return value;
      throw new UnusableInput(
        `${option}: found "${part.trim()}"; allowed: ${least} to ${most} ${unit}, such as ${option} ${least},${most}`,
      );
    }),
  );
}

/** A file to write: as the user calls it, and its whole path. */
export type Output = { readonly name: string; readonly path: string };

/**
 * One file for each kind of ending at most, none of them one that is read or written otherwise.
 * @param endings such as `.csv`; the first that fits counts @param others whole paths of what is read or written besides, with what
 * each is
 */
export function outputsArgument<const Ending extends string>(
  given: string | readonly string[] | undefined,
  endings: readonly Ending[],
  others: readonly { readonly path: string; readonly what: string }[],
  io: Io,
  option = '-o, --output',
): Partial<Record<Ending, Output>> {
  const found: Partial<Record<Ending, Output>> = {};
  for (const name of given === undefined ? [] : [given].flat()) {
    const ending = endings.find((one) => name.toLowerCase().endsWith(one) && !/(^|[/\\])\.[^/\\.]*$/.test(name));
    if (ending === undefined) {
      const tip = `${name.replace(/[/\\]+$|\.[A-Za-z0-9]*$/, '') || 'out'}${endings[0]}`;
      const allowed = `a name that ends in ${endings.join(' or ')}, such as ${tip}`;
      throw new UnusableInput(`${option}: found "${name}"; allowed: ${allowed}`);
    }
    if (found[ending]) throw new UnusableInput(`${option}: found two names that end in ${ending}; allowed: one`);
    const path = resolve(io.cwd, name);
    for (const other of others)
      insistOther(other.path, path, `${option}: ${name} is ${other.what} itself; choose another name`);
    insistWritable(path);
    found[ending] = { name, path };
  }
  return found;
}

export function insistOther(one: string, other: string, message: string): void {
  if (isSamePath(one, other)) throw new UnusableInput(message);
}

/** What is asked with an option that one way of asking alone takes. */
const BELONGS: Readonly<Partial<Record<keyof PulseArguments, string>>> = {
  trace: 'a torque curve',
  lengths: '--study',
  bores: '--study',
  arrangements: '--study',
  outlets: '--study',
  resume: '--study',
  best: '--study',
};

/** Options that only some of what can be asked for takes. @param taken by what is asked for, which `asked` names */
export function refuseOthers(given: PulseArguments, taken: readonly (keyof PulseArguments)[], asked: string): void {
  const known = Object.keys(given) as (keyof PulseArguments)[];
  const other = known.find((key) => given[key] !== undefined && given[key] !== false && !taken.includes(key));
  if (other === undefined) return;
  const place = BELONGS[other];
  throw new UnusableInput(`--${other}: does not go with ${asked}${place ? `; it is for ${place}` : ''}`);
}
