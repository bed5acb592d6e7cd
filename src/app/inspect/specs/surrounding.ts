/** Fields of what is around the header: a box, a bar with round ends, or a mesh. */
import { DISTANCE, LENGTH } from '../../../../shared/design/ranges';
import type { Surrounding } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import type { Context, Section, VectorSpec } from './spec';

const is =
  (shape: Surrounding['shape']) =>
  ({ entry }: Context<Surrounding>) =>
    entry.shape === shape;

/** One part of how a mesh lies; without it, the mesh lies as its file has it. */
const ofPose = (
  type: VectorSpec<Surrounding>['type'],
  part: string,
  label: string,
  fallback: Vec3,
  meaning: string,
): VectorSpec<Surrounding> => ({
  type,
  label,
  at: ['pose', part],
  optional: true,
  when: is('mesh'),
  fallback,
  meaning,
});

export const surroundingSections: readonly Section<Surrounding>[] = [
  {
    fields: [
      {
        type: 'number',
        quantity: 'length',
        label: 'Clearance',
        at: ['clearance'],
        optional: true,
        fallback: 0,
        range: DISTANCE,
        meaning: 'least gap from any tube, surface to surface',
      },
      {
        type: 'text',
        label: 'What it is',
        at: ['kind'],
        optional: true,
        fallback: 'not given',
        offers: ['steering', 'engine', 'body', 'brake line', 'fuel line', 'wiring', 'suspension'],
        meaning: 'a word for the lists',
      },
    ],
  },
  {
    title: 'Box',
    fields: [
      { type: 'place', label: 'From', at: ['min'], when: is('box'), meaning: 'corner with the smaller x, y and z' },
      { type: 'place', label: 'To', at: ['max'], when: is('box'), meaning: 'corner with the greater x, y and z' },
    ],
  },
  {
    title: 'Bar',
    fields: [
      { type: 'place', label: 'From', at: ['a'], when: is('capsule'), meaning: 'one end of its axis' },
      { type: 'place', label: 'To', at: ['b'], when: is('capsule'), meaning: 'the other end of its axis' },
      {
        type: 'number',
        quantity: 'length',
        label: 'Radius',
        at: ['radius'],
        when: is('capsule'),
        range: LENGTH,
        meaning: 'round the axis and its ends',
      },
    ],
  },
  {
    title: 'Mesh',
    fields: [
      {
        type: 'text',
        label: 'File',
        at: ['file'],
        when: is('mesh'),
        meaning: 'an STL file beside the design, without folders',
      },
      {
        type: 'choice',
        label: 'Unit',
        at: ['unit'],
        optional: true,
        when: is('mesh'),
        fallback: 'default: mm',
        choices: ['mm', 'cm', 'm', 'in'].map((unit) => ({ value: unit, name: unit })),
        meaning: 'what one unit of the file is',
      },
      ofPose('place', 'position', 'Position', [0, 0, 0], "where the file's own origin lies"),
      ofPose('direction', 'x', 'X axis', [1, 0, 0], "where the file's x points"),
      ofPose('direction', 'y', 'Y axis', [0, 1, 0], "where the file's y points, made square to x"),
    ],
  },
];
