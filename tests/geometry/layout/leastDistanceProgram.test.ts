/** The quadratic program against the conditions that only its solution meets (Karush, Kuhn, Tucker), seeded. */
import { expect, it } from 'vitest';
import { leastDistance, type Rows } from '../../../geometry/layout/leastDistanceProgram';
import { random } from '../../random';

const STIFFNESS = 1e10;

function rowsOf(gradients: number[][], bounds: number[], equalities: number): Rows {
  return {
    count: gradients.length,
    columns: gradients[0]!.length,
    gradients: Float64Array.from(gradients.flat()),
    bounds: Float64Array.from(bounds),
    isEquality: Uint8Array.from(gradients, (_, i) => (i < equalities ? 1 : 0)),
  };
}

const value = (row: number[], y: Float64Array): number => row.reduce((sum, g, k) => sum + g * y[k]!, 0);

for (const seed of [1, 2, 3, 4, 5, 6, 7, 8])
  it(`meets the conditions of a nearest point, seed ${seed}`, () => {
    const next = random(seed);
    const columns = 12;
    // A point that meets every row, so that the rows are known to be consistent.
    const inside = Array.from({ length: columns }, () => next.between(-5, 5));
    const gradients = Array.from({ length: 30 }, () => Array.from({ length: columns }, () => next.between(-1, 1)));
    const bounds = gradients.map((g, i) => value(g, Float64Array.from(inside)) - (i < 3 ? 0 : next.between(0, 2)));
    const { y, multipliers } = leastDistance(rowsOf(gradients, bounds, 3), STIFFNESS, [5, 9, 20]);
    for (const [i, g] of gradients.entries()) {
      const over = value(g, y) - bounds[i]!;
      if (i < 3) expect(Math.abs(over)).toBeLessThan(1e-6);
      else {
        expect(over).toBeGreaterThan(-1e-6);
        expect(multipliers[i]).toBeGreaterThanOrEqual(0);
        expect(multipliers[i]! * Math.max(0, over)).toBeLessThan(1e-5);
      }
    }
    for (let k = 0; k < columns; k++) {
      const pull = gradients.reduce((sum, g, i) => sum + multipliers[i]! * g[k]!, 0);
      expect(y[k]).toBeCloseTo(pull, 6);
    }
    expect(multipliers.filter((m, i) => i >= 3 && m > 0).length).toBeGreaterThan(0);
  });

it('gives the same answer whatever rows it is warmed with', () => {
  const next = random(9);
  const gradients = Array.from({ length: 20 }, () => Array.from({ length: 8 }, () => next.between(-1, 1)));
  const rows = rowsOf(
    gradients,
    gradients.map(() => next.between(-2, 0.5)),
    0,
  );
  const cold = leastDistance(rows, STIFFNESS, []).y;
  const warm = leastDistance(rows, STIFFNESS, [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]).y;
  for (const [k, v] of cold.entries()) expect(warm[k]).toBeCloseTo(v, 6);
});

it('shares out contradictory rows instead of breaking down', () => {
  const { y } = leastDistance(
    rowsOf(
      [
        [1, 0],
        [1, 0],
      ],
      [2, 4],
      2,
    ),
    STIFFNESS,
    [],
  );
  expect(y[0]).toBeCloseTo(3, 6);
  expect(y[1]).toBeCloseTo(0, 6);
});
