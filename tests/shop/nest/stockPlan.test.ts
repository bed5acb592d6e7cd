/** The plan over a workshop: what goes together, what is assumed, what it costs, and what stands in the way with the remedy. */
import { expect, test } from 'vitest';
import type { StockBar, StockBend, Tube, Workshop } from '../../../shared/design/types';
import { type BarPiece, type BendPiece, stockPlan } from '../../../src/shop/nest/stockPlan';

const TUBE: Tube = { outsideDiameter: 42.4, wall: 1.5, material: 'stainless-304' };
const OTHER: Tube = { outsideDiameter: 60.3, wall: 2, material: 'stainless-304' };

const straight = (piece: string, length: number, tube = TUBE): BarPiece => ({ piece, length, tube });
const bent = (piece: string, angle: number, more: Partial<BendPiece> = {}): BendPiece => ({
  piece,
  tube: TUBE,
  radius: 63.5,
  angle,
  legs: [0, 0],
  ...more,
});
const bar = (id: string, length: number, more: Partial<StockBar> = {}): StockBar => ({ id, ...TUBE, length, ...more });
const bend = (id: string, angle: number, more: Partial<StockBend> = {}): StockBend => ({
  id,
  ...TUBE,
  radius: 63.5,
  angle,
  legs: [80, 80],
  ...more,
});
const WORKSHOP: Workshop = { kerf: 2, endTrim: 5 };

test('tubes of one size go together within 0.05 mm, others and other materials do not', async () => {
  const near = { ...TUBE, outsideDiameter: 42.44 };
  const mild: Tube = { outsideDiameter: 42.4, wall: 1.5 };
  const pieces = [straight('a', 300), straight('b', 300, near), straight('c', 300, OTHER), straight('d', 300, mild)];
  const plan = await stockPlan({ ...WORKSHOP, bars: [bar('x', 2000, { count: 1 })] }, pieces, []);
  expect(plan.parts.map(({ used }) => used.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)))).toEqual([
    ['a', 'b'],
    ['c'],
    ['d'],
  ]);
  expect(plan.parts[0]!.used[0]!.stock).toBe('x');
  expect(plan.buy.map(({ assumed, count }) => [assumed, count])).toEqual([
    [true, 1],
    [true, 1],
  ]);
  expect(plan.buy[1]!.what).toBe('bar 6000 mm, 42.4 × 1.5 mm mild steel');
  expect(plan.remarks).toEqual([]);
});

test('no listed material is mild steel, on either side', async () => {
  const mild: Tube = { outsideDiameter: 42.4, wall: 1.5 };
  const plan = await stockPlan(
    { bars: [{ ...bar('x', 2000), material: 'mild-steel' }] },
    [straight('a', 300, mild)],
    [],
  );
  expect(plan.buy.map(({ stock }) => stock)).toEqual(['x']);
});

test('the buy list has prices, and the cost is unknown where one is missing', async () => {
  const bars = [bar('six', 6000, { price: 40 })];
  const bends = [bend('u', 180, { price: 12.5 })];
  const pieces = [straight('a', 4000), straight('b', 4000)];
  const arcs = [bent('c', 90), bent('d', 85), bent('e', 120)];
  const plan = await stockPlan({ ...WORKSHOP, bars, bends }, pieces, arcs);
  expect(plan.buy.map(({ stock, count, each, cost }) => [stock, count, each, cost])).toEqual([
    ['six', 2, 40, 80],
    ['u', 2, 12.5, 25],
  ]);
  expect(plan.cost).toBe(105);
  expect((await stockPlan({ ...WORKSHOP, bars, bends: [bend('u', 180)] }, pieces, arcs)).cost).toBeNull();
  expect((await stockPlan({ ...WORKSHOP, bars: [bar('six', 6000, { count: 2 })] }, pieces, [])).cost).toBe(0);
  expect((await stockPlan(undefined, [], [])).cost).toBe(0);
});

test('assumed stock is marked and never takes an id that is taken', async () => {
  const listed = [{ ...bar('bar-42.4x1.5-stainless-304', 3000), outsideDiameter: 50 }];
  const plan = await stockPlan({ ...WORKSHOP, bars: listed }, [straight('a', 500)], [bent('b', 45)]);
  expect(plan.buy.map(({ stock, assumed, each }) => [stock, assumed, each])).toEqual([
    ['bar-42.4x1.5-stainless-304-2', true, null],
    ['u-bend-42.4x1.5-stainless-304-r63.5', true, null],
  ]);
});

const stops = async (workshop: Workshop, bars: BarPiece[], bends: BendPiece[]) => {
  const plan = await stockPlan({ ...WORKSHOP, ...workshop }, bars, bends);
  expect(plan.remarks.every((remark) => remark.stops)).toBe(true);
  return { plan, said: plan.remarks.map(({ where, message }) => `${where}: ${message}`) };
};
const cutIn = (plan: Awaited<ReturnType<typeof stockPlan>>) =>
  plan.parts.flatMap(({ used }) => used.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)));

test('a piece longer than any bar: by how much, and which bar would do; the others are planned', async () => {
  const { plan, said } = await stops(
    { bars: [bar('x', 3000), bar('y', 2000)] },
    [straight('a', 3050), straight('b', 900)],
    [],
  );
  expect(said).toEqual([
    'workshop/bars: a: 3050 mm is 60 mm more than the longest bar of 42.4 × 1.5 mm stainless 304 gives, 2990 mm of 3000; list a bar of at least 3060 mm, or split the piece',
  ]);
  expect(cutIn(plan)).toEqual(['b']);
});

test('no bend of the radius: which there are', async () => {
  const bends = [bend('x', 180, { radius: 50 }), bend('y', 90, { radius: 76.2 })];
  const { plan, said } = await stops({ bends }, [], [bent('a', 45), bent('b', 30, { radius: 50 })]);
  expect(said).toHaveLength(1);
  expect(said[0]).toMatch(
    /^workshop\/bends: no bend of 63\.5 mm radius in 42\.4 × 1\.5 mm .* for a; there are 50, 76\.2 mm: list one/,
  );
  expect(cutIn(plan)).toEqual(['b']);
});

test('a piece wider than any bend, and a leg longer than any', async () => {
  const { plan, said } = await stops(
    { bends: [bend('x', 90)] },
    [],
    [bent('a', 97.5), bent('b', 60, { legs: [0, 95.25] }), bent('c', 60)],
  );
  expect(said[0]).toMatch(
    /a: it turns 97\.5°, 7\.5° more than the widest bend of 63\.5 mm radius, 90°; list a bend of at least 97\.5°/,
  );
  expect(said[1]).toMatch(
    /b: it keeps a leg of 95\.25 mm, 15\.25 mm more than the longest leg .*, 80 mm; list a bend whose leg is at least 95\.25 mm/,
  );
  expect(cutIn(plan)).toEqual(['c']);
});

test('a piece with both legs needs a bend of its angle', async () => {
  const { said } = await stops({ bends: [bend('x', 180), bend('y', 45)] }, [], [bent('a', 60, { legs: [30, 20] })]);
  expect(said[0]).toMatch(
    /a: it keeps both its legs, 30 and 20 mm, so it must be a whole bend of 60°; .* 180° with legs of 80 and 80, 45° with legs of 80 and 80 mm/,
  );
});

test('a shelf too small with nothing to buy: how many pieces are left over; the rest is cut', async () => {
  const bars = [bar('x', 1000, { count: 1, buy: false })];
  const { plan, said } = await stops({ bars }, [straight('a', 400), straight('b', 500), straight('c', 450)], []);
  expect(said[0]).toMatch(
    /^workshop\/bars: straight tube .*: 1 piece is left over \([abc]\): the shelf has no more, .* raise a count/,
  );
  expect(cutIn(plan)).toHaveLength(2);
});

test('a kerf larger than a piece, straight or on its arc', async () => {
  const { said } = await stops({ kerf: 12 }, [straight('a', 9), straight('b', 900)], [bent('c', 10), bent('d', 40)]);
  expect(said).toHaveLength(2);
  expect(said[0]).toMatch(/^workshop\/kerf: a cut takes 12 mm and a is only 9 mm long: .* below 9 mm/);
  expect(said[1]).toMatch(/c is only 11\.08 mm long on its arc/);
});

test('a search that ends early says how far from the best it may be, and that does not stop', async () => {
  const pieces = Array.from({ length: 60 }, (_, i) => straight(`p${i}`, 211 + ((i * 137) % 590)));
  const plan = await stockPlan({ ...WORKSHOP, bars: [bar('x', 1500)] }, pieces, [], { seconds: 0 });
  const { value, bound, proved } = plan.parts[0]!;
  expect(plan.remarks).toHaveLength(proved ? 0 : 1);
  if (!proved) expect(plan.remarks[0]).toMatchObject({ stops: false });
  expect(bound).toBeLessThanOrEqual(value);
});
