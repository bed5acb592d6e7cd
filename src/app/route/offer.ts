/**
 * When laying is offered unasked: where runners have no way yet, or where a collector, a port or what is around the header
 * was changed and not every rule holds since.
 */
import type { CheckReport } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { toLay } from './wish';

export type Offer =
  | { readonly kind: 'unlaid'; readonly count: number }
  /** `what` begins a sentence. */
  | { readonly kind: 'changed'; readonly what: string };

const PARTS = [
  ['merges', 'A collector'],
  ['ports', 'A port'],
  ['surroundings', 'Something around the header'],
] as const;

/**
 * @param before the design before the last step; null where there is none
 * @param report of `design`; null while it is not known
 */
export function offerFor(design: Design, before: Design | null, report: CheckReport | null): Offer | null {
  const { runners, locked, unlaid } = toLay(design);
  if (unlaid > 0) return { kind: 'unlaid', count: unlaid };
  if (runners === locked || !before || !report) return null;
  // A mesh that is not loaded is in nobody's way.
  if (report.problems.every((p) => p.rule === 'document')) return null;
  const changed = PARTS.find(([part]) => design[part] !== before[part]);
  return changed ? { kind: 'changed', what: changed[1] } : null;
}

/** Whether laying anew can keep the way that runners go: some that are not locked have one. */
export const hasWays = (design: Design): boolean => design.runners.some((r) => r.points && !r.locked);
