/** Fields of a port and its opening. */
import { reshapeOpening, segmentsOf, setFields } from '../../../../shared/design/edit';
import { CYLINDERS, DISTANCE, LENGTH, narrowed } from '../../../../shared/design/ranges';
import type { Opening, Port } from '../../../../shared/design/types';
import { WALLS } from './offers';
import type { Context, FieldSpec, Section } from './spec';

const isRound = (opening: Opening): boolean => opening.shape === 'round';

const opening: readonly FieldSpec<Port>[] = [
  {
    type: 'choice',
    label: 'Shape',
    at: ['opening', 'shape'],
    choices: [
      { value: 'round', name: 'Round' },
      { value: 'oval', name: 'Oval' },
      { value: 'rounded-rectangle', name: 'Rounded rectangle' },
    ],
    meaning: 'the hole in the head; its size stays as the shape changes',
    set: ({ design, thing, entry }, shape) =>
      setFields(design, [
        [[...segmentsOf(design, thing)!, 'opening'], reshapeOpening(entry.opening, shape as Opening['shape'])],
      ]),
  },
  {
    type: 'number',
    quantity: 'length',
    label: 'Diameter',
    at: ['opening', 'diameter'],
    range: LENGTH,
    when: ({ entry }) => isRound(entry.opening),
    meaning: 'across the opening',
  },
  {
    type: 'number',
    quantity: 'length',
    label: 'Width',
    at: ['opening', 'width'],
    range: LENGTH,
    when: ({ entry }) => !isRound(entry.opening),
    meaning: 'square to up',
  },
  {
    type: 'number',
    quantity: 'length',
    label: 'Height',
    at: ['opening', 'height'],
    range: LENGTH,
    when: ({ entry }) => !isRound(entry.opening),
    meaning: 'along up',
  },
  {
    type: 'number',
    quantity: 'length',
    label: 'Corner radius',
    at: ['opening', 'corner'],
    range: ({ entry: { opening: o } }) =>
      o.shape === 'rounded-rectangle' ? narrowed(DISTANCE, { most: Math.min(o.width, o.height) / 2 }) : DISTANCE,
    when: ({ entry }) => entry.opening.shape === 'rounded-rectangle',
    meaning: 'at most half the shorter side',
  },
];

/** Of the tube that starts at the port; undefined while none does. */
const tubeWall = ({ header, entry }: Context<Port>): number | undefined =>
  header.runners.find(({ runner: { from } }) => 'port' in from && from.port === entry.id)?.tube.wall;

const transition: readonly FieldSpec<Port>[] = [
  {
    type: 'number',
    quantity: 'length',
    label: 'Transition length',
    at: ['transition', 'length'],
    optional: true,
    fallback: 'none',
    range: LENGTH,
    meaning:
      'of a piece formed from the opening to the tube, along the first straight; empty: the tube starts at the flange',
    set: ({ design, thing }, length) => {
      const where = [...segmentsOf(design, thing)!, 'transition'];
      return setFields(design, [length === undefined ? [where, undefined] : [[...where, 'length'], length]]);
    },
  },
  {
    type: 'number',
    quantity: 'length',
    label: 'Transition wall',
    at: ['transition', 'wall'],
    optional: true,
    fallback: tubeWall,
    range: LENGTH,
    step: 0.1,
    when: ({ entry }) => entry.transition !== undefined,
    meaning: "at the opening; default: the tube's, into which it runs evenly",
    offers: { name: 'Stock walls', of: WALLS },
  },
];

export const portSections: readonly Section<Port>[] = [
  {
    fields: [
      {
        type: 'number',
        quantity: 'count',
        label: 'Cylinder',
        at: ['cylinder'],
        range: CYLINDERS,
        meaning: 'the cylinder it empties; a cylinder may have two ports',
      },
      { type: 'place', label: 'Position', at: ['position'], meaning: "centre of the port at the flange's outer face" },
      { type: 'direction', label: 'Direction', at: ['direction'], meaning: 'leaving the head; any length' },
      { type: 'direction', label: 'Up', at: ['up'], meaning: 'turns the opening; made square to the direction' },
      {
        type: 'number',
        quantity: 'length',
        label: 'Length in head',
        at: ['lengthInHead'],
        optional: true,
        fallback: 0,
        range: DISTANCE,
        meaning: "valve seat to the flange's outer face; counts in the runner's length",
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Touching allowed',
        at: ['bundle'],
        optional: true,
        fallback: 0,
        range: DISTANCE,
        meaning: 'for siamesed ports: how far out their runners may touch',
      },
    ],
  },
  { title: 'Opening', fields: opening },
  { title: 'Transition to the tube', fields: transition },
];
