/**
 * What the rules of thumb ask for, to be laid over a map of primary length and bore: each formula of shared/engine/sizing, at the speeds
 * of a band. None is an oracle, and a map computed by following the gas need not agree with any of them. mm, rpm.
 */
import { insist } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import type { Arrangement } from '../../../shared/engine/form';
import { sizingFromDesign } from '../../../shared/engine/sizing/fromDesign';
import { type Estimate, type SizingInput, startingSizes } from '../../../shared/engine/sizing/startingSizes';
import type { Source } from '../../../shared/engine/sizing/types';

/** What a rule asks for at one speed. What it says nothing of is null. */
export type RulePoint = { readonly rpm: number; readonly length: number | null; readonly bore: number | null };

export type MapRule = {
  readonly name: string;
  /** The formula in words, in the units of its source. */
  readonly words: string;
  readonly source: Source;
  readonly assumes: readonly string[];
  /** Of what it is fed with: what nobody gave, such as `Gas in the primary 600 °C`. */
  readonly assumed: readonly string[];
  /** `point`: it asks for a length and a bore together, so at all speeds for a line across the map. */
  readonly kind: 'length' | 'bore' | 'point';
  /** Whether it asks for this size, or for no less or no more. */
  readonly bearing: Estimate['bearing'];
  /** Least and greatest over the band: of the bore for `bore`, else of the length. */
  readonly from: number;
  readonly to: number;
  /** By which share either way its result is taken, and why; null: the source says nothing. */
  readonly spread: { readonly share: number; readonly why: string } | null;
  /** Speeds rising. */
  readonly along: readonly RulePoint[];
};

/** Speeds at which each rule is asked. */
const SPEEDS = 9;

/** Where a bore is the answer to the handbook's own length. */
const [BORE_FOR_LENGTH, ITS_LENGTH] = ['Bore for length', 'Opening-period rule'] as const;

/** Usual gas is from 400 to 600 °C (Heywood, section 6.5; from memory); the rules take the upper end. */
const GAS = { share: 0.12, why: 'the gas may be 200 °C cooler than the 600 °C usual at most, its sound 12 % slower' };
const SPREADS: Readonly<Record<string, { readonly share: number; readonly why: string }>> = {
  [ITS_LENGTH]: { share: 0.1, why: 'a rule of thumb: a tenth either way is how far such engines differ' },
  [BORE_FOR_LENGTH]: { share: 0.05, why: 'a rule of thumb: a twentieth either way' },
  'Torque-peak area': { share: 0.05, why: 'the speed comes within a tenth, and the bore goes by its square root' },
  'Mean gas speed': { share: 0.026, why: '90 to 100 m/s, and the bore goes by the square root' },
  'Out and back': GAS,
  'Quarter wave': GAS,
  'Inertia matching': { share: 0.1, why: 'the tuned speed comes within a tenth' },
};

/**
 * @param band the speeds that the header is for, rpm
 * @param arrangement where the map is of another one than the design's
 * @throws DesignError where the engine's bore, stroke or number of cylinders is missing
 */
export function rulesOnMap(design: Design, band: readonly [number, number], arrangement?: Arrangement): MapRule[] {
  const { input } = sizingFromDesign(design);
  const { cylinders, bore, stroke } = input;
  insist(
    Object.entries({ cylinders, bore, stroke }).flatMap(([name, value]) =>
      value === undefined
        ? [{ path: `engine/${name}`, found: 'nothing', allowed: 'a number: the rules of thumb go by it' }]
        : [],
    ),
  );
  return rulesFor(
    { ...input, ...(arrangement && { arrangement }), cylinders: cylinders!, bore: bore!, stroke: stroke! },
    band,
  );
}

/** @param input its `rpm` is not used: the band's are. @throws DesignError naming an input that is out of its bounds */
export function rulesFor(input: Omit<SizingInput, 'rpm'>, [low, high]: readonly [number, number]): MapRule[] {
  if (!(low > 0 && high >= low)) throw new RangeError(`A band from ${low} to ${high} rpm`);
  const speeds =
    low === high ? [low] : Array.from({ length: SPEEDS }, (_, k) => low + (k / (SPEEDS - 1)) * (high - low));
  const topRpm = Math.max(high, input.topRpm ?? high);
  const asked = speeds.map((rpm) => {
    const { sizes } = startingSizes({ ...input, rpm, topRpm });
    const of = (quantity: 'primaryLength' | 'primaryBore'): readonly Estimate[] =>
      sizes.find((size) => size.quantity === quantity)?.estimates ?? [];
    return { rpm, lengths: of('primaryLength'), bores: of('primaryBore') };
  });
  const names = (of: 'lengths' | 'bores'): string[] => [...new Set(asked.flatMap((at) => at[of].map((e) => e.name)))];
  return [
    ...names('lengths').map((name) => ruleOf(name, 'length', asked)),
    ...names('bores').map((name) => ruleOf(name, 'bore', asked)),
  ];
}

type Asked = { readonly rpm: number; readonly lengths: readonly Estimate[]; readonly bores: readonly Estimate[] };

function ruleOf(name: string, quantity: 'length' | 'bore', asked: readonly Asked[]): MapRule {
  const found = (list: readonly Estimate[], which: string): Estimate | undefined => list.find((e) => e.name === which);
  const own = (at: Asked): Estimate | undefined => found(quantity === 'length' ? at.lengths : at.bores, name);
  const first = asked.flatMap((at) => own(at) ?? [])[0]!;
  const along = asked.flatMap((at): RulePoint[] => {
    const mm = own(at)?.mm;
    if (mm === undefined) return [];
    if (quantity === 'length') return [{ rpm: at.rpm, length: mm, bore: null }];
    return [
      { rpm: at.rpm, length: name === BORE_FOR_LENGTH ? (found(at.lengths, ITS_LENGTH)?.mm ?? null) : null, bore: mm },
    ];
  });
  const isPoint = quantity === 'bore' && along.every(({ length }) => length !== null);
  const measured = along.map(({ length, bore }) => (quantity === 'length' || isPoint ? length! : bore!));
  return {
    name,
    words: first.words,
    source: first.source,
    assumes: first.assumes,
    assumed: first.uses
      .filter((use) => use.assumed)
      .map((use) => `${use.name} ${use.words ?? `${use.value} ${use.unit}`.trimEnd()}`),
    kind: isPoint ? 'point' : quantity,
    bearing: first.bearing,
    from: Math.min(...measured),
    to: Math.max(...measured),
    spread: SPREADS[name] ?? null,
    along,
  };
}
