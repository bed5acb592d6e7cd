/**
 * The runners' paint: the temper colours that steel takes as it is heated, from straw through purple to grey-blue, each
 * with a dash pattern so that none depends on colour alone. The values were searched for the greatest least distance in
 * Oklab, seen normally and by the three kinds of colour blindness, at 3:1 or more on every surface (tests/app/colours).
 */
import type { Design } from '../../shared/design/types';
import type { Theme } from './theme';

export { type Theme, useTheme } from './theme';

export type Paint = {
  readonly name: string;
  readonly colour: string;
  /** As in SVG's stroke-dasharray, in stroke widths; empty: unbroken. */
  readonly dash: readonly number[];
};

const TEMPER: readonly { name: string; light: string; dark: string }[] = [
  { name: 'straw', light: '#a37c12', dark: '#f9dd72' },
  { name: 'bronze', light: '#824a10', dark: '#d98a44' },
  { name: 'purple', light: '#5b196d', dark: '#9666a5' },
  { name: 'blue', light: '#4b7de0', dark: '#80b0ee' },
  { name: 'grey-blue', light: '#436882', dark: '#b3e8fa' },
  { name: 'plum', light: '#6f142d', dark: '#bd5b57' },
  { name: 'violet', light: '#673ba9', dark: '#847ff4' },
  { name: 'grey', light: '#7f8478', dark: '#c2bea5' },
];

const DASHES: readonly (readonly number[])[] = [
  [],
  [6, 2],
  [2, 2],
  [8, 2, 2, 2],
  [4, 4],
  [1, 1],
  [8, 2, 2, 2, 2, 2],
  [10, 4],
];

/** How many runners have a paint of their own. */
export const PAINT_COUNT = TEMPER.length;

/** After the last colour the colours come round again with other dashes, so that a pair is never repeated below 64. */
export function paintOf(index: number, theme: Theme): Paint {
  const temper = TEMPER[index % TEMPER.length]!;
  const round = Math.floor(index / TEMPER.length);
  return { name: temper.name, colour: temper[theme], dash: DASHES[(index + round) % DASHES.length]! };
}

/** Every runner's paint by its id, in the document's order. */
export function paintsOf(design: Design, theme: Theme): ReadonlyMap<string, Paint> {
  return new Map(design.runners.map((runner, i) => [runner.id, paintOf(i, theme)]));
}
