/** Which least clearances concern what is selected, ready to be drawn and read. */
import type { CheckReport, Header, Margin } from '../../../geometry';
import { lerp } from '../../../geometry';
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
      text: `gap ${formatLength(margin.gap, header.design.display ?? 'mm')}`,
      at: line ? lerp(line.from, line.to, 0.5) : margin.at,
      fails: margin.margin < 0,
      line,
    };
  });
}
