/** Fields of the design as a whole. */
import { setFields } from '../../../../shared/design/edit';
import { DISTANCE } from '../../../../shared/design/ranges';
import type { Design } from '../../../../shared/design/types';
import type { Section } from './spec';

export const designSections: readonly Section<Design>[] = [
  {
    fields: [
      {
        type: 'text',
        label: 'Title',
        at: ['title'],
        optional: true,
        fallback: 'untitled',
        meaning: 'heads the page and the papers',
      },
      {
        type: 'choice',
        label: 'Unit',
        at: ['display'],
        choices: [
          { value: 'mm', name: 'Millimetres' },
          { value: 'in', name: 'Inches' },
        ],
        get: ({ entry }) => entry.display ?? 'mm',
        meaning: 'what lengths are shown and typed in; either may be typed with its unit',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Tube to tube',
        at: ['clearance', 'tubeToTube'],
        optional: true,
        fallback: 0,
        range: DISTANCE,
        step: 0.5,
        meaning: 'least gap between two runners, surface to surface',
        // The whole entry goes with its one number.
        set: ({ design }, value) =>
          setFields(
            design,
            value === undefined ? [[['clearance'], undefined]] : [[['clearance', 'tubeToTube'], value]],
          ),
      },
    ],
  },
];
