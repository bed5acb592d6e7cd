/**
 * What a study has found: sizes ranked by the area under their torque curves, and how far coarse cells put that wrong. N m, rpm.
 */
import { type Summary, sumUp } from './curve';
import { curveOf, isWhole, type StudyDocument } from './study';
import { keyOf, type StudySize } from './studySizes';

export type RankedSize = {
  readonly key: string;
  readonly size: StudySize;
  /** From 1; null where a speed has no answer, as its area is then not comparable. */
  readonly rank: number | null;
  readonly summary: Summary;
};

/** Whole ones by area, the greatest first; then those that are not, in the order of the study. */
export function ranked(study: StudyDocument): RankedSize[] {
  const all = study.sizes.map((size) => {
    const key = keyOf(size);
    const curve = curveOf(study, study.answers, key);
    return { key, size, summary: sumUp(curve, study.band), isWhole: isWhole(study, curve) };
  });
  const whole = all
    .filter((one) => one.isWhole && one.summary.area !== null)
    .toSorted((a, b) => b.summary.area! - a.summary.area!);
  const place = (one: (typeof all)[number]): number | null => (whole.includes(one) ? whole.indexOf(one) + 1 : null);
  return [...whole, ...all.filter((one) => !whole.includes(one))].map((one) => ({
    ...{ key: one.key, size: one.size, rank: place(one), summary: one.summary },
  }));
}

/** Best, middle and worst of the ranked, each once: what is followed again on fine cells. */
export function checkedKeys(sizes: readonly RankedSize[]): string[] {
  const whole = sizes.filter(({ rank }) => rank !== null);
  if (whole.length === 0) return [];
  const at = [0, Math.floor((whole.length - 1) / 2), whole.length - 1];
  return [...new Set(at.map((k) => whole[k]!.key))];
}

/** Means over the band, N m, so that they compare with torque. */
export type FineCheck = {
  readonly key: string;
  readonly coarse: number;
  readonly fine: number;
  /** fine − coarse, and in % of fine. */
  readonly difference: number;
  readonly percent: number;
};

export type GridError = {
  readonly checks: readonly FineCheck[];
  /**
   * Greatest less least difference of `checks`, N m: sizes whose means are nearer than that cannot be told apart on coarse cells. What
   * all cells put wrong alike falls out of a ranking.
   */
  readonly spread: number;
  /** Whether the checked sizes come in the same order on fine cells. */
  readonly keepsOrder: boolean;
};

/** Null where fewer than two sizes were followed whole on fine cells. */
export function gridError(study: StudyDocument): GridError | null {
  const checks = study.sizes.map(keyOf).flatMap((key): FineCheck[] => {
    const [one, again] = [study.answers, study.fine.answers].map((answers) => curveOf(study, answers, key));
    if (!isWhole(study, one!) || !isWhole(study, again!)) return [];
    const coarse = sumUp(one!, study.band).mean;
    const fine = sumUp(again!, study.band).mean;
    if (coarse === null || fine === null) return [];
    const difference = fine - coarse;
    return [{ ...{ key, coarse, fine, difference }, percent: (100 * difference) / Math.abs(fine) }];
  });
  if (checks.length < 2) return null;
  const sorted = checks.toSorted((a, b) => b.coarse - a.coarse);
  const differences = checks.map(({ difference }) => difference);
  return {
    checks: sorted,
    spread: Math.max(...differences) - Math.min(...differences),
    keepsOrder: sorted.every(({ fine }, k) => k === 0 || fine <= sorted[k - 1]!.fine),
  };
}
