/** The search's step against the definition of what it minimises: no step nearby is better. */
import { describe, expect, test } from 'vitest';
import { RowBuilder } from '../../../geometry/layout/rowBuilder';
import { ElasticStep } from '../../../geometry/route/elasticStep';
import { random } from '../../random';

const UNKNOWNS = 5;
const STIFFNESS = 0.3;
const LEVER = Float64Array.of(1, 1, 150, 1, 0.5);

type Row = { readonly value: number; readonly gradient: readonly number[]; readonly isEquality: boolean };

function objective(rows: readonly Row[], y: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < UNKNOWNS; k++) sum += (STIFFNESS * (LEVER[k]! * y[k]!) ** 2) / 2;
  for (const { value, gradient, isEquality } of rows) {
    const after = value + gradient.reduce((total, g, k) => total + g * y[k]!, 0);
    if (isEquality || after < 0) sum += after ** 2 / 2;
  }
  return sum;
}

describe.each([1, 2, 3, 4, 5, 6, 7, 8])('random rows, seed %i', (seed) => {
  const next = random(seed);
  const rows = Array.from({ length: 14 }, (_, i): Row => {
    const gradient = Array.from({ length: UNKNOWNS }, (_, k) => (next() < 0.5 ? 0 : next.between(-1, 1) * LEVER[k]!));
    return { value: next.between(-20, 20), gradient, isEquality: i % 5 === 0 };
  });
  const builder = new RowBuilder(UNKNOWNS, LEVER);
  for (const [i, { value, gradient, isEquality }] of rows.entries()) {
    const offset = builder.add(value, isEquality, `rule|${i}||`);
    for (const [k, g] of gradient.entries()) builder.array[offset + k] = g;
  }
  const step = new ElasticStep(LEVER);
  const promised = step.solve(builder, STIFFNESS);

  test('no step a little aside is better', () => {
    const least = objective(rows, step.y);
    for (let k = 0; k < UNKNOWNS; k++)
      for (const by of [-1e-3, 1e-3]) {
        const aside = step.y.map((y, i) => (i === k ? y + by / LEVER[k]! : y));
        expect(objective(rows, aside)).toBeGreaterThanOrEqual(least - 1e-12);
      }
  });

  test('it promises what the straightened rules then leave', () => {
    const left =
      objective(rows, step.y) - step.y.reduce((sum, y, k) => sum + (STIFFNESS * (LEVER[k]! * y) ** 2) / 2, 0);
    expect(promised).toBeCloseTo(left, 9);
  });
});
