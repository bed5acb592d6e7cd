/** From a study to what its map is drawn of: a cell for each size, the rules of thumb beside them. mm in, m out. */
import { DesignError } from '../../../../shared/design/refusal';
import type { Design } from '../../../../shared/design/types';
import type { Arrangement } from '../../../../shared/engine/form';
import { sizingFromDesign } from '../../../../shared/engine/sizing/fromDesign';
import { tunedSpeed } from '../../../../shared/engine/sizing/tunedSpeed';
import type { EngineSetup } from '../../../pulse/engine/types';
import { type RulePoint, rulesOnMap } from '../../../pulse/forecast/rules';
import type { StudyDocument } from '../../../pulse/forecast/study';
import { ranked } from '../../../pulse/forecast/studyRank';
import { boreOf, ownOutlet, primaryTube, type StudySize } from '../../../pulse/forecast/studySizes';
import { ARRANGEMENT_NAMES } from '../../arrangementNames';
import { primaryLengths } from '../ground';
import type { MapArrangement, MapCell, MapNow, MapRule, RuleRange } from '../map/types';

export function mapOf(study: StudyDocument, design: Design, engine: EngineSetup): readonly MapArrangement[] {
  const sizes = ranked(study);
  // One map for each arrangement and each outlet, as a map has but two ways: outlets rising.
  const keys = [...new Set(sizes.map(({ size }) => size.arrangement))];
  const outlets = [...new Set(sizes.map(({ size }) => size.outlet))].sort((a, b) => (a ?? 0) - (b ?? 0));
  return keys.flatMap((key) => {
    const name = ARRANGEMENT_NAMES[key];
    // Of outlets they know nothing.
    const rules = rulesOf(design, engine, key);
    return outlets.flatMap((outlet): MapArrangement[] => {
      const of = sizes.filter(({ size }) => size.arrangement === key && size.outlet === outlet);
      if (of.length === 0) return [];
      const cells = of.map(({ key: id, size, rank, summary }) =>
        cellOf(size, rank === null ? null : summary.mean, failureOf(study, id)),
      );
      return [{ key, name, outlet: outlet === null ? null : outlet / 1000, cells, rules }];
    });
  });
}

/** Where it is printed. How that was come by belongs to the table of sources, not beside a size. */
const sourceName = (text: string): string => text.split(';')[0]!.trim();

function failureOf(study: StudyDocument, key: string): string | undefined {
  const point = study.answers[key]?.points.find((p) => 'failed' in p);
  return point && 'failed' in point ? point.failed : undefined;
}

const cellOf = (size: StudySize, torque: number | null, failed: string | undefined): MapCell => ({
  length: size.length / 1000,
  bore: boreOf(size) / 1000,
  torque,
  tube: { outsideDiameter: size.outsideDiameter, wall: size.wall },
  ...(torque === null && failed !== undefined && { failed }),
});

/** Each formula at the speed that the header is tuned to, as far either way as its source or its gas leaves it open. */
function rulesOf(design: Design, engine: EngineSetup, arrangement: Arrangement): readonly MapRule[] {
  try {
    const tuned = tunedSpeed(engine.speeds);
    return rulesOnMap(design, engine.speeds, arrangement).flatMap(({ name, bearing, source, spread, along }) => {
      const at = along.reduce<RulePoint | null>(
        (best, point) => (!best || Math.abs(point.rpm - tuned) < Math.abs(best.rpm - tuned) ? point : best),
        null,
      );
      const range = (mm: number | null): RuleRange | null =>
        mm === null
          ? null
          : {
              low: (mm * (1 - (spread?.share ?? 0))) / 1000,
              middle: mm / 1000,
              high: (mm * (1 + (spread?.share ?? 0))) / 1000,
            };
      if (!at) return [];
      const bound = bearing === 'size' ? '' : `, ${bearing}`;
      return [
        { name: `${name}${bound}`, source: sourceName(source.text), length: range(at.length), bore: range(at.bore) },
      ];
    });
  } catch (error) {
    // Beyond what the formulas take: the map does without them.
    if (error instanceof DesignError) return [];
    throw error;
  }
}

/** The size of the design as it is: its sketch, else its first runner's. Null where it has neither. */
export function nowOf(design: Design): MapNow | null {
  const { sketch } = design.exhaust ?? {};
  const own = ownOutlet(design);
  if (sketch)
    return {
      length: sketch.primary.length / 1000,
      bore: sketch.primary.bore / 1000,
      arrangement: sketch.arrangement,
      outlet: sketch.collector.bore / 1000,
    };
  const lengths = primaryLengths(design);
  const tube = primaryTube(design);
  if (lengths.length === 0 || !tube) return null;
  return {
    length: lengths.reduce((sum, length) => sum + length, 0) / lengths.length / 1000,
    bore: boreOf(tube) / 1000,
    arrangement: sizingFromDesign(design).input.arrangement ?? 'all-into-one',
    outlet: own === null ? null : own / 1000,
  };
}
