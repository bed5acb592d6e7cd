/**
 * Cutting plans against published optima: the twenty u120 instances, a set of triplets, cutting-stock examples. Each must come to
 * the listed number, say that it is proved, and be a plan that can be cut.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type BarProblem, cutBars } from '../../src/shop/nest/bars';
import { barFaults } from '../shop/nest/checker';
import { published, quantityOf } from './published';

const json = <T>(name: string): T => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8')) as T;

const problem = (capacity: number, lengths: readonly number[]): BarProblem => ({
  pieces: lengths.map((length, i) => ({ id: `${i}`, length })),
  stock: [{ id: 'bar', length: capacity, count: 0, buy: true, price: 1 }],
  kerf: 0,
  endTrim: 0,
});

async function expectOptimum(asked: BarProblem, optimum: number) {
  const began = process.cpuUsage();
  const plan = await cutBars(asked);
  const { user, system } = process.cpuUsage(began);
  expect(barFaults(asked, plan)).toEqual([]);
  expect(plan.used).toHaveLength(optimum);
  expect([plan.least, plan.value, plan.bound, plan.proved]).toEqual(['money', optimum, optimum, true]);
  expect((user + system) / 1e6).toBeLessThan(20);
}

type Packing = { name: string; capacity: number; items: number[]; sum: number; listed: number };
const u120 = json<Packing[]>('bin-packing-u120.json');
const optima = published<Record<string, { sum: number; opt: number }>>('bpp.u120');

test('all twenty are there', () => {
  expect(u120).toHaveLength(20);
  expect(Object.keys(optima)).toHaveLength(20);
});

test.each(u120.map((one) => [one.name, one] as const))(
  '%s, within 20 s',
  async (name, { capacity, items, sum }) => {
    expect(items).toHaveLength(120);
    expect(items.reduce((a, b) => a + b, 0)).toBe(sum);
    expect(sum).toBe(optima[name]!.sum);
    await expectOptimum(problem(capacity, items), optima[name]!.opt);
  },
  60_000,
);

test('sixty triplets: every bar is used up', async () => {
  const { capacity, items } = json<Packing>('triplet60.json');
  await expectOptimum(problem(capacity, items), published<{ opt: number }>('bpp.triplet').opt);
}, 60_000);

// csp.4 is from memory, its optimum recomputed: the file says so beside it.
test.each(['csp.1', 'csp.2', 'csp.3', 'csp.4'])('%s', async (key) => {
  const words = quantityOf(key);
  const capacity = Number(/\d+/.exec(words)![0]);
  const lengths = [...words.matchAll(/(\d+)x(\d+)/g)].flatMap(([, length, n]) => Array(Number(n)).fill(Number(length)));
  await expectOptimum(problem(capacity, lengths), published<{ opt: number }>(key).opt);
});
