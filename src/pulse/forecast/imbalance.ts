/** What runners of unequal lengths cost: the same header with more and more of it, and the loss for each millimetre. N m, mm. */
import type { GasPath } from '../path/types';
import { followCurves, type How, type Subject, sumUp } from './curve';
import type { Team } from './job';
import { settlingNoise } from './noise';
import type { Band } from './speeds';
import type { TorqueCurve } from './types';

export type ImbalanceStep = {
  /** Longest less shortest, mm; the first is 0. */
  readonly imbalance: number;
  readonly curve: TorqueCurve;
  /** Over the band, N m. */
  readonly mean: number | null;
  /** Less than with equal lengths, N m: above 0 it costs. */
  readonly cost: number | null;
};

export type ImbalanceCost = {
  readonly steps: readonly ImbalanceStep[];
  /** N m for each mm, by the line through zero that fits the steps best; null where fewer than one could be followed whole. */
  readonly perMillimetre: number | null;
  /** N m that two settled curves may differ by for no other reason than where they stopped. */
  readonly noise: number;
  /** The greatest cost is no more than that: nothing can be said. */
  readonly isWithinNoise: boolean;
};

/** @param pathWith the header's gas path with so many mm between its longest and its shortest primary; 0: all equal */
export async function imbalanceCost(
  team: Team,
  engine: Subject['engine'],
  pathWith: (imbalance: number) => GasPath,
  imbalances: readonly number[],
  speeds: readonly number[],
  band: Band,
  how: How = {},
): Promise<ImbalanceCost> {
  const all = [0, ...imbalances];
  const subjects = all.map((imbalance) => ({ engine, path: pathWith(imbalance) }));
  const curves = await followCurves(team, subjects, speeds, how);
  const means = curves.map((curve) => {
    const { mean, missing } = sumUp(curve, band);
    return missing.length > 0 ? null : mean;
  });
  const equal = means[0]!;
  const steps = all.map((imbalance, k) => {
    const mean = means[k]!;
    return { imbalance, curve: curves[k]!, mean, cost: mean === null || equal === null ? null : equal - mean };
  });
  const known = steps.flatMap(({ imbalance, cost }) => (imbalance > 0 && cost !== null ? [{ imbalance, cost }] : []));
  const squares = known.reduce((sum, { imbalance }) => sum + imbalance ** 2, 0);
  const products = known.reduce((sum, { imbalance, cost }) => sum + imbalance * cost, 0);
  const noise = settlingNoise(equal ?? 0);
  return {
    steps,
    perMillimetre: squares > 0 ? products / squares : null,
    noise,
    isWithinNoise: known.every(({ cost }) => Math.abs(cost) <= noise),
  };
}
