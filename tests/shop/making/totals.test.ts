/** What a way of making takes, counted by hand on plans of a few pieces. */
import { describe, expect, test } from 'vitest';
import type { StockBar, StockBend, Tube } from '../../../shared/design/types';
import type { StockCut, StockPlan, UsedStock, WeldedTube } from '../../../src/shop/making/report';
import { cutsOf } from '../../../src/shop/making/totals/cuts';
import { weldedTotals } from '../../../src/shop/making/totals/wayTotals';

const tube: Tube = { outsideDiameter: 42.4, wall: 1.5, material: 'stainless-304' };
const bar: StockBar = { id: 'bar', ...tube, length: 1000, price: 20 };
const bend: StockBend = { id: 'U', ...tube, radius: 60, angle: 180, legs: [50, 80], price: 15 };
const used = (of: StockBar | StockBend, cuts: readonly StockCut[], left: number): UsedStock => ({
  stock: of.id,
  kind: 'radius' in of ? 'bend' : 'bar',
  of,
  number: 1,
  source: 'bought',
  cuts,
  left,
});
const cut = (piece: string, from: number, to: number, legs?: readonly [number, number]): StockCut => ({
  piece,
  from,
  to,
  ...(legs ? { legs } : {}),
});
/** Of a saw 1.5 wide at radius 60. */
const KERF_DEGREES = 1.432394;

describe('how often stock is sawn', () => {
  test.each([
    ['a bar trimmed, two pieces, a leftover', used(bar, [cut('a', 5, 305), cut('b', 306.5, 606.5)], 387), 5, 3],
    ['untrimmed, its last piece ends where it ends', used(bar, [cut('a', 0, 498.5), cut('b', 500, 1000)], 0), 0, 1],
    ['untrimmed, one piece off it', used(bar, [cut('a', 0, 300)], 698.5), 0, 1],
    ['a whole bend with both legs', used(bend, [cut('a', 0, 180, [50, 80])], 0), 5, 0],
    ['a whole bend, one leg shortened', used(bend, [cut('a', 0, 180, [50, 30])], 0), 5, 1],
    [
      'half a bend with its leg: its own cut, and the other leg stays on what is left',
      used(bend, [cut('a', 0, 90, [50, 0])], 88),
      5,
      1,
    ],
    [
      'two neighbours parted by the kerf, legs sawn off',
      used(bend, [cut('a', 0, 80), cut('b', 80 + KERF_DEGREES, 180)], 0),
      5,
      3,
    ],
    ['waste between two legged pieces', used(bend, [cut('a', 0, 60, [50, 0]), cut('b', 120, 180, [0, 80])], 58), 5, 2],
  ])('%s', (_, stock, endTrim, expected) => {
    expect(cutsOf(stock, 1.5, endTrim)).toBe(expected);
  });
});

describe('a welded way', () => {
  const piece = {
    kind: 'bend',
    in: 20,
    out: 0,
    radius: 60,
    angle: 90,
    sawnIn: 20,
    sawnOut: 0,
    kerfAngle: 0,
    id: 'r1-1',
  } as const;
  const joint = {} as WeldedTube['joints'][number];
  const tubes = [{ pieces: [piece, piece], joints: [joint], remarks: [] }] as unknown as WeldedTube[];
  const plan: StockPlan = {
    parts: [
      {
        what: '',
        kind: 'bend',
        used: [used(bend, [cut('r1-1', 0, 90, [20, 0]), cut('r1-2', 90 + KERF_DEGREES, 180)], 0)],
        least: 'money',
        value: 15,
        bound: 15,
        proved: true,
      },
    ],
    buy: [{ stock: 'U', what: 'U', count: 1, each: 15, cost: 15, assumed: false }],
    cost: 15,
    remarks: [],
  };

  test('minutes, money and kilograms', () => {
    const workshop = { hourly: 30, weldCost: 2, minutes: { cut: 6, weld: 10 } };
    const totals = weldedTotals({ tube, workshop, plan }, tubes);
    // Both ends of the stock are sawn, and once between.
    expect(totals).toMatchObject({
      way: 'welded',
      possible: true,
      pieces: 2,
      bends: 2,
      welds: 1,
      cuts: 3,
      minutes: 28,
    });
    expect(totals.cost).toEqual({ stock: 15, welds: 2, work: 14 });
    expect(totals.missing).toEqual([]);
    const perMm = Math.PI * 1.5 * 40.9 * 7.93e-6;
    expect(totals.mass).toBeCloseTo((2 * 20 + Math.PI * 60) * perMm, 9);
    expect(totals.stockMass).toBeCloseTo((130 + Math.PI * 60) * perMm, 9);
  });

  test('what has no price is named, and its cost not guessed', () => {
    const bare = { ...plan, cost: null, buy: [{ ...plan.buy[0]!, each: null, cost: null }] };
    const totals = weldedTotals({ tube, workshop: undefined, plan: bare }, tubes);
    expect(totals.cost).toEqual({ stock: null, welds: null, work: null });
    expect(totals.missing).toEqual(['price of U', 'what a weld takes in gas and rod', 'what an hour costs']);
  });

  test('what stops the plan stops the way', () => {
    const stopped = { ...plan, remarks: [{ where: 'workshop/bends', message: 'too few', stops: true }] };
    expect(weldedTotals({ tube, workshop: undefined, plan: stopped }, tubes).possible).toBe(false);
  });
});
