/** Bends: legs at the ends, pieces turned round, whole bends, kerf as arc; small random shelves against every plan there is. */
import { expect, test } from 'vitest';
import { arcAngle } from '../../../src/shop/arcs';
import { type BendProblem, cutBends } from '../../../src/shop/nest/bends';
import { random } from '../../random';
import { leastBends } from './bruteForceBends';
import { bendFaults } from './checker';

type Piece = BendProblem['pieces'][number];
const piece = (id: string, angle: number, before = 0, after = 0): Piece => ({ id, angle, legs: [before, after] });
const bend = (
  id: string,
  angle: number,
  legs: readonly [number, number],
  more: Partial<BendProblem['stock'][number]> = {},
) => ({
  id,
  angle,
  legs,
  count: 0,
  buy: true,
  ...more,
});
const RADIUS = 60;
const planned = async (pieces: Piece[], stock: BendProblem['stock'], kerf = 0) => {
  const asked = { pieces, stock, radius: RADIUS, kerf };
  const plan = await cutBends(asked);
  expect(bendFaults(asked, plan)).toEqual([]);
  return plan;
};

test('a kerf of 1.5 mm is 1.43 degrees of 60 mm radius', () => {
  expect(arcAngle(1.5, 60)).toBeCloseTo((1.5 / (2 * Math.PI * 60)) * 360, 12);
});

test('two pieces of 90 come out of a U where the saw takes nothing, and not where it takes any', async () => {
  const two = [piece('a', 90), piece('b', 90)];
  expect((await planned(two, [bend('u', 180, [50, 50])])).used).toHaveLength(1);
  expect((await planned(two, [bend('u', 180, [50, 50])], 1.5)).used).toHaveLength(2);
  const kerf = arcAngle(1.5, RADIUS);
  expect((await planned([piece('a', 90), piece('b', 90 - kerf)], [bend('u', 180, [50, 50])], 1.5)).used).toHaveLength(
    1,
  );
});

test('at most two pieces with a leg lie on one bend, the others between them', async () => {
  const plan = await planned(
    [piece('a', 40, 30), piece('b', 30, 0, 45), piece('c', 50)],
    [bend('u', 180, [50, 50])],
    1.5,
  );
  expect(plan.used).toHaveLength(1);
  const cuts = [...plan.used[0]!.cuts].sort((x, y) => x.from - y.from);
  expect(cuts[1]!.piece).toBe('c');
  expect(
    (await planned([piece('a', 20, 9), piece('b', 20, 9), piece('c', 20, 9)], [bend('u', 180, [50, 50])])).used,
  ).toHaveLength(2);
});

test('a piece is turned round where only the other leg is long enough', async () => {
  const plan = await planned([piece('a', 40, 80)], [bend('j', 180, [20, 100])]);
  expect(plan.used[0]!.cuts).toEqual([{ piece: 'a', from: 140, to: 180, legs: [0, 80], reversed: true }]);
  expect(plan.used[0]!.left).toBe(140);
  expect((await planned([piece('a', 40, 80), piece('b', 40, 0, 90)], [bend('j', 180, [20, 100])])).used).toHaveLength(
    2,
  );
});

test('a piece that keeps both legs is a whole bend of its angle, within 0.05 degrees', async () => {
  const stock = [bend('u', 180, [100, 100]), bend('n', 90, [30, 60])];
  const plan = await planned([piece('a', 90.04, 50, 20)], stock);
  expect(plan.used.map(({ stock: id, cuts }) => [id, cuts[0]!.legs, cuts[0]!.reversed])).toEqual([
    ['n', [20, 50], true],
  ]);
  expect((await planned([piece('a', 90.06, 50, 20)], stock)).over).toEqual(['a']);
  expect((await planned([piece('a', 90, 50, 35)], stock)).over).toEqual(['a']);
});

test('the shelf first, then least money', async () => {
  const stock = [
    bend('shelf', 90, [40, 40], { count: 1, buy: false }),
    bend('u', 180, [50, 50], { price: 18 }),
    bend('n', 90, [50, 50], { price: 11 }),
  ];
  const plan = await planned([piece('a', 80, 20), piece('b', 85, 20), piece('c', 60)], stock, 1.5);
  expect([plan.least, plan.value, plan.proved]).toEqual(['money', 18, true]);
  expect(plan.used.map(({ stock: id }) => id)).toEqual(['shelf', 'u']);
});

test.each([1, 2])(
  'forty pieces out of four kinds at their prices: proved, seed %d',
  async (seed) => {
    const r = random(seed);
    const pieces = Array.from({ length: 40 }, (_, i) => {
      const leg = r() < 0.5 ? r.between(10, 90) : 0;
      return r() < 0.5 ? piece(`p${i}`, r.between(12, 95), leg) : piece(`p${i}`, r.between(12, 95), 0, leg);
    });
    const stock = [
      bend('u', 180, [100, 100], { count: 2, price: 18.5 }),
      bend('n', 90, [80, 80], { count: 1, price: 11.2 }),
      bend('f', 45, [100, 50], { price: 8.9 }),
      bend('w', 100, [90, 90], { price: 13 }),
    ];
    const plan = await planned(pieces, stock, 1.5);
    expect([plan.least, plan.proved, plan.bound]).toEqual(['money', true, plan.value]);
  },
  60_000,
);

function randomProblem(seed: number): BendProblem {
  const r = random(seed);
  const whole = r() < 0.5;
  const pick = (low: number, high: number) => (whole ? 5 * r.whole(low / 5, high / 5) : r.between(low, high));
  const leg = () => (r() < 0.5 ? 0 : pick(5, 40));
  const angles = [45, 90, 180];
  const pieces = Array.from({ length: r.whole(1, 6) }, (_, i) => {
    const both = r() < 0.2;
    const angle = both ? angles[r.whole(0, 2)]! : pick(10, 100);
    const one = leg();
    return r() < 0.5 ? piece(`p${i}`, angle, one, both ? leg() : 0) : piece(`p${i}`, angle, both ? leg() : 0, one);
  });
  const priced = r() < 0.5;
  const stock = Array.from({ length: r.whole(1, 3) }, (_, i) =>
    bend(`s${i}`, angles[r.whole(0, 2)]!, [pick(5, 45), pick(5, 45)], {
      count: r.whole(0, 2),
      buy: r() < 0.6,
      ...(priced ? { price: r.whole(3, 12) } : {}),
    }),
  );
  return { pieces, stock, radius: RADIUS, kerf: r() < 0.5 ? 0 : pick(0, 5) };
}

test.each(Array.from({ length: 80 }, (_, i) => i + 1))('as good as every plan there is, seed %d', async (seed) => {
  const asked = randomProblem(seed);
  const plan = await cutBends(asked);
  expect(bendFaults(asked, plan)).toEqual([]);
  expect(plan.proved).toBe(true);
  const best = leastBends(asked);
  const bought = plan.least.includes('shelf') ? 0 : plan.value;
  expect(plan.over).toHaveLength(best.over);
  if (best.over === 0) expect(bought).toBeCloseTo(best.value, 6);
});
