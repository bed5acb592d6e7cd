/**
 * Which gaps are drawn as dimension lines, ready to be read. Where the room round the header is known, the least gaps of what is
 * selected, with the very points they are measured between, and while the list of gaps is looked at the least of all; else the
 * least clearances of the check.
 */
import type { CheckReport, GapReport, Header, Margin } from '../../../geometry';
import { lerp } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import type { Vec3 } from '../../../shared/vec3';
import { gapRows } from '../room/gapRows';
import type { Ref } from '../session';
import { type GapLine, gapLine } from './model/gapLine';

export type Gap = {
  readonly key: string;
  readonly text: string;
  readonly at: Vec3;
  readonly fails: boolean;
  /** Null where only the place is known. */
  readonly line: GapLine | null;
};

/** What is known of the room round the header, and how much of it is asked for. */
export type GapsShown = {
  readonly report: GapReport;
  /** The list of gaps is being looked at. */
  readonly listed: boolean;
  /** The one pointed at there, by key. */
  readonly pointed: string | null;
};

/** So many of all, and of what is selected: more would lie over each other. */
const LEAST = 4;
const OF_SELECTED = 3;

export function gapsOf(
  header: Header,
  report: CheckReport | null,
  selected: Ref | null,
  shown: GapsShown | null = null,
): Gap[] {
  return shown ? knownGaps(header, selected, shown) : checkedGaps(header, report, selected);
}

const isBody = (ref: Ref | null): ref is Ref => ref !== null && ['runner', 'merge', 'surrounding'].includes(ref.kind);

function knownGaps(header: Header, selected: Ref | null, { report, listed, pointed }: GapsShown): Gap[] {
  const rows = gapRows(report);
  const own = isBody(selected) ? rows.filter(({ gap }) => gap.between.includes(selected.id)).slice(0, OF_SELECTED) : [];
  const least = listed && own.length === 0 ? rows.slice(0, LEAST) : [];
  const meant = rows.filter(({ key }) => key === pointed);
  return [...new Set([...meant, ...own, ...least])].map(
    ({ key, gap }): Gap => ({
      key,
      text: wordsOf(gap.gap, header.design.display),
      at: lerp(gap.from, gap.to, 0.5),
      fails: gap.margin < 0,
      line: gap,
    }),
  );
}

function checkedGaps(header: Header, report: CheckReport | null, selected: Ref | null): Gap[] {
  if (!report || !isBody(selected)) return [];
  const { tubeToTube, surroundings, mergeBodies } = report.clearance;
  const known = (margin: Margin | null): margin is Margin => margin?.between.includes(selected.id) ?? false;
  return [tubeToTube, surroundings, mergeBodies].filter(known).map((margin): Gap => {
    const line = gapLine(header, margin);
    return {
      key: `gap ${margin.between.join(' ')}`,
      text: wordsOf(margin.gap, header.design.display),
      at: line ? lerp(line.from, line.to, 0.5) : margin.at,
      fails: margin.margin < 0,
      line,
    };
  });
}

/** Said as the findings say it: what overlaps has no gap. */
const wordsOf = (gap: number, display: Display = 'mm'): string =>
  gap < 0 ? `overlap ${formatLength(-gap, display)}` : `gap ${formatLength(gap, display)}`;
