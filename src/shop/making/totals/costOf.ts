/** What a header costs made as chosen: stock bought, welds and hours, and what else has a price. The workshop's currency. */
import type { Workshop } from '../../../../shared/design/types';
import type { Making, MaterialLine, StockPlan, TubeGroup } from '../report';
import { rates } from './wayTotals';

/** Where the workshop names no currency. */
const NO_CURRENCY = '';

export function costOf(
  workshop: Workshop | undefined,
  groups: readonly TubeGroup[],
  plan: StockPlan,
  materials: readonly MaterialLine[],
): Making['cost'] {
  const totals = groups.map((g) => g[g.chosen]);
  const others = materials.filter(({ ofStock }) => !ofStock);
  const sums = [
    ...plan.buy.map(({ cost }) => cost),
    ...totals.flatMap(({ cost }) => [cost.welds, cost.work]),
    ...others.map(({ cost }) => cost),
  ];
  const missing = [
    ...plan.buy.filter(({ cost }) => cost === null).map(({ stock }) => `price of ${stock}`),
    ...totals.flatMap(({ cost }) => rates(cost)),
    ...others.filter(({ cost }) => cost === null).map(({ name }) => `price of ${name}`),
  ];
  const known = sums.reduce<number>((sum, cost) => sum + (cost ?? 0), 0);
  return {
    known,
    total: missing.length > 0 ? null : known,
    missing: [...new Set(missing)],
    currency: workshop?.currency ?? NO_CURRENCY,
  };
}
