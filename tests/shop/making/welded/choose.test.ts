/** The choice of legs against trying everything on a grid; what no plan may do, on random shelves. */
import { describe, expect, test } from 'vitest';
import { chooseCuts, type Given } from '../../../../src/shop/making/welded/choose';
import type { Legs } from '../../../../src/shop/making/welded/stock';
import type { StraightCut } from '../../../../src/shop/making/welded/straight';
import { SAME_ANGLE, sameTube } from '../../../../src/shop/nest/sameTube';
import { seeds } from '../../../geometry/curve/lines';
import { type Random, random } from '../../../random';
import { ONE_BEND, oneRunner } from '../../designs';
import { bend, madeOf, randomWelded } from './designs';

const LIMITS = { setback: 10, leastBar: 12 };
const FREE = () => ({ free: 360, freeInPlace: 360 });
type Score = [pieces: number, near: number, bar: number];
const short = (room: number) => Math.max(0, LIMITS.setback - room) ** 2;
const lesser = (a: Score, b: Score) =>
  a[0] - b[0] || (Math.abs(a[1] - b[1]) > 1e-6 ? a[1] - b[1] : a[2] - b[2] > 1e-6 ? 1 : a[2] - b[2] < -1e-6 ? -1 : 0);
const total = (scores: readonly Score[]): Score =>
  scores.reduce(([p, n, b], s) => [p + s[0], n + s[1], b + s[2]], [0, 0, 0]);

/** By its legs alone, without asking how it was found. */
function score(length: number, out: number, bar: number, into: number, first: boolean, last: boolean): Score {
  const joints = bar > 0 ? [first ? [] : [out], last ? [] : [length - into]].flat() : first || last ? [] : [out];
  const near = joints.reduce((sum, j) => sum + (first ? 0 : short(j)) + (last ? 0 : short(length - j)), 0);
  return [bar > 0 ? 1 : 0, near + (bar > 0 ? Math.max(0, LIMITS.leastBar - bar) ** 2 : 0), bar];
}

function bestOnGrid(length: number, before: number | null, behind: number | null): Score {
  const [first, last] = [before === null, behind === null];
  if (length === 0) return score(0, 0, 0, 0, first, last);
  let best: Score = [9, 0, 0];
  for (let out = 0; out <= Math.min(length, before ?? 0); out++)
    for (let into = 0; into <= Math.min(length - out, behind ?? 0); into++) {
      const bar = length - out - into;
      if (bar > 0 && bar < Math.min(LIMITS.leastBar, length)) continue;
      const found = score(length, out, bar, into, first, last);
      if (lesser(found, best) < 0) best = found;
    }
  return best;
}

function everyWay(ways: readonly (readonly Legs[])[]): Legs[][] {
  return ways.reduce<Legs[][]>((all, list) => all.flatMap((some) => list.map((way) => [...some, way])), [[]]);
}

const problem = (next: Random) => {
  const bends = next.whole(1, 4);
  const straights = Array.from(
    { length: bends + 1 },
    (): Given => ({
      length: next() < 0.2 ? 0 : next() < 0.3 ? next.whole(1, 30) : next.whole(20, 120),
      trim: 0,
      sunk: 0,
    }),
  );
  const leg = () => next.whole(0, 70);
  const ways = Array.from({ length: bends }, (): Legs[] => {
    const one = leg();
    return next() < 0.3
      ? [[leg(), leg()]]
      : [
          [one, 0],
          [0, one],
        ]; // prettier-ignore
  });
  return { straights, ways };
};

test.each(seeds(60))('no plan on a grid of a millimetre is better, seed %i', (seed) => {
  const { straights, ways } = problem(random(seed));
  const cuts = chooseCuts(straights, ways, LIMITS, FREE);
  const mine = total(
    cuts.map(({ out, bar, in: into }, i) =>
      score(straights[i]!.length, out, bar, into, i === 0, i === straights.length - 1),
    ),
  );
  let best: Score = [99, 0, 0];
  for (const legs of everyWay(ways)) {
    const found = total(
      straights.map(({ length }, i) => bestOnGrid(length, legs[i - 1]?.[1] ?? null, legs[i]?.[0] ?? null)),
    );
    if (lesser(found, best) < 0) best = found;
  }
  expect(lesser(mine, best), `${mine} against ${best}`).toBeLessThanOrEqual(0);
  expectPossible(cuts, straights, ways);
});

/** Each bend's two legs are those of one of its ways; straights add up. */
function expectPossible(cuts: readonly StraightCut[], straights: readonly Given[], ways: readonly (readonly Legs[])[]) {
  for (const [i, { length }] of straights.entries()) {
    const { out, bar, in: into } = cuts[i]!;
    expect(out + bar + into).toBeCloseTo(length, 9);
  }
  for (const [i, list] of ways.entries())
    expect(list.some(([a, b]) => cuts[i]!.in <= a + 1e-9 && cuts[i + 1]!.out <= b + 1e-9)).toBe(true);
}

test.each(seeds(80))('every piece can be sawn from what is there, seed %i', (seed) => {
  const design = randomWelded(seed);
  const { parts, tubes } = madeOf(design);
  const { tube } = parts[0]!.resolved;
  for (const piece of tubes[0]!.pieces) {
    if (piece.kind === 'straight') continue;
    const fits = design.workshop!.bends!.some(({ legs: [a, b], ...stock }) => {
      if (!sameTube(stock, tube) || Math.abs(stock.radius - piece.radius) > 0.05) return false;
      const [ahead, behind] = [piece.sawnIn - 1e-9, piece.sawnOut - 1e-9];
      if (Math.abs(stock.angle - piece.angle) <= SAME_ANGLE)
        return (ahead <= a && behind <= b) || (ahead <= b && behind <= a);
      const longest = Math.max(a, b);
      return stock.angle > piece.angle && ((ahead <= longest && behind <= 0) || (ahead <= 0 && behind <= longest));
    });
    // Gaps wider than shrinkage saw a little off a leg; never below nothing.
    expect(fits, piece.id).toBe(true);
    expect(Math.min(piece.sawnIn, piece.sawnOut)).toBeGreaterThanOrEqual(0);
  }
});

describe('one bend between two straights', () => {
  const made = (bends: Parameters<typeof bend>[], more = {}) =>
    madeOf(
      oneRunner({
        points: [
          [0, 0, 0],
          [0, 150, 0],
          [0, 150, -130],
        ],
        ...more,
      }),
      { bends: bends.map((b) => bend(...b)) },
    ) // prettier-ignore
      .tubes[0]!.pieces.map(({ kind, in: ahead, angle, out }) =>
        [kind, ahead, angle, out].map((x) => (typeof x === 'number' ? Number(x.toFixed(6)) : x)),
      ); // prettier-ignore

  test('of a stock bend as wide: one piece with both legs, also the other way round', () => {
    expect(made([[90]])).toEqual([['bend', 90, 90, 70]]);
    expect(made([[90, 60, [75, 95]]])).toEqual([['bend', 90, 90, 70]]);
    expect(made([[90, 60, [95, 75]]])).toEqual([['bend', 90, 90, 70]]);
  });

  test('out of a U: one leg, the longer straight, and the other from bar', () => {
    expect(made([[180]])).toEqual([
      ['bend', 90, 90, 0],
      ['straight', 70, 0, 0],
    ]);
  });

  test('out of a J by its long leg; where neither leg reaches, both welds keep their distance', () => {
    expect(made([[180, 60, [20, 80]]])).toEqual([
      ['straight', 90, 0, 0],
      ['bend', 0, 90, 70],
    ]);
    expect(made([[180, 60, [20, 50]]])).toEqual([
      ['straight', 40, 0, 0],
      ['bend', 50, 90, 0],
      ['straight', 70, 0, 0],
    ]);
  });

  test('of two 45s: a joint in the arc with no turn, both legs kept', () => {
    expect(made([[45]])).toEqual([
      ['bend', 90, 45, 0],
      ['bend', 0, 45, 70],
    ]);
  });
});

test('of two straights that bar could make, not the one that would be a ring', () => {
  const design = oneRunner({
    points: [
      [0, 0, 0],
      [0, 66, 0],
      [0, 66, -180],
    ],
  }); // prettier-ignore
  expect(
    madeOf(design, { bends: [bend(180, 60, [130, 130])] }).tubes[0]!.pieces.map((p) => [p.kind, Math.round(p.in)]),
  ).toEqual([
    ['bend', 6],
    ['straight', 120],
  ]);
});

test('what is on sale counts before what lies on the shelf, and the shelf where nothing is on sale', () => {
  const legs = (buy: boolean) => {
    const bends = [
      { ...bend(90), id: 'long', legs: [900, 300] as const, count: 1, buy: false },
      { ...bend(90), id: 'short', legs: [50, 50] as const, buy },
    ];
    return madeOf(oneRunner(ONE_BEND), { bends }).tubes[0]!.pieces.length;
  };
  expect(legs(true)).toBe(3);
  expect(legs(false)).toBe(1);
});
