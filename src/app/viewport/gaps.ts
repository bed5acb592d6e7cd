/** Which least clearances concern what is selected, ready to be drawn and read. */
import type { CheckReport, Header, Margin } from '../../../geometry';
import { lerp } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import type { Vec3 } from '../../../shared/vec3';
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

export function gapsOf(header: Header, report: CheckReport | null, selected: Ref | null): Gap[] {
  if (!report || !selected || !['runner', 'merge', 'surrounding'].includes(selected.kind)) return [];
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
