/** Inspectors' data: what several things share, edits that set it on all, ranges, labels; every spec on every design. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { segmentsOf, type Thing } from '../../../shared/design/edit';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { headerOf } from '../../../src/app/derived';
import { pickedOf } from '../../../src/app/inspect/picked';
import {
  type AnySpec,
  applies,
  contextsOf,
  fieldOf,
  labelOf,
  rangeOver,
  setAxis,
  setOn,
  sharedOf,
} from '../../../src/app/inspect/shared';
import { SECTIONS } from '../../../src/app/inspect/specs';
import { inchFraction } from '../../../src/app/inspect/specs/offers';
import { find } from '../../../src/app/inspect/specs/spec';

const read = (name: string): Design =>
  parseDesign(readFileSync(new URL(`../../documents/v1/${name}.evenrun.json`, import.meta.url), 'utf8'));
const design = read('every-field');
const things = (d: Design): Thing[] => [
  { kind: 'design', id: '' },
  { kind: 'engine', id: '' },
  ...d.ports.map(({ id }): Thing => ({ kind: 'port', id })),
  ...(d.flanges ?? []).map(({ id }): Thing => ({ kind: 'flange', id })),
  ...(d.flanges ?? []).flatMap(({ id, fasteners = [] }) =>
    fasteners.map((_, index): Thing => ({ kind: 'fastener', id, index })),
  ),
  ...Object.keys(d.tubes).map((id): Thing => ({ kind: 'tube', id })),
  ...Object.keys(d.tooling).map((id): Thing => ({ kind: 'tooling', id })),
  ...d.merges.map(({ id }): Thing => ({ kind: 'merge', id })),
  ...d.runners.map(({ id }): Thing => ({ kind: 'runner', id })),
  ...Object.keys(d.groups).map((id): Thing => ({ kind: 'group', id })),
  ...(d.surroundings ?? []).map(({ id }): Thing => ({ kind: 'surrounding', id })),
];
const spec = (kind: Thing['kind'], label: string): AnySpec => {
  const found = SECTIONS[kind].flatMap((section) => section.fields).find((field) => field.label === label);
  if (!found) throw new Error(`${kind} has no field ${label}`);
  return found;
};
const on = (kind: 'port' | 'tube' | 'runner' | 'group' | 'merge', ...ids: string[]): Thing[] =>
  ids.map((id) => ({ kind, id }));

/** Sections with the things that they are about: a tube shows its tooling too. */
const fieldsOf = (d: Design) =>
  things(d).flatMap((thing) =>
    SECTIONS[thing.kind].flatMap((section) => {
      const of = section.as ? ({ kind: section.as, id: thing.id } as Thing) : thing;
      const contexts = contextsOf(d, headerOf(d), [of]);
      return section.fields
        .filter((field) => contexts.length > 0 && applies(field, contexts))
        .map((field) => ({ of, field, context: contexts[0]! }));
    }),
  );

describe('every field of every kind', () => {
  it.each(['every-field', 'c2-i4-4-2-1', 'c9-transverse-mesh-bay'])(
    'in %s: its value set again is no change, and a number just past its range is refused by the document too',
    (name) => {
      const d = read(name);
      let ranges = 0;
      for (const { of, field, context } of fieldsOf(d)) {
        const value = field.type === 'choice' && field.get ? field.get(context) : fieldOf(context, field.at);
        if (value !== undefined && value !== null && field.type !== 'direction') {
          const again = setOn(d, headerOf(d), [of], field, value);
          expect(again.ok, `${of.kind} ${of.id}: ${field.label}`).toBe(true);
          if (again.ok) expect(again.design, `${of.kind} ${of.id}: ${field.label}`).toEqual(d);
        }
        if (field.type === 'number' && value !== undefined) {
          const range = find(field.range, context as never);
          const past = [range.above ? range.least : range.least - 1, range.below ? range.most : range.most + 1];
          for (const wrong of past)
            expect(setOn(d, headerOf(d), [of], field, wrong).ok, `${of.id} ${field.label} ${wrong}`).toBe(false);
          ranges++;
        }
      }
      expect(ranges).toBeGreaterThan(20);
    },
  );

  it('reaches every field that the document knows', () => {
    const reached = new Set(fieldsOf(design).map(({ of, field }) => [of.kind, ...field.at].join('/')));
    for (const must of [
      'port/lengthInHead',
      'port/opening/corner',
      'port/transition/length',
      'port/transition/wall',
      'merge/placement/within/0',
      'merge/placement/tilt',
      'tooling/otherRadii',
      'surrounding/pose/x',
      'engine/rpm',
      'engine/intakeValve/lift',
      'fastener/hole',
      'group/length',
      'runner/to/inlet',
    ])
      expect(reached).toContain(must);
  });
});

describe('several things', () => {
  it('says what they share, where they differ, and where none has it', () => {
    expect(sharedOf([2, 2])).toEqual({ kind: 'one', value: 2 });
    expect(sharedOf([2, 3])).toEqual({ kind: 'differ' });
    expect(sharedOf([undefined, null])).toEqual({ kind: 'differ' });
    expect(sharedOf([undefined, undefined])).toEqual({ kind: 'none' });
  });

  it('sets one field on all of them, in one edit, or on none', () => {
    const both = on('tube', 'primary', 'secondary');
    const wall = spec('tube', 'Wall');
    const edited = setOn(design, headerOf(design), both, wall, 2);
    expect(edited.ok && Object.values(edited.design.tubes).map((t) => t.wall)).toEqual([2, 2]);
    // 42.4 / 2 = 21.2 is the thinner tube's limit, 25.4 the other's.
    const range = rangeOver(
      (c) => find((wall as unknown as { range: never }).range, c),
      contextsOf(design, headerOf(design), both),
    );
    expect(range).toMatchObject({ most: 21.2, below: true });
    expect(setOn(design, headerOf(design), both, wall, 22).ok).toBe(false);
  });

  it('makes a transition by its length, and takes it away whole', () => {
    const length = spec('port', 'Transition length');
    const bare = { ...design, ports: design.ports.map(({ transition: _, ...port }) => port) };
    const ids = bare.ports.map(({ id }) => id);
    const wall = spec('port', 'Transition wall');
    expect(applies(wall, contextsOf(bare, headerOf(bare), on('port', ...ids)))).toBe(false);
    const made = setOn(bare, headerOf(bare), on('port', ...ids), length, 25);
    expect(made.ok && made.design.ports.map((p) => p.transition)).toEqual(ids.map(() => ({ length: 25 })));
    if (!made.ok) return;
    expect(applies(wall, contextsOf(made.design, headerOf(made.design), on('port', ...ids)))).toBe(true);
    const gone = setOn(made.design, headerOf(made.design), on('port', ...ids), length, undefined);
    expect(gone).toEqual({ ok: true, design: bare });
  });

  it('moves one axis and leaves the others to each', () => {
    const edited = setAxis(design, headerOf(design), on('port', 'p1', '3'), spec('port', 'Position') as never, 2, 5);
    expect(edited.ok && edited.design.ports.map((p) => p.position)).toEqual([
      [0, 0, 5],
      [95, 0, 0],
      [190, 0, 5],
    ]);
  });

  it('names the step', () => {
    const field = spec('tube', 'Outside diameter');
    const one = contextsOf({ ...design, display: 'mm' }, headerOf(design), on('tube', 'primary'));
    expect(labelOf(field, one, 44.5)).toBe('Outside diameter of tube primary: 42.4 mm → 44.5 mm');
    const two = contextsOf({ ...design, display: 'in' }, headerOf(design), on('tube', 'primary', 'secondary'));
    expect(labelOf(field, two, 44.45)).toBe('Outside diameter of 2 tubes: 1.75 in');
  });

  it('empties a group length to any, but equal', () => {
    const edited = setOn(design, headerOf(design), on('group', 'primaries'), spec('group', 'Length'), undefined);
    expect(edited.ok && edited.design.groups.primaries).toEqual({ length: null, tolerance: 3 });
  });
});

describe('what is picked', () => {
  it('takes a bend for its runner, tooling for its tube, and leaves out what is gone', () => {
    const picked = pickedOf(
      [
        { kind: 'runner', id: 'r1', bend: 0 },
        { kind: 'runner', id: 'r1', straight: 1 },
        { kind: 'runner', id: 'gone' },
      ],
      design,
    );
    expect(picked).toEqual({ kind: 'one kind', of: 'runner', things: [{ kind: 'runner', id: 'r1' }] });
    expect(pickedOf([{ kind: 'tooling', id: 'primary' }], design)).toMatchObject({ of: 'tube' });
    expect(
      pickedOf(
        [
          { kind: 'port', id: 'p1' },
          { kind: 'runner', id: 'r1' },
        ],
        design,
      ),
    ).toMatchObject({ kind: 'mixed' });
    expect(pickedOf([{ kind: 'merge', id: 'none' }], design)).toEqual({ kind: 'nothing' });
    expect(segmentsOf(design, { kind: 'fastener', id: 'f1', index: 9 })).toBeNull();
  });
});

it('writes inches as stock is named', () => {
  expect([1.5, 1.625, 1.875, 2, 0.75].map(inchFraction)).toEqual(['1 1/2', '1 5/8', '1 7/8', '2', '3/4']);
});
