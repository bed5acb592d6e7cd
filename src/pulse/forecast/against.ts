/**
 * Two torque curves at the same speeds: what the second has over the first. Differences are worth more than either curve, as what
 * is wrong with both falls out of them. rpm, N m, %.
 */
import type { EngineSetup } from '../engine/types';
import { areaUnder, isAnswer } from './curve';
import type { Band } from './speeds';
import type { SpeedAnswer, TorqueCurve } from './types';

export type Difference = {
  readonly rpm: number;
  /** N m */
  readonly before: number;
  readonly after: number;
  readonly gain: number;
  /** Of `before`; null where that is 0 or less. */
  readonly percent: number | null;
};

export type Comparison = {
  /** Speeds that both answered. */
  readonly rows: readonly Difference[];
  /** Speeds that one of them did not. */
  readonly missing: readonly number[];
  /** Null: there is none anywhere. */
  readonly greatestGain: Difference | null;
  readonly greatestLoss: Difference | null;
  /** Under the curves within the band, N m × rpm; null where they do not reach over any of it. */
  readonly area: { readonly before: number; readonly after: number; readonly gained: number } | null;
  /** Mean gain over the part of the band that is covered, N m. */
  readonly mean: number | null;
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
  return {
    rows,
    missing: before.flatMap((a, k) => (isAnswer(a) && isAnswer(after[k]!) ? [] : [a.rpm])),
    greatestGain: by(1),
    greatestLoss: by(-1),
    area: isCovered ? { before: under('before'), after: under('after'), gained: under('gain') } : null,
    mean: isCovered ? under('gain') / (covered[1] - covered[0]) : null,
  };
}

function differenceOf({ rpm, torque: before }: SpeedAnswer, { torque: after }: SpeedAnswer): Difference {
  const gain = after - before;
  return { rpm, before, after, gain, percent: before > 0 ? (100 * gain) / before : null };
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

/** What differs between two engines, in words; the speeds that they are used at do not count. Empty: one engine, so only the gas path differs. */
export function engineDifferences(one: EngineSetup, other: EngineSetup): string[] {
  return (Object.keys(NAMES) as (keyof EngineSetup)[])
    .filter((key) => key !== 'speeds' && JSON.stringify(one[key]) !== JSON.stringify(other[key]))
    .map((key) => NAMES[key]);
}
