/** What many rounds came to: the best layout and the distinct others worth offering. Order of arrival does not matter. */
import type { Design } from '../../shared/design/types';
import { compareLayouts, type Layout } from './layout';
import type { Round } from './router';

/** Layouts offered, the best included. */
export const MOST_LAYOUTS = 5;

export type Harvest = {
  /** The best that holds, or the nearest miss; null before anything could be drawn. */
  readonly best: Layout | null;
  /** Distinct layouts that hold, best first, the best included; at most MOST_LAYOUTS. */
  readonly layouts: readonly Layout[];
};

export const nothingYet: Harvest = { best: null, layouts: [] };

export function gathered(before: Harvest, round: Round): Harvest {
  const sorted = [...before.layouts, ...round.layouts].sort(compareLayouts);
  const layouts: Layout[] = [];
  for (const layout of sorted) {
    if (layouts.length === MOST_LAYOUTS) break;
    if (layouts.every((kept) => isDistinct(kept.design, layout.design))) layouts.push(layout);
  }
  const misses = [before.best, round.attempt].filter((l) => l !== null).sort(compareLayouts);
  return { best: layouts[0] ?? misses[0] ?? null, layouts };
}

/** Runners whose middles are nearer than this go the same way, mm. */
const SAME_WAY = 40;

/** Another bend count, another inlet order, or a runner that goes another way round. */
export function isDistinct(a: Design, b: Design): boolean {
  return a.runners.some((r, i) => {
    const other = b.runners[i]!;
    if (r.to.inlet !== other.to.inlet || r.points?.length !== other.points?.length) return true;
    return r.points!.some((p, k) => Math.hypot(...p.map((x, axis) => x - other.points![k]![axis]!)) > SAME_WAY);
  });
}
