/** What an answer stands on: whether anything measured went in, what nobody gave, what is doubtful, and what is to be trusted of it. */
import type { Fitted } from '../../../../shared/design/types';
import { isAnswer, type Subject } from '../../../pulse/forecast/curve';
import type { Doubt, TorqueCurve } from '../../../pulse/forecast/types';
import { rpmText } from './curve';

/** Of what is assumed so many are named; all are in `--json`. */
const NAMED = 6;

/** Of characters: a longer value is left to `--json`, unless there are no more than are named. */
const SHORT = 24;

/** What tells most in a torque curve comes first. */
const WEIGHTY = [
  /compressionRatio/,
  /intakeValve/,
  /exhaustValve/,
  /intake\/(runner|plenum|throttle)/,
  /^exhaust\//,
  /combustion/,
  /firing/,
];

const weight = (path: string): number => {
  const found = WEIGHTY.findIndex((one) => one.test(path));
  return found < 0 ? WEIGHTY.length : found;
};

/** @param of what, where a line is not of all that is followed, such as ` of the other alone` */
export function assumedLine(assumed: Subject['assumed'], of = ''): string | null {
  if (assumed.length === 0) return null;
  const sorted = assumed.toSorted((a, b) => weight(a.path) - weight(b.path));
  const isShort = (taken: string): boolean => taken.length <= SHORT || assumed.length <= NAMED;
  const named = sorted.slice(0, NAMED).map(({ name, taken }) => (isShort(taken) ? `${name} ${taken}` : name));
  const more = assumed.length > NAMED ? ' and more' : '';
  return `Assumed${of}, as nobody gave it (${assumed.length}): ${named.join('; ')}${more}; --json has every value and why`;
}

export function calibration(fitted: Fitted | undefined): string {
  const factors = Object.entries(fitted ?? {}).filter(([, factor]) => factor !== undefined);
  if (factors.length === 0) return 'Not calibrated: nothing measured on this engine went in';
  const told = factors.map(([name, factor]) => `${name} × ${Number(factor!.toFixed(4))}`).join(', ');
  return `Calibrated on a curve measured on this engine: ${told}`;
}

export const TRUST = [
  'Checked against theory and published trends, not against this engine. Trust the shape of a curve and the difference between two more',
  'than any number by itself; measure before you rely on it.',
].join(' ');

/** One line for each kind of doubt, with the speeds that have it. @param curve may be of several curves, one behind the other */
export function doubtLines(curve: TorqueCurve): string[] {
  const found = new Map<Doubt['kind'], { speeds: Set<number>; messages: Set<string> }>();
  for (const point of curve.filter(isAnswer))
    for (const { kind, message } of point.doubts) {
      const before = found.get(kind) ?? { speeds: new Set(), messages: new Set() };
      before.speeds.add(point.rpm);
      before.messages.add(message);
      found.set(kind, before);
    }
  const answered = new Set(curve.filter(isAnswer).map(({ rpm }) => rpm)).size;
  return [...found.values()].map(({ speeds, messages }) => {
    const all = [...speeds].sort((a, b) => a - b);
    const which = all.length === answered && answered > 1 ? 'all speeds' : `${all.map(rpmText).join(', ')} rpm`;
    const first = messages.size > 1 ? ', at the first of them' : '';
    return `Doubtful at ${which}: ${[...messages][0]}${first}`;
  });
}

/** What only the first of two stands on. */
export const alone = (one: Subject['assumed'], other: Subject['assumed']): Subject['assumed'] =>
  one.filter(({ path, name, taken }) => !other.some((o) => o.path === path && o.name === name && o.taken === taken));

/** The last lines of every answer. */
export const basisLines = (subject: Pick<Subject, 'assumed'>, fitted: Fitted | undefined): string[] => [
  calibration(fitted),
  ...[assumedLine(subject.assumed)].filter((line) => line !== null),
  TRUST,
];
