/** Fields of a group of runners that must be equal. */
import { DISTANCE, LENGTH } from '../../../../shared/design/ranges';
import type { Group } from '../../../../shared/design/types';
import type { Section } from './spec';

export const groupSections: readonly Section<Group>[] = [
  {
    fields: [
      {
        type: 'number',
        quantity: 'length',
        label: 'Length',
        at: ['length'],
        optional: true,
        empty: null,
        fallback: 'any, but equal',
        range: LENGTH,
        meaning: "each runner's length, that in the head included; empty: any, but equal",
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Tolerance',
        at: ['tolerance'],
        range: DISTANCE,
        step: 0.5,
        meaning: 'how far off the shop accepts, either way',
      },
    ],
  },
];
