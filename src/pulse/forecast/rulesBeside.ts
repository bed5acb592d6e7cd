/**
 * A size that was found by following the gas, beside what the rules of thumb ask for over the same band. None of them is an oracle; a
 * size outside of all that they ask for is no mistake by itself, but one to look at twice. mm.
 */
import { DesignError } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import type { Arrangement } from '../../../shared/engine/form';
import { tunedSpeed } from '../../../shared/engine/sizing/tunedSpeed';
import { type MapRule, type RulePoint, rulesOnMap } from './rules';
import type { Band } from './speeds';
import { boreOf, type StudySize } from './studySizes';

/** One measure of a size among the rules. */
export type AmongRules = {
  readonly is: number;
  /** Least and greatest that any rule asks for at `BesideRules.rpm`. What is but a bound, at least or at most, is left out. */
  readonly from: number;
  readonly to: number;
  /** `within` what the rules differ by among themselves, or less or more than any of them asks for. */
  readonly lies: 'within' | 'below' | 'above';
  /** Least and greatest of the sizes that cannot be told apart from it, itself among them. */
  readonly alike: readonly [least: number, greatest: number];
  /** Whether something that the rules ask for lies among those: then the study does not speak against them. */
  readonly agrees: boolean;
};

/**
 * `rpm`: the rules' speed nearest to the one that a header for this band is tuned to. Over all of the band each alone asks for nearly
 * anything. Null where no rule asks for any.
 */
export type BesideRules = {
  readonly rpm: number;
  readonly length: AmongRules | null;
  readonly bore: AmongRules | null;
};

export type RulesBeside = {
  readonly arrangement: Arrangement;
  readonly band: Band;
  readonly asked: readonly MapRule[];
  /** Why there are none: the formulas do not take such an engine. */
  readonly why: string | null;
  readonly best: BesideRules | null;
};

/** @param alike the best size, first, and those that cannot be told apart from it; none where none is known yet */
export function rulesBeside(
  design: Design,
  band: Band,
  arrangement: Arrangement,
  alike: readonly StudySize[],
): RulesBeside {
  try {
    const asked = rulesOnMap(design, band, arrangement);
    return { arrangement, band, asked, why: null, best: alike.length > 0 ? besideRules(alike, asked, band) : null };
  } catch (error) {
    // A study is whole without them.
    if (error instanceof DesignError) return { arrangement, band, asked: [], why: error.message, best: null };
    throw error;
  }
}

function besideRules(alike: readonly StudySize[], rules: readonly MapRule[], band: Band): BesideRules {
  const tuned = tunedSpeed(band);
  const speeds = rules.flatMap(({ along }) => along.map(({ rpm }) => rpm));
  const rpm = speeds.reduce((best, one) => (Math.abs(one - tuned) < Math.abs(best - tuned) ? one : best), band[1]);
  return {
    rpm,
    length: among(
      alike.map(({ length }) => length),
      asked(rules, rpm, ({ length }) => length),
    ),
    bore: among(
      alike.map(boreOf),
      asked(rules, rpm, ({ bore }) => bore),
    ),
  };
}

const asked = (rules: readonly MapRule[], rpm: number, of: (point: RulePoint) => number | null): number[] =>
  rules
    .filter(({ bearing }) => bearing === 'size')
    .flatMap(({ along }) => along.flatMap((point) => (point.rpm === rpm ? (of(point) ?? []) : [])));

/** @param sizes the best one first */
function among(sizes: readonly number[], all: readonly number[]): AmongRules | null {
  if (all.length === 0) return null;
  const [is] = sizes as [number];
  const [from, to] = [Math.min(...all), Math.max(...all)];
  const alike = [Math.min(...sizes), Math.max(...sizes)] as const;
  const lies = is < from ? 'below' : is > to ? 'above' : 'within';
  return { is, from, to, lies, alike, agrees: alike[0] <= to && alike[1] >= from };
}
