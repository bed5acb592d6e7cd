/** The gradients worked backwards by hand, against differences of the forward formulas. */
import { describe, expect, it } from 'vitest';
import { resolveHeader } from '../../../geometry';
import {
  type BendPath,
  bendPath,
  measurePath,
  pushLength,
  pushOnArc,
  pushOnStraight,
  pushStraight,
  pushTurn,
} from '../../../geometry/layout/bendPath';
import { layoutProblem, place, pull } from '../../../geometry/layout/layoutProblem';
import { pointOnLink } from '../../../geometry/layout/links';
import { loadLayout } from '../../layouts/load';
import { random } from '../../random';

const STEP = 1e-4;

/** Two primaries and a movable merge, so that every kind of unknown is met. */
const { design } = loadLayout('known', 'c2-i4-4-2-1');

describe('gradients of a runner, seed 11', () => {
  const problem = layoutProblem(resolveHeader(design));
  const next = random(11);
  const x = problem.start.map((value, k) => value + next.between(-1, 1) * (k % 5 > 2 && k < 15 ? 0.02 : 5));

  const measures: [string, (path: BendPath) => number, (path: BendPath) => void][] = [
    ['length', (p) => p.length, (p) => pushLength(p, 1)],
    ['first straight', (p) => p.straights[0]!, (p) => pushStraight(p, 0, 1)],
    ['second straight', (p) => p.straights[1]!, (p) => pushStraight(p, 1, 1)],
    ['last straight', (p) => p.straights[p.bends]!, (p) => pushStraight(p, p.bends, 1)],
    ['first turn', (p) => p.turns[0]!, (p) => pushTurn(p, 0, 1)],
    ['last turn', (p) => p.turns[p.bends - 1]!, (p) => pushTurn(p, p.bends - 1, 1)],
  ];

  for (const [i, runner] of problem.runners.entries()) {
    const gradient = (push: (path: BendPath) => void): Float64Array => {
      place(problem, x);
      const row = new Float64Array(problem.unknowns);
      push(runner.path);
      pull(runner, row, 0);
      return row;
    };
    const difference = (value: (path: BendPath) => number, k: number): number => {
      const at = (step: number): number => {
        place(
          problem,
          x.map((old, j) => (j === k ? old + step : old)),
        );
        return value(runner.path);
      };
      return (at(STEP) - at(-STEP)) / (2 * STEP);
    };

    for (const [name, value, push] of measures)
      it(`${name} of runner ${i}`, () => {
        const row = gradient(push);
        expect(row.some((g) => Math.abs(g) > 1e-6)).toBe(true);
        for (let k = 0; k < problem.unknowns; k++) expect(row[k]).toBeCloseTo(difference(value, k), 4);
      });

    it(`a place on the first arc of runner ${i}`, () => {
      const w = [0.36, -0.48, 0.8] as const;
      const row = gradient((p) => pushOnArc(p, 0, 0.4, ...w));
      const along = (): number => {
        const out = new Float64Array(3);
        pointOnLink(runner, 0, true, 0.4, out, 0);
        return w[0] * out[0]! + w[1] * out[1]! + w[2] * out[2]!;
      };
      for (let k = 0; k < problem.unknowns; k++) expect(row[k]).toBeCloseTo(difference(along, k), 4);
    });
  }
});

it('moves a place on a straight with both of its points, across the straight', () => {
  const path = bendPath([50, 50]);
  path.points.set([0, 0, 0, 0, 100, 0, 120, 100, 0, 120, 300, 0]);
  path.directions.set([0, 1, 0], 0);
  path.directions.set([0, 1, 0], 6);
  measurePath(path);
  pushOnStraight(path, 1, 30, 0, 0, 1);
  expect(path.pointsBar[5]).toBeCloseTo(0.75);
  expect(path.pointsBar[8]).toBeCloseTo(0.25);
});
