/** Fields of what is around the header: a box, a bar with round ends, a cylinder, a plane, or a mesh. */

import { type Change, type Edited, FIRST_CLEARANCE, segmentsOf, setFields } from '../../../../shared/design/edit';
import { DISTANCE, LENGTH } from '../../../../shared/design/ranges';
import type { Surrounding } from '../../../../shared/design/types';
import { SURROUNDING_KINDS, surroundingKind } from '../../../../shared/stock/surroundingKinds';
import { formatLength } from '../../../../shared/units';
import type { Vec3 } from '../../../../shared/vec3';
import type { Context, Offer, Section, VectorSpec } from './spec';

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

/** Without a crop a corner has nothing to stand beside: both are set where the mesh was imported. */
const cropCorner = (corner: 0 | 1, label: string, meaning: string): VectorSpec<Surrounding> => ({
  type: 'place',
  label,
  at: ['crop', corner],
  when: ({ entry }) => entry.shape === 'mesh' && entry.crop !== undefined,
  meaning,
});

/** A bar or a cylinder: two ends and a radius. */
const round = (shape: 'capsule' | 'cylinder', title: string, meaning: string): Section<Surrounding> => ({
  title,
  fields: [
    { type: 'place', label: 'From', at: ['a'], when: is(shape), meaning: 'one end of its axis' },
    { type: 'place', label: 'To', at: ['b'], when: is(shape), meaning: 'the other end of its axis' },
    { type: 'number', quantity: 'length', label: 'Radius', at: ['radius'], when: is(shape), range: LENGTH, meaning },
  ],
});

/** The clearance stands as it was proposed, or as it was added: nobody typed it. */
const isUntyped = ({ clearance, kind }: Surrounding): boolean =>
  clearance === undefined || clearance === (kind === undefined ? FIRST_CLEARANCE : surroundingKind(kind)?.clearance);

/** A kind proposes a clearance where none was typed, both in one step. */
function setKind({ design, thing, entry }: Context<Surrounding>, kind: string | undefined): Edited {
  const own = segmentsOf(design, thing)!;
  const proposed = surroundingKind(kind ?? '')?.clearance;
  const also: Change[] = proposed !== undefined && isUntyped(entry) ? [[[...own, 'clearance'], proposed]] : [];
  return setFields(design, [[[...own, 'kind'], kind], ...also]);
}

const usual = ({ entry }: Context<Surrounding>): readonly Offer[] => {
  const known = surroundingKind(entry.kind ?? '');
  return known ? [{ value: known.clearance, name: known.label }] : [];
};

export const surroundingSections: readonly Section<Surrounding>[] = [
  {
    fields: [
      {
        type: 'choice',
        label: 'What it is',
        at: ['kind'],
        optional: true,
        fallback: 'not given',
        choices: ({ display }) =>
          SURROUNDING_KINDS.map(({ kind, label, clearance }) => ({
            value: kind,
            name: `${label} (${formatLength(clearance, display)})`,
          })),
        get: ({ entry }) => (entry.kind === undefined ? null : (surroundingKind(entry.kind)?.kind ?? entry.kind)),
        set: setKind,
        meaning: 'proposes the clearance in brackets: common practice, from no standard',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Clearance',
        at: ['clearance'],
        optional: true,
        fallback: 0,
        range: DISTANCE,
        offers: { name: 'Common practice', of: usual },
        meaning: 'least gap from any tube, surface to surface',
      },
      {
        type: 'choice',
        label: 'Fixed to',
        at: ['fixedTo'],
        optional: true,
        fallback: 'default: stands still',
        choices: [
          { value: 'vehicle', name: 'stands still' },
          { value: 'engine', name: 'moves with the engine' },
        ],
        meaning: 'matters where the engine rocks in its mounts',
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
  round('capsule', 'Bar', 'round the axis and its ends'),
  round('cylinder', 'Cylinder', 'round the axis; its ends are flat'),
  {
    title: 'Plane',
    fields: [
      { type: 'place', label: 'Through', at: ['position'], when: is('plane'), meaning: 'any place on it' },
      {
        type: 'direction',
        label: 'Faces',
        at: ['normal'],
        when: is('plane'),
        meaning: 'the open side; all behind it is solid',
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
        meaning: 'an STL, OBJ, PLY or GLB file beside the design, without folders',
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
      cropCorner(
        0,
        'Crop from',
        'only triangles that reach into this box count: its least corner along the file’s own axes',
      ),
      cropCorner(1, 'Crop to', 'its greatest corner along the file’s own axes'),
      {
        type: 'number',
        quantity: 'length',
        label: 'Thin by',
        at: ['thin'],
        optional: true,
        when: is('mesh'),
        range: LENGTH,
        fallback: 'not thinned',
        meaning: 'fewer triangles; nothing moves farther than this',
      },
    ],
  },
];
