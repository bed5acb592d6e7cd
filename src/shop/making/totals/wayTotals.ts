/**
 * What one way of making a tube group takes: material, cuts, welds, hours, money. Welds to flanges and collectors are the same
 * either way and are left out; so are a collector's own pieces. kg, minutes, the workshop's currency.
 */
import { massOf } from '../../../../geometry';
import type { Tube, Workshop } from '../../../../shared/design/types';
import { settingsOf } from '../../../../shared/stock/workshop';
import { arcLength } from '../../arcs';
import { stockLength } from '../../stockLayout';
import type { BentTube, Remark, StockPlan, WayTotals, WeldedTube } from '../report';
import { cutsOf } from './cuts';

export type Asked = {
  readonly tube: Tube;
  readonly workshop: Workshop | undefined;
  readonly plan: StockPlan;
};

export function weldedTotals(asked: Asked, tubes: readonly WeldedTube[]): WayTotals {
  const welds = tubes.reduce((sum, { joints }) => sum + joints.length, 0);
  const pieces = tubes.reduce((sum, t) => sum + t.pieces.length, 0);
  const bends = tubes.reduce((sum, t) => sum + t.pieces.filter(({ kind }) => kind === 'bend').length, 0);
  const { cut, weld } = settingsOf(asked.workshop).minutes;
  const cuts = sawn(asked);
  const minutes = cuts * cut + welds * weld;
  const made = tubes.flatMap((t) => t.pieces).map((p) => p.in + arcLength(p) + p.out);
  return { ...common(asked, 'welded', tubes, welds, minutes, sum(made)), pieces, bends, cuts };
}

export function bentTotals(asked: Asked, tubes: readonly BentTube[]): WayTotals {
  const runners = new Set(tubes.map(({ runner }) => runner)).size;
  const welds = tubes.length - runners;
  const bends = tubes.reduce((sum, t) => sum + t.fromStart.filter(({ angle }) => angle > 0).length, 0);
  // What is trimmed once bent is sawn too.
  const trims = tubes.reduce((sum, t) => sum + (t.trimStart > 0 ? 1 : 0) + (t.trimEnd > 0 ? 1 : 0), 0);
  const { cut, weld, bend, setUp } = settingsOf(asked.workshop).minutes;
  const cuts = sawn(asked) + trims;
  const minutes = cuts * cut + welds * weld + bends * bend + tubes.length * setUp;
  const made = sum(tubes.map((t) => t.cutLength - t.trimStart - t.trimEnd));
  const totals = common(asked, 'bent', tubes, welds, minutes, made);
  const clamps = tubes.every(({ clampable: { fromStart, fromEnd } }) => fromStart || fromEnd);
  return { ...totals, possible: totals.possible && clamps, pieces: tubes.length, bends, cuts };
}

function common(
  { tube, workshop, plan }: Asked,
  way: WayTotals['way'],
  tubes: readonly { readonly remarks: readonly Remark[] }[],
  welds: number,
  minutes: number,
  made: number,
): Omit<WayTotals, 'pieces' | 'bends' | 'cuts'> {
  const remarks = [...tubes.flatMap((t) => t.remarks), ...plan.remarks];
  const { hourly, weldCost } = workshop ?? {};
  const cost = {
    stock: plan.cost,
    welds: welds === 0 ? 0 : weldCost === undefined ? null : welds * weldCost,
    work: hourly === undefined ? null : (minutes / 60) * hourly,
  };
  const missing = [
    ...plan.buy.filter((line) => line.cost === null).map(({ stock }) => `price of ${stock}`),
    ...rates(cost),
  ];
  const stock = plan.parts.flatMap(({ used }) => used.map(({ of }) => stockLength(of)));
  return {
    way,
    possible: remarks.every(({ stops }) => !stops),
    mass: massOf(tube, made),
    stockMass: massOf(tube, sum(stock)),
    welds,
    minutes,
    cost,
    missing,
    remarks,
  };
}

/** Which of the workshop's rates are missing. */
export const rates = (cost: Pick<WayTotals['cost'], 'welds' | 'work'>): string[] => [
  ...(cost.welds === null ? ['what a weld takes in gas and rod'] : []),
  ...(cost.work === null ? ['what an hour costs'] : []),
];

function sawn({ workshop, plan }: Asked): number {
  const { kerf, endTrim } = settingsOf(workshop);
  return sum(plan.parts.flatMap(({ used }) => used.map((u) => cutsOf(u, kerf, endTrim))));
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
