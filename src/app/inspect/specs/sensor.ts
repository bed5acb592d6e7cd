/** Fields of a sensor in a tube or collector: where its bung is, and the room that it takes. */
import { CLOCK, DISTANCE, LENGTH } from '../../../../shared/design/ranges';
import type { Sensor } from '../../../../shared/design/types';
import type { Section } from './spec';

export const sensorSections: readonly Section<Sensor>[] = [
  {
    fields: [
      {
        type: 'choice',
        label: 'What it is',
        at: ['kind'],
        choices: [
          { value: 'oxygen', name: 'oxygen' },
          { value: 'temperature', name: 'temperature' },
        ],
        meaning: 'gives the usual sizes',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Along',
        at: ['at'],
        range: DISTANCE,
        meaning: "along the runner's centreline from its start, or from the collector's inlets",
      },
      {
        type: 'number',
        quantity: 'angle',
        label: 'Round',
        at: ['clock'],
        range: CLOCK,
        meaning: 'round the tube from its uppermost side, right-handed about the flow',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Room',
        at: ['length'],
        optional: true,
        fallback: 'by kind',
        range: LENGTH,
        meaning: 'that the sensor with its plug and lead takes, straight out of the tube',
      },
    ],
  },
];
