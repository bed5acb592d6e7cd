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

/** @param best null where none is known yet */
export function rulesBeside(design: Design, band: Band, arrangement: Arrangement, best: StudySize | null): RulesBeside {
  try {
    const asked = rulesOnMap(design, band, arrangement);
    return { arrangement, band, asked, why: null, best: best && besideRules(best, asked, band) };
  } catch (error) {
    // A study is whole without them.
    if (error instanceof DesignError) return { arrangement, band, asked: [], why: error.message, best: null };
    throw error;
  }
}

export function besideRules(size: StudySize, rules: readonly MapRule[], band: Band): BesideRules {
  const tuned = tunedSpeed(band);
  const speeds = rules.flatMap(({ along }) => along.map(({ rpm }) => rpm));
  const rpm = speeds.reduce((best, one) => (Math.abs(one - tuned) < Math.abs(best - tuned) ? one : best), band[1]);
  return {
    rpm,
    length: among(
      size.length,
      asked(rules, rpm, ({ length }) => length),
    ),
    bore: among(
      boreOf(size),
      asked(rules, rpm, ({ bore }) => bore),
    ),
  };
}

const asked = (rules: readonly MapRule[], rpm: number, of: (point: RulePoint) => number | null): number[] =>
  rules
    .filter(({ bearing }) => bearing === 'size')
    .flatMap(({ along }) => along.flatMap((point) => (point.rpm === rpm ? (of(point) ?? []) : [])));

function among(is: number, all: readonly number[]): AmongRules | null {
  if (all.length === 0) return null;
  const [from, to] = [Math.min(...all), Math.max(...all)];
  return { is, from, to, lies: is < from ? 'below' : is > to ? 'above' : 'within' };
}
