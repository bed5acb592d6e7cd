/** From a study to what its map is drawn of: a cell for each size, the rules of thumb beside them. mm in, m out. */
import type { Design } from '../../../../shared/design/types';
import type { Arrangement } from '../../../../shared/engine/form';
import { sizingFromDesign } from '../../../../shared/engine/sizing/fromDesign';
import { startingSizes } from '../../../../shared/engine/sizing/startingSizes';
import { tunedSpeed } from '../../../../shared/engine/sizing/tunedSpeed';
import type { Estimate, StartingSize } from '../../../../shared/engine/sizing/types';
import type { EngineSetup } from '../../../pulse/engine/types';
import type { StudyDocument } from '../../../pulse/forecast/study';
import { ranked } from '../../../pulse/forecast/studyRank';
import { boreOf, primaryTube, type StudySize } from '../../../pulse/forecast/studySizes';
import { primaryLengths } from '../ground';
import type { MapArrangement, MapCell, MapRule, MapSize, RuleRange } from '../map/types';

export const ARRANGEMENT_NAMES: Readonly<Record<Arrangement, string>> = {
  'all-into-one': 'All into one',
  'pairs-then-one': 'Pairs, then one',
  'threes-then-one': 'Threes, then one',
};

export function mapOf(study: StudyDocument, design: Design, engine: EngineSetup): readonly MapArrangement[] {
  const sizes = ranked(study);
  const keys = [...new Set(sizes.map(({ size }) => size.arrangement))];
  return keys.map((key) => ({
    key,
    name: ARRANGEMENT_NAMES[key],
    cells: sizes
      .filter(({ size }) => size.arrangement === key)
      .map(({ key: id, size, rank, summary }) =>
        cellOf(size, rank === null ? null : summary.mean, failureOf(study, id)),
      ),
    rules: rulesOf(design, engine, key),
  }));
}

function failureOf(study: StudyDocument, key: string): string | undefined {
  const point = study.answers[key]?.points.find((p) => 'failed' in p);
  return point && 'failed' in point ? point.failed : undefined;
}

const cellOf = (size: StudySize, torque: number | null, failed: string | undefined): MapCell => ({
  length: size.length / 1000,
  bore: boreOf(size) / 1000,
  torque,
  ...(torque === null && failed !== undefined && { failed }),
});

/** One rule for each formula that gives a size; how far a length's or bore's formulas lie apart is told by all of them. */
function rulesOf(design: Design, engine: EngineSetup, arrangement: Arrangement): readonly MapRule[] {
  const { primaryBore: _, arrangement: __, ...known } = sizingFromDesign(design).input;
  try {
    const { sizes } = startingSizes({
      cylinders: engine.cylinders.length,
      rpm: tunedSpeed(engine.speeds),
      topRpm: engine.speeds[1],
      ...known,
      bore: Math.round(engine.bore * 1e7) / 1e4,
      stroke: Math.round(engine.stroke * 1e7) / 1e4,
      arrangement,
    });
    const length = sizes.find(({ quantity }) => quantity === 'primaryLength');
    const bore = sizes.find(({ quantity }) => quantity === 'primaryBore');
    if (!length && !bore) return [];
    const sources = [
      ...new Set([length, bore].flatMap((size) => size?.estimates ?? []).map(({ source }) => source.text)),
    ];
    return [{ name: 'Rules of thumb', source: sources.join('; '), length: rangeOf(length), bore: rangeOf(bore) }];
  } catch {
    // Beyond what the formulas take: the map does without them.
    return [];
  }
}

/** Bounds are no sizes: they tell nothing of how far apart the formulas lie. */
function rangeOf(size: StartingSize | undefined): RuleRange | null {
  if (!size) return null;
  const sized = size.estimates.filter(({ bearing }: Estimate) => bearing === 'size').map(({ mm }) => mm / 1000);
  return { low: Math.min(...sized), middle: size.start / 1000, high: Math.max(...sized) };
}

/** The size of the design as it is: its sketch, else its first runner's. Null where it has neither. */
export function nowOf(design: Design): (MapSize & { readonly arrangement: string }) | null {
  const { sketch } = design.exhaust ?? {};
  if (sketch)
    return {
      length: sketch.primary.length / 1000,
      bore: sketch.primary.bore / 1000,
      arrangement: sketch.arrangement,
    };
  const lengths = primaryLengths(design);
  const tube = primaryTube(design);
  if (lengths.length === 0 || !tube) return null;
  return {
    length: lengths.reduce((sum, length) => sum + length, 0) / lengths.length / 1000,
    bore: boreOf(tube) / 1000,
    arrangement: sizingFromDesign(design).input.arrangement ?? 'all-into-one',
  };
}
