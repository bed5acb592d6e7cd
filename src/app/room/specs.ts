/** Fields of the design that tell how the header moves, how it is wrapped, which tools are at hand. Shown in the Room leaf. */
import { COLD } from '../../../shared/design/dimensions';
import { LAYERS, LENGTH, ROCK, TEMPERATURE } from '../../../shared/design/ranges';
import type { Design } from '../../../shared/design/types';
import { showQuantity } from '../inspect/fields/quantity';
import type { AnySpec } from '../inspect/shared';
import type { FieldSpec } from '../inspect/specs/spec';
import { readLengths } from '../inspect/specs/tube';

const of = (...specs: FieldSpec<Design>[]): readonly AnySpec[] => specs as unknown as readonly AnySpec[];

const rock = (...at: (string | number)[]) => ['motion', 'rock', ...at];
const heat = (at: string) => ['motion', 'heat', at];

export const ROCK_FIELDS = of(
  { type: 'place', label: 'Through', at: rock('position'), meaning: 'a point on the axis, which stays where it is' },
  { type: 'direction', label: 'Along', at: rock('axis'), meaning: 'the axis it rolls about, usually the crank' },
  {
    type: 'number',
    quantity: 'angle',
    label: 'From',
    at: rock('angles', 0),
    range: ROCK,
    step: 0.5,
    meaning: 'the least roll, right-handed about the axis; 0 is at rest',
  },
  {
    type: 'number',
    quantity: 'angle',
    label: 'To',
    at: rock('angles', 1),
    range: ROCK,
    step: 0.5,
    meaning: 'the most roll',
  },
);

export const HEAT_FIELDS = of(
  {
    type: 'number',
    quantity: 'plain',
    label: 'Hot',
    at: heat('temperature'),
    range: TEMPERATURE,
    unit: '°C',
    step: 25,
    meaning: 'of the tubes at full load',
  },
  {
    type: 'number',
    quantity: 'plain',
    label: 'Cold',
    at: heat('from'),
    optional: true,
    fallback: COLD,
    range: TEMPERATURE,
    unit: '°C',
    meaning: 'as it was measured and built',
  },
);

export const WRAP_FIELDS = of(
  {
    type: 'number',
    quantity: 'length',
    label: 'Thickness',
    at: ['wrap', 'thickness'],
    range: LENGTH,
    step: 0.1,
    meaning: 'of one layer',
  },
  {
    type: 'number',
    quantity: 'count',
    label: 'Layers',
    at: ['wrap', 'layers'],
    range: LAYERS,
    meaning: 'one over the other; half an overlap makes two',
  },
  {
    type: 'number',
    quantity: 'length',
    label: 'Room for roll',
    at: ['wrap', 'roll'],
    range: LENGTH,
    step: 1,
    meaning: 'the least gap that the roll can be passed through',
  },
);

export const EXTENSIONS = of({
  type: 'line',
  label: 'Extensions',
  at: ['access', 'extensions'],
  optional: true,
  fallback: 'the usual ones',
  meaning: 'lengths of the bars at hand, with semicolons between',
  write: (list, display) => (list as number[]).map((length) => showQuantity(length, 'length', display)).join('; '),
  read: readLengths,
});
