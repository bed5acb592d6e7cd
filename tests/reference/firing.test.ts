/**
 * Firing intervals and pairs a turn apart against a firing-order overview and two further lists (keys fire.*). The orders
 * were read, the flat four's numbering is from memory; intervals and pairs were computed independently.
 */
import { describe, expect, test } from 'vitest';
import { bestSets, exhaustGaps, firingInterval, firingSeparation } from '../../shared/engine/firingOrder';
import { keysLike, published, quantityOf } from './published';

type Engine = { interval: number; pairs360: [number, number][] };
const engines = keysLike('fire.').filter((key) => !['fire.421', 'fire.v8bank'].includes(key));
const orderOf = (key: string): number[] => /[\d-]+$/.exec(quantityOf(key))![0].split('-').map(Number);
/** Pairs have no order, nor has a list of them. */
const asSet = (pairs: readonly (readonly number[])[]): string[] => pairs.map((p) => [...p].sort().join('+')).sort();
/** All of these that fire one crank turn apart. */
const turnApart = (order: readonly number[], among = order): [number, number][] =>
  among.flatMap((a, i) =>
    among.slice(i + 1).flatMap((b): [number, number][] => (firingSeparation(order, a, b) === 360 ? [[a, b]] : [])),
  );

test('ten engines are listed', () => expect(engines).toHaveLength(10));

describe.each(engines)('%s', (key) => {
  const { interval, pairs360 } = published<Engine>(key);
  const order = orderOf(key);
  test(order.join('-'), () => {
    expect(firingInterval(order)).toBe(interval);
    expect(asSet(turnApart(order))).toEqual(asSet(pairs360));
  });
});

test('a four’s 4-2-1 joins 1 + 4 and 2 + 3 (fire.421)', () => {
  expect(published('fire.421')).toContain('I4 -> 1+4, 2+3');
  const order = [1, 3, 4, 2];
  expect(bestSets(order, order, 2).map(asSet)).toEqual([['1+4', '2+3']]);
  expect(firingSeparation(order, 1, 2)).toBe(180);
});

// Cross-plane, banks odd and even: no pair a turn apart lies within a bank.
test('exhaust gaps within each bank of a cross-plane eight (fire.v8bank)', () => {
  type Banks<T> = { odd: T; even: T };
  const it = published<Banks<number[]> & { best_min_gap_pairs: Banks<[number, number][]> }>('fire.v8bank');
  const order = [1, 8, 4, 3, 6, 5, 7, 2];
  const banks = { odd: [1, 3, 5, 7], even: [2, 4, 6, 8] };
  for (const side of ['odd', 'even'] as const) {
    const gaps = exhaustGaps(order, banks[side]);
    expect(gaps).toEqual(it[side]);
    expect(gaps.reduce((a, b) => a + b, 0)).toBe(720);
    expect(turnApart(order, banks[side])).toEqual([]);
    expect(bestSets(order, banks[side], 2).map(asSet)).toContainEqual(asSet(it.best_min_gap_pairs[side]));
  }
});

test('an odd number has no pairs, a cylinder that is not there is refused', () => {
  expect(turnApart([1, 3, 2])).toEqual([]);
  expect(bestSets([1, 3, 2], [1, 3, 2], 2)).toEqual([]);
  expect(exhaustGaps([1, 3, 2], [7])).toEqual([]);
  expect(() => firingSeparation([1, 3, 2], 1, 4)).toThrow('Cylinder 4 is not in the firing order 1-3-2');
});
