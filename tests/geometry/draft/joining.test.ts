/**
 * Which cylinders a form joins first, held against the published firing orders (keys fire.* of fabrication.json: orders
 * read, pairs 360° apart computed independently).
 */
import { describe, expect, test } from 'vitest';
import { joiningOf } from '../../../geometry';
import { firingSeparation } from '../../../shared/engine/firingOrder';
import { newForm } from '../../../shared/engine/formDefaults';
import { published } from '../../reference/published';

type Engine = { interval: number; pairs360: [number, number][] };
const asSet = (pairs: readonly (readonly number[])[]): string[] =>
  pairs.map((p) => [...p].sort((a, b) => a - b).join('+')).sort();
const all = (cylinders: number): number[] => Array.from({ length: cylinders }, (_, i) => i + 1);

describe.each([
  ['fire.I4', [1, 3, 4, 2], 1],
  ['fire.I4_alt', [1, 2, 4, 3], 1],
  ['fire.I6', [1, 5, 3, 6, 2, 4], 1],
  ['fire.V8_a', [1, 8, 4, 3, 6, 5, 7, 2], 2],
  ['fire.V8_b', [1, 5, 4, 2, 6, 3, 7, 8], 2],
  ['fire.F4', [1, 3, 2, 4], 2],
] as const)('%s, %j, into one collector', (key, firingOrder, banks) => {
  test('pairs are those a turn apart', () => {
    const cylinders = firingOrder.length;
    const form = newForm({
      cylinders,
      banks,
      firingOrder,
      arrangement: 'pairs-then-one',
      collectors: [all(cylinders)],
    });
    const [joining] = joiningOf(form);
    expect(asSet(joining!.first.map((j) => j.cylinders))).toEqual(asSet(published<Engine>(key).pairs360));
    expect(joining!.first.map((j) => j.apart)).toEqual(joining!.first.map(() => 360));
  });
});

test('within a bank of a cross-plane eight no pair is a turn apart: the best are, bank by bank (fire.v8bank)', () => {
  type Banks = { best_min_gap_pairs: { odd: [number, number][]; even: [number, number][] } };
  const { firingOrder, ...form } = newForm({ cylinders: 8, arrangement: 'pairs-then-one' });
  const joining = joiningOf({ ...form, firingOrder });
  const { odd, even } = published<Banks>('fire.v8bank').best_min_gap_pairs;
  for (const [i, pairs] of [odd, even].entries()) {
    const least = Math.min(...pairs.map(([a, b]) => firingSeparation(firingOrder, a, b)));
    expect(least).toBeLessThan(360);
    expect(Math.min(...joining[i]!.first.map((j) => j.apart))).toBe(least);
    expect(joining[i]!.equallyGood).toBe(1);
    expect(asSet(joining[i]!.first.map((j) => j.cylinders))).toEqual(asSet(pairs));
  }
});

test('a straight six in threes: front and rear, 240 apart, by 1-5-3-6-2-4', () => {
  const form = newForm({ cylinders: 6, arrangement: 'threes-then-one', collectors: [all(6)] });
  const [joining] = joiningOf(form);
  expect(joining!.first.map((j) => [...j.cylinders])).toEqual([
    [1, 2, 3],
    [4, 5, 6],
  ]);
  expect(joining!.first.map((j) => j.apart)).toEqual([240, 240]);
});

test('all into one joins nothing first', () => {
  expect(joiningOf(newForm({ cylinders: 4 }))[0]!.first).toEqual([]);
});
