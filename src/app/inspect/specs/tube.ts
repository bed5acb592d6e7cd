/** Fields of a tube and of the tooling that bends it. */
import { BEND_ANGLE, BENDS, DISTANCE, isWithin, LENGTH, narrowed, STRETCH } from '../../../../shared/design/ranges';
import type { Display, Tooling, Tube } from '../../../../shared/design/types';
import { readQuantity, showQuantity } from '../fields/quantity';
import { MATERIAL_CHOICES, OUTSIDE_DIAMETERS, radiiFor, WALLS } from './offers';
import type { Context, Reading, Section } from './spec';

const outsideDiameter = ({ design, thing }: Context<Tooling>): number | undefined =>
  Object.hasOwn(design.tubes, thing.id) ? design.tubes[thing.id]!.outsideDiameter : undefined;

/** Lengths on one line, with semicolons between: a comma may be a decimal mark, a space may belong to a fraction. */
export function readLengths(text: string, display: Display): Reading<unknown> {
  const values: number[] = [];
  for (const part of text.split(';').filter((piece) => piece.trim() !== '')) {
    const reading = readQuantity(part, 'length', display, LENGTH);
    if (!reading.ok) return reading;
    values.push(reading.value);
  }
  return { ok: true, value: values };
}

/** `45 43.6; 90 87.5`: the angle set, then the one measured, a semicolon between bends. */
export function readTestBends(text: string): Reading<unknown> {
  const bends: (readonly [number, number])[] = [];
  for (const part of text.split(';').filter((piece) => piece.trim() !== '')) {
    const angles = part
      .trim()
      .split(/[\s→/]+|->/)
      .filter((word) => word !== '')
      .map((word) => readQuantity(word.replace('°', ''), 'angle', 'mm', BEND_ANGLE));
    const refused = angles.find((reading) => !reading.ok);
    if (refused && !refused.ok) return refused;
    const [set, measured] = angles.map((reading) => (reading.ok ? reading.value : 0));
    if (angles.length !== 2 || set === undefined || measured === undefined)
      return {
        ok: false,
        problem: `“${part.trim()}” is not two angles: the one set, then the one measured, as 90 87.5.`,
      };
    if (measured > set)
      return { ok: false, problem: `Measured ${measured}° after ${set}° was set: tube springs back, never further.` };
    bends.push([set, measured]);
  }
  return { ok: true, value: bends.length > 0 ? bends : undefined };
}

const least = (design: Context<Tooling>) => {
  const od = outsideDiameter(design);
  return od === undefined || !isWithin(od / 2, LENGTH) ? LENGTH : narrowed(LENGTH, { least: od / 2 });
};

const isWelded = ({ entry }: Context<Tooling>) => (entry.making ?? 'welded') === 'welded';

const hasBender = (c: Context<Tooling>) => !isWelded(c) || c.entry.bender !== undefined;

export const tubeSections: readonly Section<never>[] = [
  {
    fields: [
      {
        type: 'number',
        quantity: 'length',
        label: 'Outside diameter',
        at: ['outsideDiameter'],
        range: LENGTH,
        meaning: 'of the tube',
        offers: { name: 'Stock sizes', of: OUTSIDE_DIAMETERS },
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Wall',
        at: ['wall'],
        range: ({ entry }) => narrowed(LENGTH, { most: (entry as Tube).outsideDiameter / 2, below: true }),
        meaning: 'thickness of the metal',
        offers: { name: 'Stock walls', of: WALLS },
        step: 0.1,
      },
      {
        type: 'choice',
        label: 'Material',
        at: ['material'],
        optional: true,
        fallback: 'default: Mild steel',
        choices: MATERIAL_CHOICES,
      },
    ],
  },
  {
    title: 'Bending',
    as: 'tooling',
    fields: [
      {
        type: 'choice',
        label: 'Made by',
        at: ['making'],
        optional: true,
        fallback: 'not given',
        choices: [
          { value: 'bent', name: 'Bent in one piece' },
          { value: 'welded', name: 'Welded from stock bends' },
        ],
        meaning: 'bent: a clamp grips between bends; welded: cut from stock bends, which may touch',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Bend radius',
        at: ['centerlineRadius'],
        range: least,
        meaning: 'to the centerline: the die, or the stock bend',
        offers: {
          name: 'Usual radii',
          of: (c) => {
            const od = outsideDiameter(c);
            return od === undefined ? [] : radiiFor(od);
          },
        },
      },
      {
        type: 'line',
        label: 'Other radii',
        at: ['otherRadii'],
        optional: true,
        fallback: 'none',
        meaning: 'further dies or stock bends, with semicolons between',
        write: (list, display) => (list as number[]).map((r) => showQuantity(r, 'length', display)).join('; '),
        read: readLengths,
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'First straight',
        at: ['firstStraight'],
        range: DISTANCE,
        meaning: 'least straight leaving a port or a collector',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Between bends',
        at: ['betweenStraight'],
        range: DISTANCE,
        meaning:
          "least straight between two bends: the clamp's grip, 1 to 3 × the outside diameter where bent; 0 is possible where welded",
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Last straight',
        at: ['lastStraight'],
        range: DISTANCE,
        meaning: 'least straight entering a collector',
      },
      {
        type: 'number',
        quantity: 'angle',
        label: 'Widest bend',
        at: ['maxBendAngle'],
        range: BEND_ANGLE,
        meaning: 'most that one bend may turn',
      },
      {
        type: 'number',
        quantity: 'count',
        label: 'Most bends',
        at: ['maxBends'],
        range: BENDS,
        meaning: 'in one runner',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Trim at start',
        at: ['trimStart'],
        optional: true,
        fallback: 0,
        range: DISTANCE,
        when: (c) => !isWelded(c) || c.entry.trimStart !== undefined,
        meaning: 'extra tube to cut, trimmed off once bent',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Trim at end',
        at: ['trimEnd'],
        optional: true,
        fallback: 0,
        range: DISTANCE,
        when: (c) => !isWelded(c) || c.entry.trimEnd !== undefined,
        meaning: 'extra tube to cut, trimmed off once bent',
      },
    ],
  } satisfies Section<Tooling> as Section<never>,
  {
    title: 'Bender with this die',
    as: 'tooling',
    fields: [
      {
        type: 'number',
        quantity: 'length',
        label: 'Clamp',
        at: ['bender', 'clamp'],
        optional: true,
        fallback: ({ entry }) => entry.betweenStraight,
        range: DISTANCE,
        when: hasBender,
        meaning: 'straight tube that it grips ahead of a bend; default: as between bends',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Tail',
        at: ['bender', 'tail'],
        optional: true,
        fallback: ({ entry }) => entry.lastStraight,
        range: DISTANCE,
        when: hasBender,
        meaning: 'straight tube that must lie behind the last bend while it is made; default: the last straight',
      },
      {
        type: 'line',
        label: 'Test bends',
        at: ['bender', 'testBends'],
        optional: true,
        fallback: 'none: nothing springs back',
        when: hasBender,
        meaning: 'the angle set and the one measured, as 45 43.6; 90 87.5',
        write: (bends) => (bends as [number, number][]).map((pair) => pair.join(' ')).join('; '),
        read: readTestBends,
      },
      {
        type: 'number',
        quantity: 'plain',
        label: 'Stretch',
        at: ['bender', 'stretch'],
        optional: true,
        fallback: 0,
        range: STRETCH,
        unit: '%',
        step: 0.1,
        when: hasBender,
        meaning: 'how much longer a bend comes out along its middle than radius × angle',
      },
    ],
  } satisfies Section<Tooling> as Section<never>,
];
