/**
 * The runners' paint: the temper colours that steel takes as it is heated, from straw through purple to grey-blue, each
 * with a dash pattern so that none depends on colour alone. The values were searched for the greatest least distance in
 * Oklab, seen normally and by the three kinds of colour blindness, at 3:1 or more on every surface (tests/app/colours).
 */
import type { Design } from '../../shared/design/types';
import { remembered, rememberedByParts } from '../../shared/remember';
import type { Theme } from './theme';

export { type Theme, useTheme } from './theme';

export type Paint = {
  readonly name: string;
  readonly colour: string;
  /** As in SVG's stroke-dasharray, in stroke widths; empty: unbroken. */
  readonly dash: readonly number[];
};

const TEMPER: readonly { name: string; light: string; dark: string }[] = [
  { name: 'straw', light: '#a87801', dark: '#f2dc8e' },
  { name: 'bronze', light: '#7c5029', dark: '#db8b43' },
  { name: 'purple', light: '#54285d', dark: '#9569a3' },
  { name: 'blue', light: '#3d82e1', dark: '#75b5fb' },
  { name: 'grey-blue', light: '#4b6273', dark: '#b2e8f9' },
  { name: 'plum', light: '#741317', dark: '#bc5953' },
  { name: 'violet', light: '#3f2a99', dark: '#827ef3' },
  { name: 'grey', light: '#7c7f76', dark: '#bab8ad' },
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

type Runners = Design['runners'];

/** The very same paints while ids and theme stay, though a runner moves; and asked often of one list, found at once. */
const paintsIn: Readonly<Record<Theme, (runners: Runners) => ReadonlyMap<string, Paint>>> = {
  light: paintsFor('light'),
  dark: paintsFor('dark'),
};

function paintsFor(theme: Theme) {
  const byIds = rememberedByParts(
    (runners: Runners) => runners.map(({ id }) => id),
    (runners): ReadonlyMap<string, Paint> => new Map(runners.map(({ id }, i) => [id, paintOf(i, theme)])),
  );
  return remembered(byIds);
}

/** Every runner's paint by its id, in the document's order. */
export const paintsOf = (design: Design, theme: Theme): ReadonlyMap<string, Paint> => paintsIn[theme](design.runners);
