/**
 * Random runs of edits, seeded: after each, the design is one that a file may hold, or the edit was refused with a place
 * and a remedy; and the design that was given is as it was, to the byte.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addFastener,
  addFlange,
  addGroup,
  addMerge,
  addPort,
  addRunner,
  addSurrounding,
  addTube,
  duplicate,
  type Edited,
  remove,
  rename,
  reshapeOpening,
  setCylinders,
  setFields,
  setFiringOrder,
  type Thing,
} from '../../../../shared/design/edit';
import { parseDesign, validateDesign } from '../../../../shared/design/parse';
import type { Design } from '../../../../shared/design/types';
import { writeDesign } from '../../../../shared/design/write';

const read = (name: string): Design =>
  parseDesign(readFileSync(new URL(`../../../documents/v1/${name}.evenrun.json`, import.meta.url), 'utf8'));
const STARTS = ['every-field', 'minimal', 'c2-i4-4-2-1', 'c9-transverse-mesh-bay'].map(read);

const everything = (design: Design): Thing[] => [
  ...design.ports.map(({ id }) => ({ kind: 'port', id }) as const),
  ...(design.flanges ?? []).flatMap(({ id, fasteners = [] }) => [
    { kind: 'flange', id } as const,
    ...fasteners.map((_, index) => ({ kind: 'fastener', id, index }) as const),
  ]),
  ...design.merges.map(({ id }) => ({ kind: 'merge', id }) as const),
  ...design.runners.map(({ id }) => ({ kind: 'runner', id }) as const),
  ...(design.surroundings ?? []).map(({ id }) => ({ kind: 'surrounding', id }) as const),
  ...Object.keys(design.tubes).map((id) => ({ kind: 'tube', id }) as const),
  ...Object.keys(design.tooling).map((id) => ({ kind: 'tooling', id }) as const),
  ...Object.keys(design.groups).map((id) => ({ kind: 'group', id }) as const),
  { kind: 'engine', id: '' },
  { kind: 'design', id: '' },
];

/** Every place in a value, as the keys down to it. */
function places(value: unknown, at: (string | number)[] = []): (string | number)[][] {
  if (value === null || typeof value !== 'object') return [at];
  const keys = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value);
  return [at, ...keys.flatMap((key) => places((value as Record<string | number, unknown>)[key], [...at, key]))];
}

const name = fc.constantFrom(
  'p1',
  'P1',
  'm1',
  'r9',
  'primary',
  'new name',
  '',
  '__proto__',
  'constructor',
  'a/b',
  'x'.repeat(65),
);
const value = fc.constantFrom<unknown>(
  undefined,
  null,
  0,
  -1,
  0.5,
  3,
  42.4,
  1e6,
  Number.NaN,
  '',
  'm1',
  'ring',
  [0, 0, 0],
  [0, 1, 0],
  {},
  true,
);
const step = fc.record({
  what: fc.nat(13),
  which: fc.nat(),
  another: fc.nat(),
  name,
  value,
  count: fc.integer({ min: 0, max: 12 }),
});

function act(
  design: Design,
  {
    what,
    which,
    another,
    name,
    value,
    count,
  }: { what: number; which: number; another: number; name: string; value: unknown; count: number },
): Edited {
  const things = everything(design);
  const thing = things[which % things.length]!;
  const all = places(design).slice(1);
  switch (what) {
    case 0:
      return setFields(design, [[all[which % all.length]!, value]]);
    case 1:
      return rename(design, thing, name);
    case 2:
      return remove(design, [thing]);
    case 3:
      return remove(design, [thing, things[another % things.length]!]);
    case 4:
      return duplicate(design, thing).edited;
    case 5:
      return addPort(design).edited;
    case 6:
      return addFlange(design).edited;
    case 7:
      return addFastener(design, (design.flanges ?? [])[which % 3]?.id ?? 'none').edited;
    case 8:
      return addTube(design).edited;
    case 9:
      return addMerge(design).edited;
    case 10:
      return addRunner(design).edited;
    case 11:
      return which % 2
        ? addGroup(design).edited
        : addSurrounding(design, ([{ file: 'bay.stl' }, 'box', 'capsule', 'cylinder', 'plane'] as const)[another % 5]!)
            .edited;
    case 12:
      return which % 2
        ? setCylinders(design, count)
        : setFiringOrder(
            design,
            Array.from({ length: count }, (_, i) => ((i * another) % (count + 1)) + 1),
          );
    default: {
      const port = which % Math.max(design.ports.length, 1);
      const shape = (['round', 'oval', 'rounded-rectangle'] as const)[another % 3]!;
      return design.ports[port]
        ? setFields(design, [[['ports', port, 'opening'], reshapeOpening(design.ports[port].opening, shape)]])
        : addPort(design).edited;
    }
  }
}

test('any run of edits leaves a good design or a refusal with its remedy, input untouched, seed 3101', () => {
  const outcomes = Array.from({ length: 14 }, () => ({ done: 0, refused: 0 }));
  fc.assert(
    fc.property(fc.constantFrom(...STARTS), fc.array(step, { minLength: 1, maxLength: 25 }), (start, steps) => {
      let design = start;
      for (const each of steps) {
        const before = writeDesign(design);
        const edited = act(design, each);
        expect(writeDesign(design)).toBe(before);
        if (edited.ok) {
          validateDesign(edited.design);
          expect(parseDesign(writeDesign(edited.design))).toEqual(edited.design);
          design = edited.design;
          outcomes[each.what]!.done++;
        } else {
          const { path, found, allowed } = edited.refusal;
          for (const words of [path, found, allowed]) expect(words).toMatch(/^[^\r\n]+$/);
          outcomes[each.what]!.refused++;
        }
      }
    }),
    { seed: 3101, numRuns: 450 },
  );
  // Each kind of edit must succeed now and then, or it tests nothing; those that can be refused must be, too.
  for (const [what, { done, refused }] of outcomes.entries()) {
    expect(done, `edit ${what}`).toBeGreaterThan(20);
    if ([0, 1, 2, 3, 12].includes(what)) expect(refused, `edit ${what}`).toBeGreaterThan(20);
  }
});
