/**
 * What a starting size is made of: several published formulas, each with its words, source, assumptions and result in mm,
 * and how far they spread. None of them is an oracle: they are places to start from.
 */

/** How sure the formula's wording is; results are always computed here. */
export type Confidence = 'read-in-source' | 'recomputed' | 'from-memory';

export type Source = {
  readonly text: string;
  readonly confidence: Confidence;
};

/** `at least` and `at most`: the formula gives a bound and not a size. */
export type Bearing = 'size' | 'at least' | 'at most';

export type Estimate = {
  readonly name: string;
  /** The formula in words, in the units of its source. */
  readonly words: string;
  readonly source: Source;
  readonly assumes: readonly string[];
  /** What it was computed from, such as `Bore 82 mm`, and whether that was given or assumed. */
  readonly uses: readonly UsedInput[];
  readonly bearing: Bearing;
  readonly mm: number;
};

export type UsedInput = {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** As people say it, where the bare number is not: `60° before the bottom`. */
  readonly words?: string;
  readonly assumed: boolean;
};

export type Quantity =
  | 'primaryLength'
  | 'primaryBore'
  | 'secondaryLength'
  | 'secondaryBore'
  | 'outletBore'
  | 'collectorLength';

export type StartingSize = {
  readonly quantity: Quantity;
  readonly name: string;
  /** From where to where, or across what. */
  readonly measured: string;
  readonly estimates: readonly Estimate[];
  readonly least: Estimate;
  readonly greatest: Estimate;
  /** Where to start, mm: the middle of the sizes, within the bounds. */
  readonly start: number;
};

export type StartingSizes = {
  readonly sizes: readonly StartingSize[];
  /** Formulas that could say nothing here, and why. */
  readonly leftOut: readonly { readonly name: string; readonly why: string }[];
};
