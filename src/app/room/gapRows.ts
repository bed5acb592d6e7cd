/** The least gaps, each with a name that stays its own from one answer to the next, so that lists and lines keep their rows. */
import type { GapEntry, GapReport } from '../../../geometry/gaps/report';
import { remembered } from '../../../shared/remember';

export type GapRow = { readonly key: string; readonly gap: GapEntry };

export const gapRows: (report: GapReport) => readonly GapRow[] = remembered(({ gaps }: GapReport) => {
  const seen = new Map<string, number>();
  return gaps.map((gap) => {
    const pair = `${gap.kind} ${gap.between.join(' / ')}`;
    const count = seen.get(pair) ?? 0;
    seen.set(pair, count + 1);
    return { key: count === 0 ? pair : `${pair} ${count + 1}`, gap };
  });
});
