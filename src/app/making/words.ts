/** Answers about making, in words: times, money, ways, what is missing. No React. */
import type { Rounded, Way, WayTotals } from '../../shop/making/report';

export const WAY_NAMES: Readonly<Record<Way, string>> = { welded: 'Welded up', bent: 'Bent' };

/** `45 min`, `3 h 5 min` */
export function timeWords(minutes: number): string {
  const all = Math.round(minutes);
  const [hours, rest] = [Math.floor(all / 60), all % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** The number alone; its currency stands in the column's head, or behind it. */
export const moneyNumber = (value: number): string => value.toFixed(2).replace('-', '−');

export const moneyWords = (value: number, currency: string): string =>
  currency === '' ? moneyNumber(value) : `${moneyNumber(value)} ${currency}`;

/** Null where a price is missing. */
export function costOfWay({ cost: { stock, welds, work } }: Pick<WayTotals, 'cost'>): number | null {
  return stock === null || welds === null || work === null ? null : stock + welds + work;
}

/** What is known of it, for where something is missing. */
export const knownCost = ({ cost: { stock, welds, work } }: Pick<WayTotals, 'cost'>): number =>
  (stock ?? 0) + (welds ?? 0) + (work ?? 0);

export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** @param length a length in words. Said in full, because nobody guesses what rounding costs. */
export function roundingWords({ tape, dial, position, angle, length }: Rounded, say: (mm: number) => string): string {
  const more =
    Math.abs(length) < 0.005 ? 'as long as designed' : `${say(Math.abs(length))} ${length > 0 ? 'longer' : 'shorter'}`;
  return `Cut and turned to ${say(tape)} and ${trimmed(dial)}°, its far end comes out ${say(position)} and ${angle.toFixed(2)}° off; the tube is ${more}.`;
}

const trimmed = (value: number): string => String(Number(value.toFixed(3)));
