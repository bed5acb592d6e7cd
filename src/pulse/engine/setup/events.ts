/**
 * Whether a valve opens and shuts where an engine's can, in our crank degrees: from top dead centre of the exhaust stroke, where
 * both valves are open a little. Where it cannot, other usual ways of writing the same events are tried, and the one that makes sense is
 * told with what it is here.
 */
import type { Refusal } from '../../../../shared/design/refusal';

export type Side = 'intake' | 'exhaust';
export type Events = readonly [opens: number, closes: number];
type Span = readonly [least: number, most: number];
type Window = { readonly opens: Span; readonly closes: Span };

/** What is let through: wider than any four-stroke that runs (from memory), so that only another convention is beyond. */
const POSSIBLE: Readonly<Record<Side, Window>> = {
  intake: { opens: [-120, 90], closes: [120, 345] },
  exhaust: { opens: [-345, -120], closes: [-90, 120] },
};
/** What a reading of it by another convention must come to: road and racing camshafts, from memory. */
const USUAL: Readonly<Record<Side, Window>> = {
  intake: { opens: [-70, 40], closes: [180, 280] },
  exhaust: { opens: [-285, -180], closes: [-40, 75] },
};
const DURATION: Span = [120, 360];

const EXAMPLE: Readonly<Record<Side, string>> = {
  intake: 'opens -12, closes 228 for 12° before the top and 48° after the bottom',
  exhaust: 'opens -232, closes 10 for 52° before the bottom and 10° after the top',
};

const inside = (value: number, [least, most]: Span): boolean => value >= least && value <= most;
const fits = (windows: Readonly<Record<Side, Window>>, side: Side, [opens, closes]: Events): boolean =>
  inside(opens, windows[side].opens) && inside(closes, windows[side].closes) && inside(closes - opens, DURATION);

type Reading = { readonly words: string; readonly as: (events: Events, side: Side) => Events | null };

/** The whole table may be counted from elsewhere. */
const SHIFTS: readonly Reading[] = [
  { words: 'counted from the firing top dead centre', as: ([o, c]) => [o - 360, c - 360] },
  { words: 'counted from the firing top dead centre', as: ([o, c]) => [o + 360, c + 360] },
  { words: 'a whole cycle later', as: ([o, c]) => [o - 720, c - 720] },
  { words: 'a whole cycle earlier', as: ([o, c]) => [o + 720, c + 720] },
  { words: 'degrees of the camshaft', as: ([o, c]) => [2 * o, 2 * c] },
];

const READINGS: readonly Reading[] = [
  {
    words: 'degrees before and after the dead centres',
    as: ([o, c], side) => (o < 0 ? null : side === 'intake' ? [-o, 180 + c] : [-180 - o, c]),
  },
  {
    words: 'counted from the dead centre next to each event',
    as: ([o, c], side) => (side === 'intake' ? [o, 180 + c] : [o - 180, c]),
  },
  { words: 'an opening without its minus', as: ([o, c]) => (o > 0 ? [-o, c] : null) },
  { words: 'an opening told a cycle later', as: ([o, c]) => [o - 720, c] },
  { words: 'a closing told a cycle earlier', as: ([o, c]) => [o, c + 720] },
  { words: 'closing and opening exchanged', as: ([o, c]) => [c, o] },
  {
    words: 'a lobe centre and a duration',
    as: ([o, c], side) => (side === 'intake' ? [o - c / 2, o + c / 2] : [-Math.abs(o) - c / 2, -Math.abs(o) + c / 2]),
  },
  ...SHIFTS,
];

/**
 * @param of a number for each event, or the first and last angle of a lift table, which can only have moved as a whole
 */
export function eventProblem(path: string, side: Side, events: Events, of: 'events' | 'lifts'): Refusal | null {
  if (fits(POSSIBLE, side, events)) return null;
  const [opens, closes] = events;
  const open = closes - opens;
  const duration =
    open <= 0
      ? ': it never opens'
      : inside(open, DURATION)
        ? ''
        : `: open for ${open}°, where ${DURATION[0]} to ${DURATION[1]} are possible`;
  const allowed = [
    `crank degrees from top dead centre of the exhaust stroke, such as ${EXAMPLE[side]}`,
    ...remedies(side, events, of === 'events' ? READINGS : SHIFTS),
  ];
  return { path, found: `opens ${opens}, closes ${closes}${duration}`, allowed: allowed.join('; ') };
}

function remedies(side: Side, events: Events, readings: readonly Reading[]): string[] {
  const other = side === 'intake' ? 'exhaust' : 'intake';
  if (fits(USUAL, other, events)) return [`this is where ${other} valves open and close: are the two exchanged?`];
  for (const { words, as } of readings) {
    const read = as(events, side);
    if (read && fits(USUAL, side, read))
      return [`if these are ${words}, here they are opens ${read[0]}, closes ${read[1]}`];
  }
  return [];
}
