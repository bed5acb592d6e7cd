/** Bars: small random shelves against every plan there is, what kerf and trim take, the shelf before the shop. */
import { expect, test } from 'vitest';
import { type BarProblem, cutBars } from '../../../src/shop/nest/bars';
import { random } from '../../random';
import { leastBought, leastShelf } from './bruteForce';
import { barFaults } from './checker';

const lengths = (...all: number[]) => all.map((length, i) => ({ id: `p${i + 1}`, length }));
const bar = (id: string, length: number, more: Partial<BarProblem['stock'][number]> = {}) => ({
  id,
  length,
  count: 0,
  buy: true,
  ...more,
});

test('a last piece that fits exactly needs no cut, one that leaves anything does', async () => {
  const exact = { pieces: lengths(300, 300), stock: [bar('a', 602)], kerf: 2, endTrim: 0 };
  const plan = await cutBars(exact);
  expect(plan.used).toHaveLength(1);
  expect(plan.used[0]!.cuts.map(({ from, to }) => [from, to])).toEqual([
    [0, 300],
    [302, 602],
  ]);
  const less = { ...exact, stock: [bar('a', 601.9)] };
  expect((await cutBars(less)).used).toHaveLength(2);
});

test('the end trim comes off both ends, of the shelf too', async () => {
  const shelf = bar('a', 310, { count: 1, buy: false });
  const asked = { pieces: lengths(300), stock: [shelf], kerf: 2, endTrim: 5 };
  const plan = await cutBars(asked);
  expect(barFaults(asked, plan)).toEqual([]);
  expect(plan.used[0]!.cuts[0]).toEqual({ piece: 'p1', from: 5, to: 305 });
  expect((await cutBars({ ...asked, endTrim: 5.1 })).over).toEqual(['p1']);
});

test('the shelf is used first, and the least of it', async () => {
  const stock = [bar('long', 3000, { count: 2 }), bar('offcut', 900, { count: 1, buy: false }), bar('new', 6000)];
  const asked = { pieces: lengths(400, 450), stock, kerf: 2, endTrim: 5 };
  const plan = await cutBars(asked);
  expect(plan.used.map(({ stock, source }) => [stock, source])).toEqual([['offcut', 'shelf']]);
  expect([plan.least, plan.value, plan.bound, plan.proved]).toEqual(['length taken from the shelf', 900, 900, true]);
});

test('where something is bought anyway, the shelf is used up before it, and most is left of what is new', async () => {
  const answer = await cutBars({
    pieces: [480, 470, 460, 300].map((length, i) => ({ id: `p${i}`, length })),
    stock: [
      { id: 'offcut', length: 800, count: 1, buy: false },
      { id: 'bar', length: 6000, count: 0, buy: true, price: 80 },
    ],
    kerf: 1.5,
    endTrim: 5,
  });
  expect(answer).toMatchObject({ least: 'money', value: 80, proved: true });
  const [offcut, bar] = answer.used;
  expect(offcut).toMatchObject({ stock: 'offcut', source: 'shelf' });
  expect(offcut!.cuts.map(({ piece }) => piece).sort()).toEqual(['p0', 'p3']);
  expect(bar!.cuts.map(({ piece }) => piece).sort()).toEqual(['p1', 'p2']);
});

test('least money where everything on sale has a price, else least length', async () => {
  const pieces = lengths(900, 900, 900);
  const dear = {
    pieces,
    stock: [bar('one', 1000, { price: 3 }), bar('three', 3000, { price: 10 })],
    kerf: 0,
    endTrim: 0,
  };
  const cheap = await cutBars(dear);
  expect([cheap.least, cheap.value, cheap.used.length]).toEqual(['money', 9, 3]);
  const unpriced = await cutBars({ ...dear, stock: [bar('one', 1000), bar('three', 2800, { price: 10 })] });
  expect([unpriced.least, unpriced.value]).toEqual(['length bought', 2800]);
});

test('what nothing is left for is told, as few pieces as can be', async () => {
  const asked = {
    pieces: lengths(500, 300, 300, 400),
    stock: [bar('a', 1000, { count: 1, buy: false })],
    kerf: 0,
    endTrim: 0,
  };
  const plan = await cutBars(asked);
  expect(barFaults(asked, plan)).toEqual([]);
  expect(plan.over).toHaveLength(1);
});

test('what is left comes together in one piece', async () => {
  const asked = { pieces: lengths(...Array(9).fill(400)), stock: [bar('a', 2100)], kerf: 0, endTrim: 0 };
  const plan = await cutBars(asked);
  expect(barFaults(asked, plan)).toEqual([]);
  expect(plan.used.map(({ left }) => left)).toEqual([100, 500]);
});

test('nothing asked, nothing cut', async () => {
  const plan = await cutBars({ pieces: [], stock: [bar('a', 1000)], kerf: 1, endTrim: 1 });
  expect([plan.used, plan.value, plan.proved]).toEqual([[], 0, true]);
});

function randomProblem(seed: number): BarProblem {
  const r = random(seed);
  const whole = r() < 0.5;
  const pick = (low: number, high: number) => (whole ? r.whole(low, high) : r.between(low, high));
  const pieces = Array.from({ length: r.whole(1, 7) }, (_, i) => ({ id: `p${i}`, length: pick(10, 70) }));
  const priced = r() < 0.5;
  const stock = Array.from({ length: r.whole(1, 3) }, (_, i) => ({
    id: `s${i}`,
    length: pick(60, 160),
    count: r.whole(0, 2),
    buy: r() < 0.6,
    ...(priced ? { price: pick(3, 12) } : {}),
  }));
  return { pieces, stock, kerf: pick(0, 4), endTrim: r() < 0.5 ? 0 : pick(0, 5) };
}

test.each(Array.from({ length: 60 }, (_, i) => i + 1))('as good as every plan there is, seed %d', async (seed) => {
  const asked = randomProblem(seed);
  const plan = await cutBars(asked);
  expect(barFaults(asked, plan)).toEqual([]);
  const best = leastBought(asked);
  expect(plan.proved).toBe(true);
  expect(plan.over).toHaveLength(best.over);
  if (best.over > 0) return;
  const bought = plan.least.includes('shelf') ? 0 : plan.value;
  expect(bought).toBeCloseTo(best.value, 6);
  expect(plan.bound).toBeCloseTo(plan.value, 5);
  if (plan.least.includes('shelf')) expect(plan.value).toBeCloseTo(leastShelf(asked), 6);
  else expect(best.value === 0 && asked.pieces.length > 0).toBe(plan.value === 0);
});

test.each([101, 102, 103, 104, 105, 106, 107, 108])('more on the shelf never costs more, seed %d', async (seed) => {
  const asked = randomProblem(seed);
  const value = async (problem: BarProblem) => {
    const plan = await cutBars(problem);
    return [plan.over.length, plan.least.includes('shelf') ? 0 : plan.value] as const;
  };
  let before = await value(asked);
  for (let more = 0; more < 3; more++) {
    const stock = asked.stock.map((s) => ({ ...s, count: s.count + more }));
    const now = await value({ ...asked, stock });
    expect(now[0]).toBeLessThanOrEqual(before[0]);
    if (now[0] === before[0]) expect(now[1]).toBeLessThanOrEqual(before[1] + 1e-9);
    before = now;
  }
});

test('several lengths on sale, forty pieces of any length: proved, and no dearer with one more length on sale', async () => {
  const r = random(5);
  const pieces = lengths(...Array.from({ length: 40 }, () => r.between(80, 900)));
  const stock = [bar('a', 2000), bar('b', 1300, { count: 3 })];
  const asked = { pieces, stock, kerf: 1.5, endTrim: 5 };
  const plan = await cutBars(asked);
  expect(barFaults(asked, plan)).toEqual([]);
  expect([plan.least, plan.proved, plan.bound]).toEqual(['length bought', true, plan.value]);
  const fewer = await cutBars({ ...asked, stock: [bar('a', 2000), bar('b', 1300, { count: 3, buy: false })] });
  expect(fewer.proved).toBe(true);
  expect(plan.value).toBeLessThanOrEqual(fewer.value);
}, 60_000);

test('the same is found again', async () => {
  const r = random(5);
  const pieces = lengths(...Array.from({ length: 40 }, () => r.between(80, 900)));
  const asked = { pieces, stock: [bar('a', 2000), bar('b', 1300, { count: 3, buy: false })], kerf: 1.5, endTrim: 5 };
  const first = await cutBars(asked);
  expect(barFaults(asked, first)).toEqual([]);
  expect(await cutBars(asked)).toEqual(first);
});

test('a search with no time left tells a bound that holds, and does not call it proved', async () => {
  const r = random(9);
  const pieces = lengths(...Array.from({ length: 60 }, () => r.whole(200, 800)));
  const asked = { pieces, stock: [bar('a', 1500)], kerf: 0, endTrim: 0 };
  const best = await cutBars(asked);
  const hasty = await cutBars({ ...asked, seconds: 0 });
  expect(barFaults(asked, hasty)).toEqual([]);
  expect(best.proved).toBe(true);
  expect(hasty.bound).toBeLessThanOrEqual(best.value);
  expect(hasty.value).toBeGreaterThanOrEqual(best.value);
  expect(hasty.proved).toBe(hasty.value === hasty.bound);
});
