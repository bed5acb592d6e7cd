/**
 * The sizes that a study tries: primary lengths × standard tubes × arrangements × collector outlets, in that order, and what stands
 * for each as a sketch of a header. mm.
 */
import { resolveHeader } from '../../../geometry/header/resolve';
import { insist } from '../../../shared/design/refusal';
import type { Design, HeaderSketch, Merge, Tube } from '../../../shared/design/types';
import { collectorSets } from '../../../shared/engine/collectorSets';
import { ARRANGEMENTS, type Arrangement, joinedFirst } from '../../../shared/engine/form';
import { sizingFromDesign } from '../../../shared/engine/sizing/fromDesign';
import type { SizingInput } from '../../../shared/engine/sizing/input';
import { startingSizes } from '../../../shared/engine/sizing/startingSizes';
import { tunedSpeed } from '../../../shared/engine/sizing/tunedSpeed';
import type { Quantity } from '../../../shared/engine/sizing/types';
import { INCH_OUTSIDE_DIAMETERS, METRIC_OUTSIDE_DIAMETERS } from '../../../shared/stock/tubes';
import type { EngineSetup } from '../engine/types';
import { banksOf } from '../path/engineOf';

export type StudySize = {
  readonly arrangement: Arrangement;
  /** Primary, from the valve to where it is first joined, mm. */
  readonly length: number;
  readonly outsideDiameter: number;
  readonly wall: number;
  /** Bore of the last collector's outlet; null: as the design has it, or by the rules of thumb. */
  readonly outlet: number | null;
};

/** What the user chose; what is absent comes from rules of thumb and stock. */
export type StudyChoice = {
  readonly lengths?: readonly number[];
  /** Inside diameters of primaries. */
  readonly bores?: readonly number[];
  readonly arrangements?: readonly Arrangement[];
  readonly outlets?: readonly number[];
};

export const boreOf = ({ outsideDiameter, wall }: Pick<Tube, 'outsideDiameter' | 'wall'>): number =>
  tidy(outsideDiameter - 2 * wall);

/** Stable, and what people call it by. */
export const keyOf = (size: StudySize): string =>
  [
    `${size.arrangement}, ${tidy(size.length)} mm of ${tidy(size.outsideDiameter)} x ${tidy(size.wall)}`,
    ...(size.outlet === null ? [] : [`outlet ${tidy(size.outlet)}`]),
  ].join(', ');

/** Without what binary fractions leave: 40 − 2 × 1.6 is 36.8. */
const tidy = (mm: number): number => Math.round(mm * 1e4) / 1e4;

/** Sizes of one study at most: more take days. */
export const MOST_SIZES = 2000;
/** What can be meant, mm: as `--lengths`, `--bores` and `--outlets` take it, and the page. */
export const SIZE_RANGES = { lengths: [50, 5000], bores: [10, 200], outlets: [10, 300] } as const;

const LENGTHS = 6;
const BORES = 4;
/** Lengths spread over these shares of the rule of thumb. Our own choice: formulas spread about as far. */
const SPREAD = [0.7, 1.3] as const;
/** A tape at a header is read no closer. */
const LENGTH_STEP = 5;
const USUAL_WALL = 1.5;

/** In a fixed order: arrangements, in each tubes, in each lengths, in each outlets. */
export function studySizes(design: Design, engine: EngineSetup, choice: StudyChoice = {}): StudySize[] {
  const arrangements = choice.arrangements ?? usualArrangements(design);
  const own = primaryTube(design);
  const wall = own?.wall ?? USUAL_WALL;
  return arrangements.flatMap((arrangement) => {
    const tubes = choice.bores?.map((bore) => ({ outsideDiameter: tidy(bore + 2 * wall), wall }));
    const usual = () =>
      usualTubes(insistRule(design, engine, { arrangement }, 'primaryBore'), wall, own?.outsideDiameter);
    return (tubes ?? usual()).flatMap((tube) =>
      (choice.lengths ?? usualLengths(insistRule(design, engine, { arrangement }, 'primaryLength'))).flatMap((length) =>
        (choice.outlets ?? [null]).map((outlet) => ({ arrangement, length, ...tube, outlet })),
      ),
    );
  });
}

/** The design's own arrangement first; then the other one that joins pairs, or all at once. */
export function usualArrangements(design: Design): Arrangement[] {
  const { input } = sizingFromDesign(design);
  const own = design.exhaust?.sketch?.arrangement ?? input.arrangement ?? 'all-into-one';
  return [own, ...fittingArrangements(design).filter((a) => a !== own)].slice(0, 2);
}

/** All that its cylinders allow. */
export const fittingArrangements = (design: Design): Arrangement[] =>
  ARRANGEMENTS.filter((arrangement) => fits(arrangement, cylindersToOne(design, arrangement)));

/** Can so many cylinders of one collector be joined like this? */
export function fits(arrangement: Arrangement, cylinders: number): boolean {
  const first = joinedFirst(arrangement);
  return first === null || (cylinders % first === 0 && cylinders > first);
}

/** How many end in one last collector: as drawn, else as a new header would have it. */
function cylindersToOne(design: Design, arrangement: Arrangement): number {
  const { collector, input } = sizingFromDesign(design);
  if (collector !== null && input.cylinders !== undefined) return input.cylinders;
  return collectorSets(banksOf(design), arrangement)[0]?.length ?? 1;
}

function usualLengths(start: number): number[] {
  const [least, most] = SPREAD;
  const at = (k: number): number => start * (least + ((most - least) * k) / (LENGTHS - 1));
  return [...new Set(Array.from({ length: LENGTHS }, (_, k) => LENGTH_STEP * Math.round(at(k) / LENGTH_STEP)))];
}

/** The tubes whose bores lie nearest, the design's own among them however far it lies off. */
function usualTubes(bore: number, wall: number, own: number | undefined): Pick<Tube, 'outsideDiameter' | 'wall'>[] {
  const far = (outside: number): number => (outside === own ? -1 : Math.abs(outside - 2 * wall - bore));
  return tubesApart(own)
    .toSorted((a, b) => far(a) - far(b))
    .slice(0, BORES)
    .toSorted((a, b) => a - b)
    .map((outsideDiameter) => ({ outsideDiameter, wall }));
}

/**
 * mm. Tubes nearer to each other than this breathe so much alike that following both is mostly lost work: 41.275 and 42.4 mm, say. Our
 * own choice: a tenth of the area at 40 mm.
 */
const TUBES_APART = 2;

/** Outside diameters that are sold, so far apart: the design's own first, then metric before inch. */
function tubesApart(own: number | undefined): readonly number[] {
  const inch = INCH_OUTSIDE_DIAMETERS.map((inches) => tidy(inches * 25.4));
  const all = [...(own === undefined ? [] : [own]), ...METRIC_OUTSIDE_DIAMETERS, ...inch];
  const kept: number[] = [];
  for (const outside of all) if (kept.every((other) => Math.abs(other - outside) >= TUBES_APART)) kept.push(outside);
  return kept;
}

/** Bores of outlets about the one that the design has: the tubes on sale next to it either way, and itself. mm */
export function outletsAround(outlet: number, wall = USUAL_WALL): number[] {
  const bores = tubesApart(tidy(outlet + 2 * wall)).map((outsideDiameter) => boreOf({ outsideDiameter, wall }));
  const rising = bores.toSorted((a, b) => a - b);
  const at = rising.findIndex((bore) => Math.abs(bore - outlet) < 1e-3);
  return rising.slice(Math.max(0, at - 1), at + 2);
}

/** Of the first runner that starts at a port. */
export function primaryTube(design: Design): Tube | undefined {
  const first = design.runners.find(({ from }) => 'port' in from);
  return first && design.tubes[first.tube];
}

type Rules = { readonly arrangement: Arrangement; readonly primaryBore?: number };

/** Where the formulas of `size` start; null where none says anything. mm. @throws DesignError where they refuse the engine */
export function ruleOf(design: Design, engine: EngineSetup, rules: Rules, quantity: Quantity): number | null {
  const { primaryBore: _, arrangement: __, ...known } = sizingFromDesign(design).input;
  const input: SizingInput = {
    rpm: tunedSpeed(engine.speeds),
    topRpm: engine.speeds[1],
    ...known,
    cylinders: cylindersToOne(design, rules.arrangement),
    bore: tidy(engine.bore * 1000),
    stroke: tidy(engine.stroke * 1000),
    ...rules,
  };
  return startingSizes(input).sizes.find((size) => size.quantity === quantity)?.start ?? null;
}

/** What a study or a sketch says instead where no rule of thumb says anything. */
const INSTEAD: Readonly<Record<Quantity, readonly [path: string, allowed: string]>> = {
  primaryLength: ['study/lengths', 'lengths of primaries to try, mm'],
  primaryBore: ['study/bores', 'bores of primaries to try, mm'],
  secondaryLength: [
    'exhaust/sketch/secondary/length',
    'the length of secondaries, mm, in a sketch of this arrangement',
  ],
  secondaryBore: ['exhaust/sketch/secondary/bore', 'the bore of secondaries, mm, in a sketch of this arrangement'],
  collectorLength: ['exhaust/sketch/collector/length', 'the length of the collector, mm, in a sketch of the header'],
  outletBore: [
    'exhaust/sketch/collector/bore',
    'the bore of the outlet, mm, in a sketch of the header; or outlets to try',
  ],
};

/** @throws DesignError naming what must be given where the rules say nothing */
function insistRule(design: Design, engine: EngineSetup, rules: Rules, quantity: Quantity): number {
  const start = ruleOf(design, engine, rules, quantity);
  const [path, allowed] = INSTEAD[quantity];
  insist(start === null ? [{ path, found: `nothing, and no rule of thumb for ${rules.arrangement}`, allowed }] : []);
  return start!;
}

const outletBoreOf = (design: Design, { id, outletDiameter }: Merge): number =>
  tidy(outletDiameter - 2 * resolveHeader(design).merges.get(id)!.wall);

/** The outlet's bore as the design has it: drawn, else sketched; null where neither. mm */
export function ownOutlet(design: Design): number | null {
  const last = design.merges.find((m) => m.id === sizingFromDesign(design).collector);
  return last ? outletBoreOf(design, last) : (design.exhaust?.sketch?.collector.bore ?? null);
}

/** The size as a header of lengths and bores; what the size leaves open is the design's own, else the rules'. */
export function sketchOf(design: Design, engine: EngineSetup, size: StudySize): HeaderSketch {
  const { arrangement, length, outlet } = size;
  const bore = boreOf(size);
  const own = design.exhaust?.sketch;
  const rule = (quantity: Quantity): number =>
    tidy(insistRule(design, engine, { arrangement, primaryBore: bore }, quantity));
  const last = design.merges.find((m) => m.id === sizingFromDesign(design).collector);
  const collector = {
    length: last?.length ?? own?.collector.length ?? rule('collectorLength'),
    bore: outlet ?? ownOutlet(design) ?? rule('outletBore'),
  };
  const isJoined = joinedFirst(arrangement) !== null;
  const secondary = own?.arrangement === arrangement ? own.secondary : undefined;
  return {
    arrangement,
    primary: { length, bore },
    ...(isJoined ? { secondary: secondary ?? { length: rule('secondaryLength'), bore: rule('secondaryBore') } } : {}),
    collector,
  };
}
