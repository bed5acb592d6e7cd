/** From what is typed to the engine form to a header: the usual engines can be made at once, what is typed is what is drawn. */
import { describe, expect, test } from 'vitest';
import { draftHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import { writeDesign } from '../../../shared/design/write';
import { formProblems } from '../../../shared/engine/formProblems';
import { fileNameOf } from '../../../src/app/newHeader/fileName';
import { filled } from '../../../src/app/newHeader/formOf';
import { orderProblem, ordersFor, readOrder } from '../../../src/app/newHeader/orders';
import { problemWords } from '../../../src/app/newHeader/problemWords';
import { nearestStock } from '../../../src/app/newHeader/stock';
import { collectorWish, FIRST_WISH, type Wish, withCollector, withEngine } from '../../../src/app/newHeader/wish';

const formOf = (wish: Wish) => filled(wish).form;
const lengthOf = (wish: Wish, primary: number): Wish => ({ ...wish, primary: { ...wish.primary, length: primary } });

describe('nothing typed', () => {
  test.each([1, 2, 3, 4, 5, 6, 8, 10, 12])('%i cylinders: a form without problems', (cylinders) => {
    const wish = withEngine(FIRST_WISH, { cylinders });
    expect(formProblems(formOf(wish))).toEqual([]);
    expect(filled(wish).sizes?.sizes.length).toBeGreaterThan(1);
  });
  test.each([2, 4, 6, 8])('%i cylinders in two banks too', (cylinders) => {
    expect(formProblems(formOf(withEngine(FIRST_WISH, { cylinders, banks: 2 })))).toEqual([]);
  });
  test('the first wish becomes a header in which every rule holds, and a document that reads back', () => {
    const { design, report } = draftHeader(formOf(FIRST_WISH));
    expect(report.problems).toEqual([]);
    expect(parseDesign(writeDesign(design))).toEqual(design);
  });
});

describe('what is typed is what is drawn', () => {
  test('a textbook length that is taken is had', () => {
    const start = filled(FIRST_WISH).sizes!.sizes.find((s) => s.quantity === 'primaryLength')!.start;
    const { report } = draftHeader(formOf(lengthOf(FIRST_WISH, Math.round(start))));
    expect(report.ok).toBe(true);
    expect(report.groups[0]!.mean).toBeCloseTo(Math.round(start), 2);
  });
  test('bore, order, pitch, opening, tube and place', () => {
    const wish: Wish = {
      ...withCollector(FIRST_WISH, 0, { position: [50, 260, -400], axis: [0, 0, -1] }),
      bore: 90,
      firingOrder: [1, 2, 4, 3],
      pitch: 105,
      opening: { shape: 'oval', width: 44, height: 34 },
      primary: { ...FIRST_WISH.primary, outsideDiameter: 44.5, wall: 1.2 },
    };
    const form = formOf(wish);
    expect(formProblems(form)).toEqual([]);
    expect(form).toMatchObject({ bore: 90, firingOrder: [1, 2, 4, 3], port: { opening: wish.opening } });
    expect(Math.abs(form.banks[0]!.pitch)).toBe(105);
    expect(form.primary.tube).toMatchObject({ outsideDiameter: 44.5, wall: 1.2 });
    expect(form.collectors[0]).toMatchObject({ position: [50, 260, -400], axis: [0, 0, -1] });
  });
  test('the other side, the other end, above the crankshaft', () => {
    const form = formOf({ ...FIRST_WISH, side: -1, firstAt: 'high', height: 210, reach: 150 });
    const [bank] = form.banks;
    expect(bank!.firstPort).toEqual([138, -150, 210]);
    expect(bank!.pitch).toBe(-92);
    expect(bank!.direction[1]).toBe(-1);
    expect(form.collectors[0]!.position[1]).toBeLessThan(-150);
    expect(formProblems(form)).toEqual([]);
  });
  test('pairs: secondaries, joined a full turn apart', () => {
    const wish: Wish = { ...FIRST_WISH, arrangement: 'pairs-then-one' };
    const form = formOf(wish);
    expect(form.secondary).not.toBeNull();
    expect(form.secondary!.tube.outsideDiameter).toBeGreaterThan(form.primary.tube.outsideDiameter);
    const { pairs, report } = draftHeader(form);
    expect(report.ok).toBe(true);
    expect(pairs.map((p) => [p.cylinders, p.apart])).toEqual([
      [[1, 4], 360],
      [[2, 3], 360],
    ]);
  });
});

describe('collectors hang where the lengths asked for can be had', () => {
  test.each([82, 90])('a four of %i mm bore, pairs first, both textbook lengths taken', (bore) => {
    const wish: Wish = {
      ...lengthOf({ ...FIRST_WISH, bore, arrangement: 'pairs-then-one' }, 420),
      secondary: { ...FIRST_WISH.secondary, length: 550 },
    };
    const { report } = draftHeader(formOf(wish));
    expect(report.problems).toEqual([]);
    expect(report.groups.map((g) => Math.round(g.mean))).toEqual([420, 550]);
  });
});

describe('what follows what', () => {
  test('another count of cylinders forgets the order, the places and an arrangement that no longer fits', () => {
    const wish: Wish = {
      ...withCollector(FIRST_WISH, 0, { length: 200 }),
      firingOrder: [1, 2, 4, 3],
      arrangement: 'pairs-then-one',
    };
    const next = withEngine(wish, { cylinders: 5 });
    expect(next).toMatchObject({ firingOrder: null, collectors: [], arrangement: 'all-into-one', bore: wish.bore });
    expect(withEngine(wish, { cylinders: 8 }).arrangement).toBe('pairs-then-one');
  });
  test('one collector’s wish leaves the other’s', () => {
    const wish = withCollector(withCollector(FIRST_WISH, 1, { length: 150 }), 0, { outletDiameter: 70 });
    expect(collectorWish(wish, 1).length).toBe(150);
    expect(collectorWish(wish, 0)).toMatchObject({ outletDiameter: 70, length: null });
  });
  test('a tube that can be bought, in the unit that is spoken', () => {
    expect(nearestStock(39.2, 1.5, 'mm')).toBe(42.4);
    expect(nearestStock(39.2, 1.65, 'in')).toBeCloseTo(1.625 * 25.4, 9);
    expect(nearestStock(120, 1.5, 'mm')).toBe(123);
  });
});

describe('bad answers', () => {
  test('are said by the field’s name', () => {
    const [problem] = formProblems(formOf({ ...FIRST_WISH, pitch: 30 }));
    expect(problemWords(problem!)).toMatch(/^Port pitch: found 30; allowed: at least/);
    const inHead = formOf(withCollector(FIRST_WISH, 0, { position: [0, -60, 0] }));
    expect(problemWords(formProblems(inHead)[0]!)).toMatch(/^Collector 1, its place: found/);
    const reversed = formOf({ ...FIRST_WISH, rpm: [7000, 1500] });
    expect(problemWords(formProblems(reversed)[0]!)).toMatch(/^Speeds: found 7000 to 1500/);
  });
  test('no engine at all leaves the sizes out instead of failing', () => {
    expect(filled({ ...FIRST_WISH, bore: -1 }).sizes).toBeNull();
    expect(formProblems(formOf({ ...FIRST_WISH, bore: -1 }))[0]!.path).toBe('bore');
  });
  test.each([
    ['1-3-4-2', null],
    ['1 3 4 2', null],
    ['1-3-4', /2 is missing/],
    ['1-3-3-2', /3 is there twice/],
    ['1-3-4-7', /no cylinder 7/],
    ['one-three', /Numbers only/],
    ['', /1, 2, 3, 4 is missing/],
  ])('firing order "%s"', (text, problem) => {
    const found = orderProblem(readOrder(text), 4);
    if (problem === null) expect(found).toBeNull();
    else expect(found).toMatch(problem);
  });
  test('orders on offer are orders', () => {
    for (const cylinders of [3, 4, 5, 6, 8])
      for (const order of ordersFor(cylinders)) expect(orderProblem(order, cylinders)).toBeNull();
  });
});

test('file names that every disk takes', () => {
  expect(fileNameOf('Hill/climb: four, 4-1')).toBe('hillclimb-four-4-1.evenrun.json');
  expect(fileNameOf('  ')).toBe('header.evenrun.json');
});
