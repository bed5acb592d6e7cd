/**
 * Two torque curves at the same speeds: what the second has over the first. Differences are worth more than either curve, as what
 * is wrong with both falls out of them. rpm, N m, %.
 */
import type { EngineSetup } from '../engine/types';
import { areaUnder, isAnswer, type Subject } from './curve';
import { settlingNoise } from './noise';
import type { Band } from './speeds';
import type { Doubt, SpeedAnswer, SpeedFailure, TorqueCurve } from './types';

/** Whether torque of one curve settled at a speed, and why it deserves less trust. */
export type Trust = { readonly settled: boolean; readonly doubts: readonly Doubt['kind'][] };

export type Difference = {
  readonly rpm: number;
  readonly trust: { readonly before: Trust; readonly after: Trust };
  /** N m */
  readonly before: number;
  readonly after: number;
  readonly gain: number;
  /** Of `before`; null where that is 0 or less. */
  readonly percent: number | null;
};

/** A speed that one of the two did not answer: what the other says of it, and why. */
export type Missing = {
  readonly rpm: number;
  /** N m */
  readonly before: number | null;
  readonly after: number | null;
  readonly trust: { readonly before: Trust | null; readonly after: Trust | null };
  readonly failed: string;
};

export type Comparison = {
  /** Speeds that both answered. */
  readonly rows: readonly Difference[];
  /** Speeds that one of them did not. */
  readonly missing: readonly Missing[];
  /** Null: there is none anywhere. */
  readonly greatestGain: Difference | null;
  readonly greatestLoss: Difference | null;
  /** Under the curves within the band, N m × rpm; null where they do not reach over any of it. */
  readonly area: { readonly before: number; readonly after: number; readonly gained: number } | null;
  /** Mean gain over the part of the band that is covered, N m. */
  readonly mean: number | null;
  /** The part of the band that both curves reach over. */
  readonly covered: Band | null;
  /** N m that the mean may differ by for no other reason than where two settled curves stopped; null where there is no mean. */
  readonly noise: number | null;
  readonly isWithinNoise: boolean;
};

/** @throws RangeError where the speeds are not the same */
export function against(before: TorqueCurve, after: TorqueCurve, band: Band): Comparison {
  if (before.length !== after.length || before.some(({ rpm }, k) => rpm !== after[k]!.rpm))
    throw new RangeError('Curves are compared at the same speeds only');
  const pairs = before.flatMap((a, k) => {
    const b = after[k]!;
    return isAnswer(a) && isAnswer(b) ? [[a, b] as const] : [];
  });
  const rows = pairs.map(([a, b]) => differenceOf(a, b));
  const by = (sign: 1 | -1): Difference | null =>
    rows.reduce<Difference | null>((best, row) => (sign * row.gain > sign * (best?.gain ?? 0) ? row : best), null);
  const covered: Band = [Math.max(band[0], rows[0]?.rpm ?? 0), Math.min(band[1], rows.at(-1)?.rpm ?? 0)];
  const isCovered = rows.length > 1 && covered[0] < covered[1];
  const under = (which: 'before' | 'after' | 'gain'): number =>
    areaUnder(
      rows.map((row) => [row.rpm, row[which]]),
      covered,
    );
  const width = covered[1] - covered[0];
  const mean = isCovered ? under('gain') / width : null;
  const noise = isCovered ? settlingNoise(under('before') / width) : null;
  return {
    rows,
    missing: before.flatMap((a, k) => missingOf(a, after[k]!)),
    greatestGain: by(1),
    greatestLoss: by(-1),
    area: isCovered ? { before: under('before'), after: under('after'), gained: under('gain') } : null,
    mean,
    covered: isCovered ? covered : null,
    noise,
    isWithinNoise: mean !== null && noise !== null && Math.abs(mean) <= noise,
  };
}

const trustOf = ({ settled, doubts }: SpeedAnswer): Trust => ({ settled, doubts: doubts.map(({ kind }) => kind) });

function differenceOf(a: SpeedAnswer, b: SpeedAnswer): Difference {
  const [before, after] = [a.torque, b.torque];
  const gain = after - before;
  const percent = before > 0 ? (100 * gain) / before : null;
  return { rpm: a.rpm, before, after, gain, percent, trust: { before: trustOf(a), after: trustOf(b) } };
}

function missingOf(a: SpeedAnswer | SpeedFailure, b: SpeedAnswer | SpeedFailure): Missing[] {
  if (isAnswer(a) && isAnswer(b)) return [];
  const [before, after] = [a, b].map((point) => (isAnswer(point) ? point : null));
  const why = [a, b].flatMap((point, k) => (isAnswer(point) ? [] : [[k === 0 ? 'before' : 'after', point.failed]]));
  const isAlike = why.length === 2 && why[0]![1] === why[1]![1];
  return [
    {
      rpm: a.rpm,
      ...{ before: before?.torque ?? null, after: after?.torque ?? null },
      trust: { before: before ? trustOf(before) : null, after: after ? trustOf(after) : null },
      failed: isAlike ? why[0]![1]! : why.map(([which, reason]) => `${which}: ${reason}`).join('; '),
    },
  ];
}

const NAMES: Readonly<Record<keyof EngineSetup, string>> = {
  cylinders: 'cylinders',
  fires: 'firing angles',
  firingOrder: 'firing order',
  bore: 'bore',
  stroke: 'stroke',
  rod: 'rod',
  compressionRatio: 'compression ratio',
  intakeValve: 'intake valve',
  exhaustValve: 'exhaust valve',
  burn: 'combustion',
  fuel: 'fuel',
  walls: 'cylinder walls',
  friction: 'friction',
  flowFactor: 'factor on the valves’ flow',
  intake: 'intake',
  air: 'air',
  speeds: 'speeds',
};

/** nm: what rounding alone puts between two paths is less. */
const ROUNDED = 1e9;

/** The same engine on the same gas path, whatever they are called: nothing could lie between their curves. */
export function isSame(one: Pick<Subject, 'engine' | 'path'>, other: Pick<Subject, 'engine' | 'path'>): boolean {
  const text = ({ engine, path }: Pick<Subject, 'engine' | 'path'>): string =>
    JSON.stringify(
      [
        { ...engine, speeds: null },
        { ...path, title: null },
      ],
      (_, value: unknown) => (typeof value === 'number' ? Math.round(value * ROUNDED) / ROUNDED : value),
    );
  return text(one) === text(other);
}

/** What differs between two engines, in words; the speeds that they are used at do not count. Empty: one engine, so only the gas path differs. */
export function engineDifferences(one: EngineSetup, other: EngineSetup): string[] {
  return (Object.keys(NAMES) as (keyof EngineSetup)[])
    .filter((key) => key !== 'speeds' && JSON.stringify(one[key]) !== JSON.stringify(other[key]))
    .map((key) => NAMES[key]);
}
