/** How a run stands and what it kept, in words and numbers for the page. */
import type { RigRun } from '../../pulse/report';
import { beyondText } from '../../pulse/rig/accountText';
import { secondsLeft, spanText, whyLong } from '../../pulse/rig/outlook';
import type { Rig } from '../../pulse/rig/types';
import type { Progress } from './messages';
import { timeUnit } from './quantities';
import { decimalsFor } from './scale';
import type { Seen } from './shown';

/** In the rig's unit of time, with as many decimals as tell a thousandth of its duration. */
export function timeText(time: number, rig: Pick<Rig, 'gas' | 'duration'>): string {
  const { factor } = timeUnit(rig);
  return (time * factor).toFixed(decimalsFor(rig.duration * factor));
}

/** In an order of magnitude that can be read: 3.1e-16 as 3.1 × 10 to the −16. */
export function powerOf(value: number): Pick<Fact, 'value' | 'power'> {
  if (value === 0 || !Number.isFinite(value)) return { value: String(value).replace('-', '−'), power: null };
  const [times, power] = value.toExponential(1).split('e') as [string, string];
  return { value: `${times.replace('-', '−')} × 10`, power: String(Number(power)).replace('-', '−') };
}

const count = (n: number): string => n.toLocaleString('en-GB').replaceAll(',', ' ');

export type Fact = {
  readonly name: string;
  readonly value: string;
  /** Written raised behind it. */
  readonly power: string | null;
  readonly unit: string;
  readonly meaning: string;
  /** Another one every time. */
  readonly ofClock?: boolean;
};

/** The account of a run. */
export function facts({ run, progress }: Pick<Seen, 'run' | 'progress'>): readonly Fact[] {
  const { mass, energy, steps, retries, cellUpdates } = run;
  const meaning = 'final − initial + what left − what came in, relative to the initial';
  return [
    { name: 'Mass drift', ...powerOf(mass.drift), unit: '', meaning },
    {
      name: 'Energy drift',
      ...powerOf(energy.drift),
      unit: '',
      meaning: `${meaning}; heat from walls counts as in`,
    },
    { name: 'Steps', value: count(steps), power: null, unit: '', meaning: 'of time' },
    {
      name: 'Done again',
      value: count(retries),
      power: null,
      unit: '',
      meaning: 'steps that failed and were done again, smaller',
    },
    {
      name: 'Took',
      value: progress.spent.toFixed(2),
      power: null,
      unit: 's',
      meaning: 'in the solver, on this machine',
      ofClock: true,
    },
    {
      name: 'Pace',
      value: paceText(cellUpdates, progress.spent),
      power: null,
      unit: 'million cell updates/s',
      meaning: 'cells times steps, millions a second',
      ofClock: true,
    },
  ];
}

const paceText = (cellUpdates: number, spent: number): string =>
  spent > 0 ? (cellUpdates / spent / 1e6).toFixed(2) : '–';

/** How far the picture goes, where it does not go all the way. */
export function reachWords({
  rig,
  run,
  ending,
}: Pick<Seen, 'rig' | 'ending'> & { readonly run: Pick<RigRun, 'time'> }): string | null {
  if (!ending || ending.how === 'whole') return null;
  const reached = `${timeText(run.time, rig)} of ${`${timeText(rig.duration, rig)} ${timeUnit(rig).unit}`.trim()}`;
  if (ending.how === 'ended') return `Ended at ${reached}; what there is until then stays.`;
  return `${ending.why} What there is until ${reached} stays.`;
}

/** Where the table of heats does not hold for the gas: what came of it must not be taken for more than it is. */
export function beyondWords({ beyond }: Pick<RigRun, 'beyond'>): string | null {
  if (!beyond) return null;
  const text = beyondText(beyond);
  return `${text[0]!.toUpperCase()}${text.slice(1)}.`;
}

/** How long is left, and why where it is long; null: too early to tell. */
export function leftWords({ spent, time, duration }: Progress, rig: Rig): { left: string; why: string | null } | null {
  const left = secondsLeft(spent, time, duration);
  return left === null ? null : { left: `${spanText(left)} left`, why: whyLong(left, rig) };
}
