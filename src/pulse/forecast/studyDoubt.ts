/**
 * How far apart two sizes of a study must lie to be told apart: what coarse cells and few speeds put wrong. N m of mean torque.
 */
import { sumUp } from './curve';
import { curveOf, isWhole, type StudyDocument, type StudyPoint } from './study';
import { gridError, ranked } from './studyRank';
import type { StudySize } from './studySizes';

export type SpeedsError = {
  /**
   * N m, by which the means of two sizes differ for want of speeds: the root of the mean square over all pairs of sizes. What all sizes
   * have alike falls out of a ranking, and of this.
   */
  readonly spread: number;
  /** Each ranked size's mean over all speeds, and over every second one, N m. */
  readonly checks: readonly { readonly key: string; readonly all: number; readonly half: number }[];
};

/**
 * From means over all speeds less means over every second speed, first and last always among them: both halves, as where a curve's humps
 * lie among the speeds is chance. Null below four speeds, or two whole sizes.
 *
 * It mostly overstates. Trapezoids on a curve that is smooth between speeds err a quarter as much with twice the speeds, so by a third
 * of what is taken here; on one that is rough from speed to speed by all of it. Measured with 21 speeds taken for the truth, N m told
 * and true and the share of pairs within what is told: 12 sizes of a four-cylinder 4-into-1 header, 6 speeds 2.05, 1.28, 0.89, and 11
 * speeds 1.30, 0.44, 1.00; 18 sizes of a 4-2-1 header, 6 speeds 0.97, 0.61, 0.89, and 11 speeds 0.40, 0.35, 0.78.
 */
export function speedsError(study: StudyDocument): SpeedsError | null {
  if (study.speeds.length < 4) return null;
  const checks = ranked(study).flatMap(({ key, rank }) => {
    const curve = curveOf(study, study.answers, key);
    const points = curve.filter((point): point is StudyPoint => !('failed' in point));
    if (rank === null || !isWhole(study, curve)) return [];
    const all = sumUp(points, study.band).mean;
    const halves = [0, 1].map((parity) => sumUp(everySecond(points, parity), study.band).mean);
    if (all === null || halves.some((half) => half === null)) return [];
    return [{ key, all, halves: halves as number[] }];
  });
  if (checks.length < 2) return null;
  const squares = [0, 1].map((k) => variance(checks.map(({ all, halves }) => all - halves[k]!)));
  return {
    // Two sizes' difference has twice the variance of one.
    spread: Math.sqrt(squares[0]! + squares[1]!),
    checks: checks.map(({ key, all, halves }) => ({ key, all, half: halves[0]! })),
  };
}

const everySecond = <T>(points: readonly T[], parity: number): readonly T[] =>
  points.filter((_, k) => k === 0 || k === points.length - 1 || k % 2 === parity);

/** @param values two at least */
function variance(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
}

/** Of what cells and speeds put wrong; null where neither is known. Both come about independently: their squares add up. N m */
export const errorOfBoth = (cells: number | null, speeds: number | null): number | null =>
  cells === null && speeds === null ? null : Math.hypot(cells ?? 0, speeds ?? 0);

/** N m */
export const apartBy = (study: StudyDocument): number | null =>
  errorOfBoth(gridError(study)?.spread ?? null, speedsError(study)?.spread ?? null);

/** The best size, first, and those of its arrangement that cannot be told apart from it; none where nothing is ranked yet. */
export function alikeBest(study: StudyDocument): StudySize[] {
  const sizes = ranked(study);
  const best = sizes.find(({ rank }) => rank === 1);
  if (!best) return [];
  const least = best.summary.mean! - (apartBy(study) ?? 0);
  return sizes
    .filter(
      ({ rank, size, summary }) =>
        rank !== null && size.arrangement === best.size.arrangement && summary.mean! >= least,
    )
    .map(({ size }) => size);
}
