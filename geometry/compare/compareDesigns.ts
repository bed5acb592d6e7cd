/** Two versions of a design beside each other: what differs in the documents, and what that does to the header. */
import type { Design } from '../../shared/design/types';
import type { Meshes } from '../check/meshes';
import { type Change, changesBetween } from './changes';
import { type HeaderMeasures, measuresOf, type RunnerMeasures } from './measures';

export type Pair<T> = { readonly before: T | null; readonly after: T | null };

export type Comparison = {
  /** The documents say the same, the order of fields aside. */
  readonly same: boolean;
  readonly changes: readonly Change[];
  /** By id; null on the side that has no such runner, or no line for it. */
  readonly runners: readonly (Pair<RunnerMeasures> & { readonly id: string })[];
  /** Longest less shortest of each group. */
  readonly groups: readonly (Pair<{ readonly mean: number; readonly spread: number }> & { readonly id: string })[];
  /** Of all tubes, kg; null where a material is unknown. */
  readonly mass: Pair<number>;
  /** How many findings `check` has. */
  readonly findings: { readonly before: number; readonly after: number };
};

/** @param meshes by file name, each design's own */
export function compareDesigns(
  before: Design,
  after: Design,
  meshes: { readonly before?: Meshes; readonly after?: Meshes } = {},
): Comparison {
  const a = measuresOf(before, meshes.before ?? new Map());
  const b = measuresOf(after, meshes.after ?? new Map());
  const changes = changesBetween(before, after);
  return {
    same: changes.length === 0,
    changes,
    runners: byId(a.runners, b.runners),
    groups: byId(spreads(a), spreads(b)),
    mass: { before: a.mass, after: b.mass },
    findings: { before: a.report.problems.length, after: b.report.problems.length },
  };
}

const spreads = ({ report }: HeaderMeasures) => report.groups.map(({ id, mean, spread }) => ({ id, mean, spread }));

function byId<T extends { readonly id: string }>(
  before: readonly T[],
  after: readonly T[],
): (Pair<T> & { readonly id: string })[] {
  const ids = [...new Set([...before, ...after].map(({ id }) => id))];
  const find = (list: readonly T[], id: string): T | null => list.find((entry) => entry.id === id) ?? null;
  return ids.map((id) => ({ id, before: find(before, id), after: find(after, id) }));
}
