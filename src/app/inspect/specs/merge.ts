/** Fields of a merge: to users, a collector. */
import { segmentsOf, setFields } from '../../../../shared/design/edit';
import { CONVERGENCE, DISTANCE, INLETS, LENGTH, narrowed, TILT } from '../../../../shared/design/ranges';
import type { Merge, Placement } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import { MATERIAL_CHOICES, materialName, OUTSIDE_DIAMETERS, WALLS } from './offers';
import type { Context, Section } from './spec';

const resolved = ({ header, thing }: Context<Merge>) => header.merges.get(thing.id)!;
const isLast = ({ design, thing }: Context<Merge>): boolean =>
  !design.runners.some(({ from }) => 'merge' in from && from.merge === thing.id);

/** How far a collector may be moved at first, each way, mm; meant to be changed. */
const FIRST_ROOM = 30;
const boxAround = ({ position: [x, y, z] }: Merge): Placement => ({
  within: [
    [x - FIRST_ROOM, y - FIRST_ROOM, z - FIRST_ROOM],
    [x + FIRST_ROOM, y + FIRST_ROOM, z + FIRST_ROOM] satisfies Vec3,
  ],
});

export const mergeSections: readonly Section<Merge>[] = [
  {
    fields: [
      {
        type: 'number',
        quantity: 'count',
        label: 'Inlets',
        at: ['inlets'],
        range: INLETS,
        meaning: 'how many runners it takes',
      },
      {
        type: 'choice',
        label: 'Pattern',
        at: ['pattern'],
        optional: true,
        fallback: 'default: ring',
        choices: [
          { value: 'ring', name: 'Ring' },
          { value: 'line', name: 'Line' },
        ],
        meaning: 'how the inlets stand',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Pitch',
        at: ['pitch'],
        optional: true,
        range: LENGTH,
        fallback: (c) => resolved(c).pitch,
        meaning: 'from one inlet centre to the next; default: the widest inlet tube',
      },
      {
        type: 'number',
        quantity: 'angle',
        label: 'Convergence',
        at: ['convergence'],
        optional: true,
        fallback: 0,
        range: CONVERGENCE,
        meaning: 'how far each inlet leans toward the axis',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Touching allowed',
        at: ['bundle'],
        optional: true,
        range: DISTANCE,
        fallback: (c) => resolved(c).bundle,
        meaning: 'how far from the inlets its runners may touch; default: 1.5 × the widest inlet tube',
      },
    ],
  },
  {
    title: 'Place',
    fields: [
      { type: 'place', label: 'Position', at: ['position'], meaning: 'centre of the inlet plane' },
      { type: 'direction', label: 'Axis', at: ['axis'], meaning: 'the way the gas flows; any length' },
      { type: 'direction', label: 'Up', at: ['up'], meaning: 'turns the pattern; made square to the axis' },
      {
        type: 'choice',
        label: 'Held',
        at: ['placement'],
        choices: [
          { value: 'fixed', name: 'Where it is' },
          { value: 'box', name: 'Anywhere in a box' },
        ],
        get: ({ entry }) => (entry.placement ? 'box' : 'fixed'),
        set: ({ design, thing, entry }, value) =>
          setFields(design, [
            [
              [...segmentsOf(design, thing)!, 'placement'],
              value === 'box' ? (entry.placement ?? boxAround(entry)) : undefined,
            ],
          ]),
        meaning: 'whether it may be moved to make room and equal lengths',
      },
      {
        type: 'place',
        label: 'Box from',
        at: ['placement', 'within', 0],
        when: ({ entry }) => entry.placement !== undefined,
        meaning: 'one corner of where its position may be',
      },
      {
        type: 'place',
        label: 'Box to',
        at: ['placement', 'within', 1],
        when: ({ entry }) => entry.placement !== undefined,
        meaning: 'the opposite corner',
      },
      {
        type: 'number',
        quantity: 'angle',
        label: 'Tilt',
        at: ['placement', 'tilt'],
        optional: true,
        fallback: 0,
        range: TILT,
        when: ({ entry }) => entry.placement !== undefined,
        meaning: 'how far its axis may lean from where it points',
      },
    ],
  },
  {
    title: 'Outlet',
    fields: [
      {
        type: 'number',
        quantity: 'length',
        label: 'Outside diameter',
        at: ['outletDiameter'],
        range: LENGTH,
        meaning: 'of the outlet',
        offers: { name: 'Stock sizes', of: OUTSIDE_DIAMETERS },
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Length',
        at: ['length'],
        range: LENGTH,
        meaning: 'inlet plane to outlet, along the axis',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Wall',
        at: ['wall'],
        optional: true,
        range: ({ entry }) => narrowed(LENGTH, { most: entry.outletDiameter / 2, below: true }),
        fallback: (c) => resolved(c).wall,
        step: 0.1,
        meaning: "thickness of the metal; default: the first inlet tube's",
        offers: { name: 'Stock walls', of: WALLS },
      },
      {
        type: 'choice',
        label: 'Material',
        at: ['material'],
        optional: true,
        fallback: (c) => `default: ${materialName(resolved(c).material)}`,
        choices: MATERIAL_CHOICES,
      },
      {
        type: 'choice',
        label: 'Joint',
        at: ['outletJoint'],
        optional: true,
        fallback: 'not given',
        when: (c) => isLast(c) || c.entry.outletJoint !== undefined,
        choices: [
          { value: 'slip', name: 'Slip joint' },
          { value: 'band-clamp', name: 'Band clamp' },
          { value: 'flange', name: 'Flange' },
          { value: 'flexible', name: 'Flexible' },
          { value: 'weld', name: 'Weld' },
        ],
        meaning: 'how what follows is joined',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Plain length',
        at: ['outletLength'],
        optional: true,
        fallback: 'worked out',
        range: DISTANCE,
        meaning: 'straight outlet behind the cone, within the length; default: as the joint needs',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Slip gap',
        at: ['slipGap'],
        optional: true,
        fallback: 0.25,
        range: DISTANCE,
        step: 0.05,
        when: ({ entry }) => entry.outletJoint === 'slip' || entry.slipGap !== undefined,
        meaning: 'room all round between the two tubes of the slip joint; default: 0.25 mm',
      },
    ],
  },
  {
    title: 'Cut and weld',
    fields: [
      {
        type: 'number',
        quantity: 'length',
        label: 'Merging length',
        at: ['mergingLength'],
        optional: true,
        fallback: 'worked out',
        range: DISTANCE,
        meaning: 'how far its tubes run on from the inlets, cut where they meet; default: worked out',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Weld gap',
        at: ['weldGap'],
        optional: true,
        fallback: 0,
        range: DISTANCE,
        step: 0.1,
        meaning: 'left open between faces that are welded to each other; default: none',
      },
    ],
  },
];
