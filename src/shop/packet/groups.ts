/** What the packet holds now, a group a kind of sheet, in the order of the work. */
import type { WrapCut } from '../../../geometry';
import type { Bench } from '../bench/bench';
import { cautionSheets } from '../bench/cautions';
import { inspectionSheets } from '../bench/inspectionSheets';
import { keyNumbers } from '../bench/keyNumbers';
import { materialSheets } from '../bench/materialSheets';
import { bestView, headerPicture, nameMarks } from '../bench/picture/headerPicture';
import { runnerSheets } from '../bench/runnerSheets';
import { stockSheets } from '../bench/stockSheets';
import { weldMapSheets } from '../bench/weldMap';
import { type Fitting, fittingSheets } from '../fitting/fittingSheets';
import { type FlangeSheetPlan, flangeSheets } from '../flangeSheet';
import type { Part } from '../part';
import { TYPE } from '../sheet/style';
import { bendGuide, type StockBend } from '../templates/bendGuide';
import { templateSheets } from '../templates/templateSheets';
import type { Cover } from './cover';
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

export const runnerGroup = (bench: Bench, { paper, display }: PaperOptions): PacketGroup => ({
  name: 'Runners',
  use: 'how each tube is cut, turned or bent',
  sheets: runnerSheets(bench, paper, display),
});

export const weldGroup = (bench: Bench, { paper }: PaperOptions): PacketGroup => ({
  name: 'Weld map',
  use: 'every weld of the tubes, in order',
  sheets: weldMapSheets(bench, paper),
});

export const stockGroup = (bench: Bench, { paper, display }: PaperOptions): PacketGroup => ({
  name: 'Buy and cut',
  use: 'what to buy, what is cut from what',
  sheets: stockSheets(bench, paper, display),
});

export const materialGroup = (bench: Bench, { paper, display }: PaperOptions): PacketGroup => ({
  name: 'Bill of materials',
  use: 'every part, mass, cost',
  sheets: materialSheets(bench, paper, display),
});

export const inspectionGroup = (bench: Bench, { paper, display }: PaperOptions): PacketGroup => ({
  name: 'Inspection',
  use: 'to fill in: as built, leak test, first heat',
  sheets: inspectionSheets(bench, paper, display),
});

export const cautionGroup = ({ header }: Bench, { paper }: PaperOptions): PacketGroup => ({
  name: 'Cautions',
  use: 'read before you start',
  sheets: cautionSheets(header.design, paper),
});

/** What the first page shows of the header itself. */
export function coverOf(bench: Bench, { display }: PaperOptions): Pick<Cover, 'facts' | 'picture'> {
  const { header } = bench;
  const view = bestView(header, { width: 190, height: 90 });
  return {
    facts: keyNumbers(bench, display),
    picture: (room) => headerPicture(header, room, nameMarks(header), TYPE.plain, view)?.items ?? [],
  };
}

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
