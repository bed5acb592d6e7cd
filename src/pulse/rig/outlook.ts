/** How long a run under way will still take, and what makes it long: said early, rather than found out over hours. */
import { ductsOf } from './ducts';
import type { Rig } from './types';

/** From here on it is worth a word why, s. */
const LONG = 300;
/** Too early to tell before: the first steps run code that is not compiled well yet, s. */
const FIRST = 2;

/** @param spent so far, s @param time reached @param duration to be reached. @returns s; null: too early to tell, or done */
export function secondsLeft(spent: number, time: number, duration: number): number | null {
  if (!(spent >= FIRST && time > 0 && time < duration)) return null;
  return (spent * (duration - time)) / time;
}

/** "about 40 s", "about 12 min", "about 3 h", "about 9 days". @param seconds ≥ 0 */
export function spanText(seconds: number): string {
  const [, unit, size] = SPANS.find(([until]) => seconds < until)!;
  return `about ${Math.max(1, Math.round(seconds / size))} ${unit}`;
}

const SPANS: readonly (readonly [until: number, unit: string, size: number])[] = [
  [90, 's', 1],
  [90 * 60, 'min', 60],
  [36 * 3600, 'h', 3600],
  [Number.POSITIVE_INFINITY, 'days', 86_400],
];

/** Why so long and what would shorten it; null where it is not long. @param left s */
export function whyLong(left: number, rig: Pick<Rig, 'pipes' | 'ends'>): string | null {
  if (left < LONG) return null;
  const { id, cell } = smallestCell(rig);
  const size = `${Number(cell.toPrecision(3))} m`;
  return [
    `At this pace ${spanText(left)} to go. No wave may cross more than one cell a step, and those of pipe "${id}" are the smallest,`,
    `${size}: with larger cells there, or a shorter "duration", it takes less.`,
  ].join(' ');
}

function smallestCell(rig: Pick<Rig, 'pipes' | 'ends'>): { readonly id: string; readonly cell: number } {
  const cells = ductsOf(rig).map(({ from, to, cells }, k) => ({ id: rig.pipes[k]!.id, cell: (to - from) / cells }));
  return cells.reduce((least, other) => (other.cell < least.cell ? other : least));
}
