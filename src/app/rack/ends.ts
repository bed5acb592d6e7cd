/**
 * How even the ends hang: each runner against its group's target, and how far to magnify so that the least difference
 * that matters is seen before it is read. mm.
 */
import type { Group } from '../../../shared/design/types';
import type { Strip } from './strip';

/** Nearer than this a difference is called even: a thousandth of a millimetre, rounded. */
export const EVEN = 0.0005;

export type End = {
  readonly id: string;
  /** Length less target; null until laid. */
  readonly deviation: number | null;
  /** Farther off than the group's tolerance allows. */
  readonly outside: boolean;
};

export type EndGroup = {
  /** Null: runners in no group, which have nothing to be even with. */
  readonly id: string | null;
  /** The group's length; where that is free, the mean; null where nothing is laid. */
  readonly target: number | null;
  readonly free: boolean;
  readonly tolerance: number;
  readonly spread: number | null;
  readonly strips: readonly Strip[];
  readonly ends: readonly End[];
};

/** Groups in order of their first runner; each runner once. */
export function endGroups(strips: readonly Strip[], groups: ReadonlyMap<string, Group>): EndGroup[] {
  const order = [...new Set(strips.map((s) => s.group))];
  return order.map((id) => {
    const group = id === null ? undefined : groups.get(id);
    return endGroup(
      id,
      strips.filter((s) => s.group === id),
      group,
    );
  });
}

function endGroup(id: string | null, strips: readonly Strip[], group: Group | undefined): EndGroup {
  const lengths = strips.flatMap((s) => (s.length === null ? [] : [s.length]));
  const laid = lengths.length > 0;
  const mean = lengths.reduce((a, b) => a + b, 0) / lengths.length;
  const spread = laid ? Math.max(...lengths) - Math.min(...lengths) : null;
  const target = group ? (group.length ?? (laid ? mean : null)) : null;
  const tolerance = group?.tolerance ?? 0;
  const free = group?.length == null;
  const fails = free ? (spread ?? 0) > 2 * tolerance : true;
  const ends = strips.map(({ id, length }): End => {
    const deviation = length === null || target === null ? null : length - target;
    const outside = group !== undefined && deviation !== null && fails && Math.abs(deviation) > tolerance;
    return { id, deviation, outside };
  });
  return { id, target, free, tolerance, spread, strips, ends };
}

const LEAST_WINDOW = 0.01;
const WIDEST_WINDOW = 50;

/**
 * Half the width of the magnified window: the next 1, 2 or 5 past the farthest end, so that it always shows them all.
 * Even ends get a window of the group's tolerance, so that the slack left is seen.
 */
export function windowFor(ends: readonly End[], tolerance: number): number {
  const farthest = Math.max(0, ...ends.map((e) => Math.abs(e.deviation ?? 0)));
  const wanted = farthest < EVEN ? Math.max(tolerance, LEAST_WINDOW) : farthest;
  return Math.min(WIDEST_WINDOW, roundUp(wanted * 1.1));
}

/** The least 1, 2 or 5 × 10ⁿ that is no less than `x`. */
export function roundUp(x: number): number {
  const decade = 10 ** Math.floor(Math.log10(x));
  const step = [1, 2, 5, 10].find((k) => k * decade >= x * (1 - 1e-9))!;
  return Number((step * decade).toPrecision(1));
}
