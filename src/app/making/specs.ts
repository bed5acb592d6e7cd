/** Fields of the workshop: saw, welds, tape and dial, money, and those of one bar or bend of the shelf. mm, degrees, minutes. */
import { setFields } from '../../../shared/design/edit';
import {
  BEND_ANGLE,
  COUNT,
  DIAL,
  DISTANCE,
  isWithin,
  LENGTH,
  MINUTES,
  narrowed,
  PRICE,
} from '../../../shared/design/ranges';
import type { Design, Workshop } from '../../../shared/design/types';
import { WORKSHOP_DEFAULTS } from '../../../shared/stock/workshop';
import type { AnySpec } from '../inspect/shared';
import { MATERIAL_CHOICES, OUTSIDE_DIAMETERS, radiiFor, WALLS } from '../inspect/specs/offers';
import type { FieldSpec, NumberSpec } from '../inspect/specs/spec';
import { type ShelfList, shelfOf } from './shelf';

const of = (...specs: FieldSpec<Design>[]): readonly AnySpec[] => specs as unknown as readonly AnySpec[];
const WHOSE = 'the workshop';

type LengthField = 'kerf' | 'endTrim' | 'leastOffcut' | 'weldGap' | 'weldShrinkage' | 'weldSetback' | 'torchRoom';

const length = (at: LengthField, label: string, meaning: string, step = 0.5): NumberSpec<Design> => ({
  type: 'number',
  quantity: 'length',
  label,
  at: ['workshop', at],
  whose: WHOSE,
  optional: true,
  fallback: WORKSHOP_DEFAULTS[at],
  range: DISTANCE,
  step,
  meaning,
});

export const SAW_FIELDS = of(
  length('kerf', 'Saw kerf', 'lost at each cut', 0.1),
  length('endTrim', 'End trim', 'sawn off a new bar at both ends before it is used', 1),
  length('leastOffcut', 'Least offcut', 'leftovers of bars are kept from this length on', 10),
);

export const WELD_FIELDS = of(
  length('weldGap', 'Weld gap', 'left open between two pieces', 0.1),
  length('weldShrinkage', 'Shrinkage', 'how much a weld draws its two pieces together', 0.1),
  length('weldSetback', 'Setback', 'straight kept between a weld and a bend, where there is any', 1),
  {
    type: 'number',
    quantity: 'length',
    label: 'Longest leg',
    at: ['workshop', 'longestLeg'],
    whose: WHOSE,
    optional: true,
    fallback: 'all that stock has',
    range: DISTANCE,
    step: 5,
    meaning: 'that a piece keeps; shorter ones fit more pieces into a bend, and ask for more welds',
  },
  length('torchRoom', 'Torch room', 'room out from the tube that a torch needs at a weld', 5),
);

export const MEASURE_FIELDS = of(
  {
    type: 'number',
    quantity: 'length',
    label: 'Tape',
    at: ['workshop', 'tape'],
    whose: WHOSE,
    optional: true,
    fallback: WORKSHOP_DEFAULTS.tape,
    range: LENGTH,
    step: 0.1,
    meaning: 'its least step: cuts are rounded to it',
    offers: {
      name: 'Usual steps',
      of: [
        { value: 0.5, name: '0.5 mm' },
        { value: 1, name: '1 mm' },
        { value: 25.4 / 16, name: '1/16 in' },
        { value: 25.4 / 32, name: '1/32 in' },
        { value: 25.4 / 64, name: '1/64 in' },
      ],
    },
  },
  {
    type: 'number',
    quantity: 'angle',
    label: 'Dial',
    at: ['workshop', 'dial'],
    whose: WHOSE,
    optional: true,
    fallback: WORKSHOP_DEFAULTS.dial,
    range: DIAL,
    step: 0.5,
    meaning: 'its least step: turns and bends are rounded to it',
  },
  {
    type: 'choice',
    label: 'Rotation',
    at: ['workshop', 'rotation'],
    whose: WHOSE,
    optional: true,
    fallback: 'default: clockwise',
    choices: [
      { value: 'right-handed', name: 'Clockwise is positive' },
      { value: 'left-handed', name: 'Counter-clockwise is positive' },
    ],
    meaning: 'in bend tables, looking along the tube the way it is counted',
  },
  {
    type: 'choice',
    label: 'Thinning by',
    at: ['workshop', 'thinning'],
    whose: WHOSE,
    optional: true,
    fallback: 'default: geometry',
    choices: [
      { value: 'geometric', name: 'Geometry' },
      { value: 'tema', name: 'TEMA' },
      { value: 'b31.1', name: 'ASME B31.1' },
    ],
    meaning: 'the rule that foretells the wall on the outside of a bend',
  },
);

const minutes = (at: keyof NonNullable<Workshop['minutes']>, label: string, meaning: string): NumberSpec<Design> => ({
  type: 'number',
  quantity: 'plain',
  label,
  at: ['workshop', 'minutes', at],
  whose: WHOSE,
  optional: true,
  fallback: WORKSHOP_DEFAULTS.minutes[at],
  range: MINUTES,
  unit: 'min',
  meaning,
});

const price = (at: 'hourly' | 'weldCost', label: string, meaning: string): NumberSpec<Design> => ({
  type: 'number',
  quantity: 'plain',
  label,
  at: ['workshop', at],
  whose: WHOSE,
  optional: true,
  fallback: 'not given',
  range: PRICE,
  meaning,
});

export const MONEY_FIELDS = of(
  {
    type: 'text',
    label: 'Currency',
    at: ['workshop', 'currency'],
    whose: WHOSE,
    optional: true,
    fallback: 'not given',
    offers: ['EUR', 'USD', 'GBP', 'AUD', 'CAD', 'CHF', 'SEK', 'JPY'],
    meaning: 'as prices are shown',
  },
  price('hourly', 'An hour', 'what an hour of work costs'),
  price('weldCost', 'A weld', 'gas, rod and wheels of one weld'),
  minutes('cut', 'Time a cut', 'with measuring and dressing'),
  minutes('weld', 'Time a weld', 'with fitting and tacking'),
  minutes('bend', 'Time a bend', 'on the bender'),
  minutes('setUp', 'To set up', 'the bender, for each tube'),
);

/** The fields of one bar or bend. */
export function stockFields(design: Design, list: ShelfList, index: number): readonly AnySpec[] {
  const stock = shelfOf(design, list)[index];
  if (!stock) return [];
  const at = (...rest: (string | number)[]) => ['workshop', list, index, ...rest];
  const whose = stock.id;
  const { outsideDiameter } = stock;
  const number = (spec: Omit<NumberSpec<Design>, 'type' | 'whose'>): NumberSpec<Design> => ({
    type: 'number',
    whose,
    ...spec,
  });
  const own: readonly FieldSpec<Design>[] =
    'radius' in stock
      ? [
          number({
            quantity: 'length',
            label: 'Radius',
            at: at('radius'),
            range: isWithin(outsideDiameter / 2, LENGTH) ? narrowed(LENGTH, { least: outsideDiameter / 2 }) : LENGTH,
            meaning: 'to the middle of the tube',
            offers: { name: 'Usual radii', of: radiiFor(outsideDiameter) },
          }),
          number({
            quantity: 'angle',
            label: 'Bend',
            at: at('angle'),
            range: BEND_ANGLE,
            step: 5,
            meaning: 'U is 180°; 90, 45 …',
          }),
          number({
            quantity: 'length',
            label: 'First leg',
            at: at('legs', 0),
            range: DISTANCE,
            meaning: 'straight beyond the arc',
          }),
          number({
            quantity: 'length',
            label: 'Second leg',
            at: at('legs', 1),
            range: DISTANCE,
            meaning: 'straight beyond the arc; of a J it differs from the first',
          }),
        ]
      : [number({ quantity: 'length', label: 'Length', at: at('length'), range: LENGTH, step: 100 })];
  return of(
    { type: 'text', label: 'Name', at: at('id'), whose, meaning: 'as it is written on the shelf' },
    number({
      quantity: 'length',
      label: 'Outside diameter',
      at: at('outsideDiameter'),
      range: LENGTH,
      offers: { name: 'Stock sizes', of: OUTSIDE_DIAMETERS },
    }),
    number({
      quantity: 'length',
      label: 'Wall',
      at: at('wall'),
      range: isWithin(outsideDiameter / 2, LENGTH)
        ? narrowed(LENGTH, { most: outsideDiameter / 2, below: true })
        : LENGTH,
      step: 0.1,
      offers: { name: 'Stock walls', of: WALLS },
    }),
    {
      type: 'choice',
      label: 'Material',
      at: at('material'),
      whose,
      optional: true,
      fallback: 'default: Mild steel',
      choices: MATERIAL_CHOICES,
    },
    ...own,
    number({
      quantity: 'count',
      label: 'On the shelf',
      at: at('count'),
      optional: true,
      fallback: 0,
      range: COUNT,
      meaning: 'how many lie there: they are used first',
    }),
    {
      type: 'choice',
      label: 'More of it',
      at: at('buy'),
      whose,
      choices: [
        { value: 'true', name: 'Can be bought' },
        { value: 'false', name: 'Cannot be bought' },
      ],
      get: ({ design: now }) => String(shelfOf(now, list)[index]?.buy ?? true),
      set: ({ design: now }, value) => setBuy(now, at('buy'), value),
    },
    number({
      quantity: 'plain',
      label: 'Price',
      at: at('price'),
      optional: true,
      fallback: 'not given',
      range: PRICE,
      meaning: 'of one that is bought',
    }),
  );
}

const setBuy = (design: Design, at: readonly (string | number)[], value: string | undefined) =>
  setFields(design, [[at, value === 'false' ? false : undefined]]);
