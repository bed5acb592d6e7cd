/** The shelf as edits: added, doubled, removed; what is used and not on it; every field of the workshop, and what is refused. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Edited } from '../../../shared/design/edit';
import { parseDesign } from '../../../shared/design/parse';
import type { Design, Workshop } from '../../../shared/design/types';
import { headerOf } from '../../../src/app/derived';
import { refusalWords } from '../../../src/app/inspect/applyEdit';
import { type AnySpec, contextsOf, fieldOf, labelOf, pathOfField, setOn } from '../../../src/app/inspect/shared';
import { readTestBends } from '../../../src/app/inspect/specs/tube';
import {
  addStock,
  duplicateStock,
  listStock,
  missingStock,
  removeStock,
  shelfOf,
  takeWorkshop,
} from '../../../src/app/making/shelf';
import { MEASURE_FIELDS, MONEY_FIELDS, SAW_FIELDS, stockFields, WELD_FIELDS } from '../../../src/app/making/specs';

const read = (path: string): Design => parseDesign(readFileSync(new URL(path, import.meta.url), 'utf8'));
const { workshop: _, ...bare } = read('../../../public/examples/four-4-1.evenrun.json');
const four: Design = bare;
const full: Design = { ...read('../../documents/v1/every-field.evenrun.json'), display: 'mm' };
const done = (edited: Edited): Design => {
  if (!edited.ok) throw new Error(refusalWords(edited.refusal));
  return edited.design;
};
const ids = (design: Design, list: 'bars' | 'bends') => shelfOf(design, list).map(({ id }) => id);

describe('what is used and not on the shelf', () => {
  it('is a bar of each tube and a bend of each radius, until it is listed', () => {
    const missing = missingStock(four);
    expect(missing.map(({ list }) => list).sort()).toEqual(['bars', 'bends']);
    const listed = missing.reduce((so, m) => done(listStock(so, m)), four);
    expect(missingStock(listed)).toEqual([]);
    expect(ids(listed, 'bars')).toHaveLength(1);
    expect(ids(listed, 'bends')).toHaveLength(1);
  });

  it('is told again once a radius, a wall or a material is another', () => {
    const listed = missingStock(four).reduce((so, m) => done(listStock(so, m)), four);
    const [tube] = Object.keys(listed.tubes);
    const changed = (change: object): Design => ({
      ...listed,
      tubes: { ...listed.tubes, [tube!]: { ...listed.tubes[tube!]!, ...change } },
    });
    expect(missingStock(changed({ wall: 2 }))).toHaveLength(2);
    expect(missingStock(changed({ material: 'titanium-2' }))).toHaveLength(2);
    const radius = 1 + listed.tooling[tube!]!.centerlineRadius;
    const wider = {
      ...listed,
      runners: listed.runners.map((r) => ({ ...r, radii: r.points!.slice(2).map(() => radius) })),
    };
    expect(missingStock(wider)).toMatchObject([{ assumed: false, stock: { radius } }]);
  });

  it('comes onto the list under a name that the document allows', () => {
    const [bar] = missingStock(four);
    const named = { list: bar!.list, stock: { ...bar!.stock, id: 'bar-42.4x1.5' } };
    const twice = done(listStock(done(listStock(four, named)), named));
    expect(ids(twice, 'bars')).toEqual(['bar-42-4x1-5', 'bar-42-4x1-5 1']);
  });

  it('asks for no bends of a tube that is bent', () => {
    const [tube] = Object.keys(four.tooling);
    const bent: Design = { ...four, tooling: { [tube!]: { ...four.tooling[tube!]!, making: 'bent' } } };
    expect(missingStock(bent).map(({ list }) => list)).toEqual(['bars']);
  });
});

describe('the shelf', () => {
  it('begins with stock of the tube that is used, and goes on like the last', () => {
    const one = done(addStock(four, 'bends'));
    const [tube] = Object.values(one.tubes);
    expect(shelfOf(one, 'bends')[0]).toMatchObject({ outsideDiameter: tube!.outsideDiameter, wall: tube!.wall });
    const two = done(addStock(one, 'bends'));
    expect(shelfOf(two, 'bends')[1]).toEqual({ ...shelfOf(two, 'bends')[0], id: ids(two, 'bends')[1] });
    expect(new Set(ids(two, 'bends')).size).toBe(2);
  });

  it('doubles one beside it under a name that nothing else has', () => {
    const twice = done(duplicateStock(full, 'bars', 0));
    expect(twice.workshop!.bars).toHaveLength(full.workshop!.bars!.length + 1);
    const { id, ...copy } = twice.workshop!.bars![1]!;
    const { id: own, ...first } = twice.workshop!.bars![0]!;
    expect(copy).toEqual(first);
    expect(id).not.toBe(own);
  });

  it('loses the list with its last entry', () => {
    expect(done(removeStock(full, 'bends', 0)).workshop).not.toHaveProperty('bends');
    expect(ids(done(removeStock(full, 'bars', 0)), 'bars')).toEqual(ids(full, 'bars').slice(1));
  });

  it('comes whole from another design', () => {
    expect(done(takeWorkshop(four, full.workshop!)).workshop).toEqual(full.workshop);
  });
});

const contexts = (design: Design) => contextsOf(design, headerOf(design), [{ kind: 'design', id: '' }]);
const put = (design: Design, spec: AnySpec, value: unknown): Edited =>
  setOn(design, headerOf(design), [{ kind: 'design', id: '' }], spec, value);
const all = [...SAW_FIELDS, ...WELD_FIELDS, ...MEASURE_FIELDS, ...MONEY_FIELDS];
const named = (specs: readonly AnySpec[], label: string): AnySpec => specs.find((spec) => spec.label === label)!;

describe('fields of the workshop', () => {
  it('reach every number that the document holds of it', () => {
    const reached = new Set(all.map(({ at }) => String(at[1])));
    const { bars, bends, prices, ...rest } = full.workshop!;
    const said = { longestLeg: 0, ...rest };
    expect([...reached].sort()).toEqual(Object.keys(said).sort());
    const [context] = contexts(full);
    for (const spec of all)
      if (spec.label !== 'Longest leg') expect(fieldOf(context!, spec.at), spec.label).toBeDefined();
  });

  it('set again are no change, taken away go back to the default', () => {
    const [context] = contexts(full);
    for (const spec of [...all, ...stockFields(full, 'bars', 1), ...stockFields(full, 'bends', 0)]) {
      const value = spec.type === 'choice' && spec.get ? spec.get(context!) : fieldOf(context!, spec.at);
      expect(done(put(full, spec, value)), spec.label).toEqual(full);
      if (!spec.optional) continue;
      expect(fieldOf(contexts(done(put(full, spec, undefined)))[0]!, spec.at), spec.label).toBeUndefined();
    }
  });

  it('make a workshop where there was none', () => {
    expect(done(put(four, named(SAW_FIELDS, 'Saw kerf'), 2)).workshop).toEqual({ kerf: 2 });
  });

  it('refuse a kerf beyond a bar and a leg below nothing, saying what would do', () => {
    const short = done(listStock(four, missingStock(four)[0]!));
    const kerf = put(short, named(SAW_FIELDS, 'Saw kerf'), 7000);
    expect(!kerf.ok && refusalWords(kerf.refusal)).toMatch(/more than the kerf.*smaller workshop\/kerf/);
    const leg = put(full, named(stockFields(full, 'bends', 0), 'First leg'), -1);
    expect(!leg.ok && refusalWords(leg.refusal)).toMatch(/bends.*found -1/);
    const twice = put(full, named(stockFields(full, 'bends', 0), 'Name'), full.workshop!.bars![0]!.id);
    expect(!twice.ok && refusalWords(twice.refusal)).toMatch(/no other bar or bend has/);
  });

  it('name the bar in the step, and tell their own refusal from another’s', () => {
    const spec = named(stockFields(full, 'bars', 0), 'Length');
    expect(labelOf(spec, contexts(full), 5800)).toBe(`Length of ${full.workshop!.bars![0]!.id}: 6000 mm → 5800 mm`);
    expect(pathOfField([{ kind: 'design', id: '' }], spec)).toBe('workshop/bars/0/length');
  });

  it('say whether more can be bought, without writing what is the default', () => {
    const spec = named(stockFields(full, 'bars', 1), 'More of it');
    const can = done(put(full, spec, 'true')).workshop as Workshop;
    expect(can.bars![1]).not.toHaveProperty('buy');
    expect((done(put({ ...full, workshop: can }, spec, 'false')).workshop as Workshop).bars![1]!.buy).toBe(false);
  });
});

describe('test bends', () => {
  it.each([
    [
      '45 43.6; 90 87.5',
      [
        [45, 43.6],
        [90, 87.5],
      ],
    ],
    ['45° → 43,6°', [[45, 43.6]]],
    ['', undefined],
  ])('%s', (text, value) => {
    expect(readTestBends(text)).toEqual({ ok: true, value });
  });
  it.each([
    ['45', /two angles/],
    ['45 43 42', /two angles/],
    ['45 46', /springs back/],
    ['45 x', /./],
    ['400 30', /out of range/],
  ])('%s is refused', (text, words) => {
    const reading = readTestBends(text);
    expect(!reading.ok && reading.problem).toMatch(words);
  });
});
