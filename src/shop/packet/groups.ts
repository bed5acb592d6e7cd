/** What the packet holds now, a group a kind of sheet, in the order of the work. */
import type { WrapCut } from '../../../geometry';
import { type Fitting, fittingSheets } from '../fitting/fittingSheets';
import { type FlangeSheetPlan, flangeSheets } from '../flangeSheet';
import type { Part } from '../part';
import { bendGuide, type StockBend } from '../templates/bendGuide';
import { templateSheets } from '../templates/templateSheets';
import type { PacketGroup, PaperOptions } from './packet';

export const templateGroup = (cuts: readonly WrapCut[], options: PaperOptions): PacketGroup => ({
  name: 'Wrap-around templates',
  use: 'for every cut that is not square',
  sheets: cuts.flatMap((cut) => templateSheets(cut, options, options.paper)),
});

export const guideGroup = (parts: readonly Part[], { paper, display }: PaperOptions): PacketGroup => ({
  name: 'Bend guides',
  use: 'to cut stock bends by, or prove a bend on',
  sheets: stockBends(parts).map((bend) => bendGuide(bend, paper, display)),
});

export const flangeGroup = (plans: readonly FlangeSheetPlan[], options: PaperOptions): PacketGroup => ({
  name: 'Flanges',
  use: 'drawing, then true size',
  sheets: plans.flatMap((plan) => flangeSheets(plan, options)),
});

export const fittingGroup = (fitting: Fitting, { paper, display }: PaperOptions): PacketGroup => ({
  name: 'Fitting',
  use: 'gaps, fasteners, wrap, getting it off',
  sheets: fittingSheets(fitting, paper, display),
});

/** Each radius with each diameter that is bent to it, once, small before large. */
export function stockBends(parts: readonly Part[]): StockBend[] {
  const found = new Map<string, StockBend>();
  for (const { resolved, table } of parts)
    for (const { radius, angle } of table.rows) {
      if (angle === 0) continue;
      const bend = { outsideDiameter: resolved.tube.outsideDiameter, radius };
      found.set(`${bend.outsideDiameter.toFixed(3)} ${radius.toFixed(3)}`, bend);
    }
  return [...found.values()].sort((a, b) => a.outsideDiameter - b.outsideDiameter || a.radius - b.radius);
}
