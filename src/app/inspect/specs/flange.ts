/** Fields of a flange, and of one of its fasteners. */
import { DISTANCE, LENGTH } from '../../../../shared/design/ranges';
import type { Fastener, Flange } from '../../../../shared/design/types';
import { holeOffers, MATERIAL_CHOICES } from './offers';
import type { Reading, Section } from './spec';

/** `p1, p2` as ids; which of them exist the document's own rules say. */
const readIds = (text: string): Reading<unknown> => ({
  ok: true,
  value: text
    .split(/[,;]/)
    .map((id) => id.trim())
    .filter((id) => id !== ''),
});

export const flangeSections: readonly Section<Flange>[] = [
  {
    fields: [
      {
        type: 'line',
        label: 'Ports',
        at: ['ports'],
        meaning: 'the ports it covers, with commas between',
        fallback: 'none',
        write: (ids) => (ids as string[]).join(', '),
        read: readIds,
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Thickness',
        at: ['thickness'],
        range: LENGTH,
        meaning: 'of the plate',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Gasket',
        at: ['gasket'],
        optional: true,
        fallback: 'none',
        range: DISTANCE,
        meaning: 'thickness of the gasket behind it',
      },
      {
        type: 'choice',
        label: 'Material',
        at: ['material'],
        optional: true,
        fallback: 'not given',
        choices: MATERIAL_CHOICES,
      },
      {
        type: 'choice',
        label: 'Plates',
        at: ['plates'],
        optional: true,
        fallback: 'default: one for all',
        choices: [
          { value: 'one', name: 'One for all ports' },
          { value: 'separate', name: 'One for each port' },
        ],
        meaning: 'one plate stays flat while it is welded; separate ones let the head grow with heat',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Border',
        at: ['border'],
        optional: true,
        fallback: 'by practice',
        range: LENGTH,
        step: 0.5,
        when: ({ entry }) => entry.outline === undefined,
        meaning: 'least metal round openings and holes; default: by practice, from the thickness',
      },
    ],
  },
  {
    title: 'Tube seat',
    fields: [
      {
        type: 'choice',
        label: 'Seat',
        at: ['seat'],
        optional: true,
        fallback: 'default: flush',
        choices: [
          { value: 'flush', name: 'Flush: tube on the face' },
          { value: 'stepped', name: 'Stepped: tube slips in' },
        ],
        meaning: 'butted on the face and welded outside, or let into a step and welded inside too',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Step depth',
        at: ['stepDepth'],
        optional: true,
        fallback: ({ entry }) => entry.thickness / 2,
        range: LENGTH,
        step: 0.5,
        when: ({ entry }) => entry.seat === 'stepped',
        meaning: 'how far the tube goes in, from the outer face; default: half the thickness',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Step gap',
        at: ['stepGap'],
        optional: true,
        fallback: 0.2,
        range: DISTANCE,
        step: 0.05,
        when: ({ entry }) => entry.seat === 'stepped',
        meaning: 'room all round between tube and step; default: 0.2 mm',
      },
    ],
  },
];

export const fastenerSections: readonly Section<Fastener>[] = [
  {
    fields: [
      {
        type: 'choice',
        label: 'Kind',
        at: ['kind'],
        choices: [
          { value: 'stud', name: 'Stud' },
          { value: 'bolt', name: 'Bolt' },
        ],
        meaning: 'a stud with a nut, or a bolt',
      },
      { type: 'text', label: 'Thread', at: ['thread'], offers: ['M6', 'M8', 'M10', 'M12'], meaning: 'such as M8' },
      {
        type: 'number',
        quantity: 'length',
        label: 'Hole',
        at: ['hole'],
        range: LENGTH,
        meaning: 'diameter of the hole through the flange',
        offers: { name: 'Clearance holes for the thread', of: ({ entry }) => holeOffers(entry.thread) },
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Length',
        at: ['length'],
        optional: true,
        fallback: 'not given',
        range: LENGTH,
        meaning: 'of the stud or bolt',
      },
      {
        type: 'place',
        label: 'Position',
        at: ['position'],
        meaning: 'centre of the hole; its axis lies along the port direction',
      },
    ],
  },
];
