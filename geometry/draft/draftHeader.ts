/**
 * From an engine form to a whole header: a first drawing that a hand can shape. Merges are proposed places, runners get
 * shapes that have room together, and balance makes them equal and true to every rule. Deterministic, and no router: it
 * knows no obstacles but the stand-ins for the heads, and stops at the first lengths that hold. mm and degrees.
 */
import type { Design } from '../../shared/design/types';
import type { EngineForm } from '../../shared/engine/form';
import { check } from '../check/check';
import type { CheckReport } from '../check/report';
import { balancePoints } from '../layout/balance';
import { type JoinedFirst, joiningOf } from './joining';
import { mergePlaces } from './mergePlaces';
import { notesOf } from './notes';
import { partsOf } from './parts';
import { type Attempt, attempted, roughly, search } from './search';

export type Draft = {
  /** Complete and valid: every runner has a line unless none could be drawn or the search was cancelled. */
  readonly design: Design;
  readonly report: CheckReport;
  /** Which cylinders come together first, and how far apart they fire; empty where all go straight to a collector. */
  readonly pairs: readonly JoinedFirst[];
  /** What the maker should know: what was chosen, what could not be had. Plain sentences. */
  readonly notes: readonly string[];
};

export type DraftOptions = {
  /** Asked now and then; true ends the search with the best so far. */
  readonly cancelled?: () => boolean;
};

/** @param form without problems (`formProblems`) */
export function draftHeader(form: EngineForm, { cancelled }: DraftOptions = {}): Draft {
  const joining = joiningOf(form);
  const parts = partsOf(form, joining);
  const bases = mergePlaces(form, joining, parts).map((merges): Design => ({ ...parts, merges }));
  const stop = cancelled ?? (() => false);
  const found = search(bases, stop);
  const reached = found?.report.ok ? found : (nearestInReach(bases, stop) ?? found);
  const design = reached?.design ?? roughly(bases[0]!);
  const report = reached?.report ?? check(design);
  return {
    design,
    report,
    pairs: joining.flatMap((j) => j.first),
    notes: notesOf(form, joining, design, report, stop()),
  };
}

/** Every group asked for a length gets the nearest that can be had, from a header drawn with lengths left free. */
function nearestInReach(bases: readonly Design[], stop: () => boolean): Attempt | null {
  const { groups } = bases[0]!;
  if (Object.values(groups).every((g) => g.length === null)) return null;
  const free = Object.fromEntries(Object.entries(groups).map(([id, g]) => [id, { ...g, length: null }]));
  const found = search(
    bases.map((base) => ({ ...base, groups: free })),
    stop,
  );
  if (!found?.report.ok || stop()) return found;
  // Restarts let balance walk from the lengths drawn toward those asked.
  const near = balancePoints({ ...found.design, groups }, new Map(), { restarts: 1, cancelled: stop }).design;
  const lengths = check(near).groups;
  const reached = Object.fromEntries(
    Object.entries(groups).map(([id, g]) => [id, { ...g, length: lengths.find((l) => l.id === id)?.mean ?? g.length }]),
  );
  const attempt = attempted({ ...near, groups: reached }, stop);
  return attempt.report.ok ? attempt : found;
}
