/**
 * What the formulas are fed with: mm, rpm, °C, crank degrees from top dead centre of the exhaust stroke (as in the design).
 * What is not known is assumed, and named as assumed wherever it is used. Nonsense is refused by name.
 */
import { DesignError, describe, type Refusal } from '../../design/refusal';
import { type Arrangement, joinedFirst } from '../form';
import { formFields } from '../formFields';
import type { UsedInput } from './types';

export type SizingInput = {
  /** Cylinders that end in one collector. */
  readonly cylinders: number;
  readonly bore: number;
  readonly stroke: number;
  /** The speed to tune for. */
  readonly rpm: number;
  /** The highest speed used. Default: the speed tuned for. */
  readonly topRpm?: number | undefined;
  readonly arrangement?: Arrangement | undefined;
  readonly exhaustOpens?: number | undefined;
  readonly exhaustCloses?: number | undefined;
  readonly intakeOpens?: number | undefined;
  /** Mean over the primary, °C. */
  readonly gasTemperature?: number | undefined;
  /** Crank degrees from the exhaust's pulse to the wanted return of its reflection. */
  readonly returnAfter?: number | undefined;
  /** Of a round hole with the port opening's area. Formulas that need it are left out without it. */
  readonly portDiameter?: number | undefined;
  /** Inside diameter of the primary that was chosen; without it, the size found here. */
  readonly primaryBore?: number | undefined;
  readonly wall?: number | undefined;
};

type NumberKey = Exclude<keyof SizingInput, 'arrangement'>;

export type Resolved = {
  readonly [K in Exclude<NumberKey, 'portDiameter' | 'primaryBore'>]: number;
} & {
  readonly arrangement: Arrangement;
  readonly portDiameter: number | null;
  readonly primaryBore: number | null;
  /** How many cylinders each first merge joins; null: all of them at once. */
  readonly joinedFirst: 2 | 3 | null;
  readonly assumed: ReadonlySet<string>;
};

/**
 * Usual values where nothing is given. Timing: a warm road camshaft, common practice. Gas: the upper end of the usual
 * 400–600 °C (Heywood, Internal Combustion Engine Fundamentals, section 6.5; from memory). 120° from pulse to return:
 * common practice.
 */
const ASSUMED = {
  exhaustOpens: -240,
  exhaustCloses: 20,
  intakeOpens: -20,
  gasTemperature: 600,
  returnAfter: 120,
  wall: 1.5,
} as const;

type Bounds = { readonly name: string; readonly unit: string; readonly least: number; readonly most: number };
const as = (path: string, name?: string): Bounds => {
  const field = formFields(path)!;
  return { ...field, name: name ?? field.name };
};

const BOUNDS: Readonly<Record<NumberKey, Bounds>> = {
  cylinders: as('cylinders', 'Cylinders to one collector'),
  bore: as('bore'),
  stroke: as('stroke'),
  rpm: as('rpm/0', 'Tuned for'),
  topRpm: as('rpm/1', 'Highest speed'),
  exhaustOpens: { name: 'Exhaust opens', unit: '°', least: -320, most: -180 },
  exhaustCloses: { name: 'Exhaust closes', unit: '°', least: -60, most: 120 },
  intakeOpens: { name: 'Intake opens', unit: '°', least: -120, most: 60 },
  gasTemperature: { name: 'Gas in the primary', unit: '°C', least: 100, most: 1200 },
  returnAfter: { name: 'Pulse to return', unit: '°', least: 30, most: 360 },
  portDiameter: as('port/opening/diameter', 'Port, as a round hole'),
  primaryBore: { name: 'Primary, inside', unit: 'mm', least: 10, most: 130 },
  wall: as('primary/tube/wall'),
};

/** @throws DesignError naming every field that is out of its bounds */
export function resolveInput(input: SizingInput): Resolved {
  const problems: Refusal[] = [];
  for (const [key, bounds] of Object.entries(BOUNDS) as [NumberKey, Bounds][]) {
    const value = input[key];
    const needed = key === 'cylinders' || key === 'bore' || key === 'stroke' || key === 'rpm';
    if (value === undefined && !needed) continue;
    const { least, most, unit } = bounds;
    const whole = key === 'cylinders';
    if (typeof value === 'number' && value >= least && value <= most && (!whole || Number.isInteger(value))) continue;
    const kind = whole ? 'a whole number' : 'a number';
    problems.push({ path: key, found: describe(value), allowed: `${kind} from ${least} to ${most} ${unit}`.trimEnd() });
  }
  const arrangement = input.arrangement ?? 'all-into-one';
  const first = joinedFirst(arrangement);
  if (first !== null && (input.cylinders % first !== 0 || input.cylinders <= first))
    problems.push({
      path: 'arrangement',
      found: `${describe(arrangement)} with ${describe(input.cylinders)} cylinders to one collector`,
      allowed: `at least ${2 * first} cylinders, in ${first === 2 ? 'pairs' : 'threes'}; or all-into-one`,
    });
  if (input.topRpm !== undefined && input.topRpm < input.rpm)
    problems.push({
      path: 'topRpm',
      found: describe(input.topRpm),
      allowed: `not below the ${input.rpm} rpm tuned for`,
    });
  if (problems.length > 0) throw new DesignError(problems);

  const given = Object.fromEntries(Object.entries(input).filter(([, value]) => value !== undefined)) as SizingInput;
  return {
    topRpm: input.rpm,
    portDiameter: null,
    primaryBore: null,
    ...ASSUMED,
    ...(given as { [K in keyof SizingInput]: NonNullable<SizingInput[K]> }),
    arrangement,
    joinedFirst: first,
    assumed: new Set([...Object.keys(ASSUMED), 'topRpm'].filter((key) => !(key in given))),
  };
}

/** The end of the stroke that a valve's opening or closing is told from, degrees from the top where both valves are open. */
const COUNTED_FROM: { readonly [Key in NumberKey]?: number } = { exhaustOpens: -180, exhaustCloses: 0, intakeOpens: 0 };

function eventWords(degrees: number, end: number): string {
  const off = degrees - end;
  const name = end === 0 ? 'top' : 'bottom';
  return off === 0 ? `at the ${name}` : `${Math.abs(off)}° ${off < 0 ? 'before' : 'after'} the ${name}`;
}

/** The inputs by name, for the reader of a result. */
export function inputsUsed(from: Resolved, keys: readonly NumberKey[]): UsedInput[] {
  return keys.map((key) => ({
    name: BOUNDS[key].name,
    value: from[key] ?? Number.NaN,
    unit: BOUNDS[key].unit,
    ...(key in COUNTED_FROM ? { words: eventWords(from[key]!, COUNTED_FROM[key]!) } : {}),
    assumed: from.assumed.has(key),
  }));
}
