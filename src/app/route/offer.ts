/** When laying is offered unasked: runners without a way, or a design that no longer holds since something was moved. */
import type { CheckReport } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { toLay } from './wish';

export type Offer =
  | { readonly kind: 'unlaid'; readonly count: number }
  /** `what` begins a sentence. */
  | { readonly kind: 'moved'; readonly what: string };

const MOVED = [
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
  const moved = MOVED.find(([part]) => design[part] !== before[part]);
  return moved ? { kind: 'moved', what: moved[1] } : null;
}

/** Whether laying anew can keep the way that runners go: some that are not locked have one. */
export const hasWays = (design: Design): boolean => design.runners.some((r) => r.points && !r.locked);
