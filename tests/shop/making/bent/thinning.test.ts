/** Walls and roundness of bends by the named rules, against published values; keys of fabrication.json in the tests. */
import { describe, expect, test } from 'vitest';
import { type ThinningRule, thinningWords } from '../../../../src/shop/making/bent/thinning';
import { keysLike, published } from '../../../reference/published';
import { designOf, tubesOf } from '../designs';

const OD = 40;
const WALL = 2;
const oneBend = (ratio: number, thinning: ThinningRule, { od = OD, wall = WALL, angle = 90 } = {}) => {
  const shapes = [{ length: 80, rotation: 0, angle, radius: ratio * od }];
  const tooling = { centerlineRadius: ratio * od };
  const tube = { outsideDiameter: od, wall };
  return tubesOf(designOf(shapes, 80, { tube, tooling, workshop: { thinning } }))[0]!.thinned[0]!;
};

// Recomputed; the geometric formula and the standards' were read in their sources.
const ratios = keysLike('thin.').filter((key) => key.endsWith('D'));
test('eight ratios are published', () => expect(ratios).toHaveLength(8));

describe.each(ratios)('%s', (key) => {
  const known = published<Record<'thinning_geom_pct' | 'tema_t0_over_t1' | 'b31_I_extrados', number>>(key);
  const ratio = Number(key.slice('thin.'.length, -1));

  test('geometric, TEMA, B31.1', () => {
    const geometric = oneBend(ratio, 'geometric');
    expect(geometric.ratio).toBeCloseTo(ratio, 10);
    expect(geometric.percent).toBeCloseTo(known.thinning_geom_pct, 4);
    expect(geometric.wall).toBeCloseTo(WALL * (1 - known.thinning_geom_pct / 100), 4);
    const tema = oneBend(ratio, 'tema');
    expect(WALL / tema.wall).toBeCloseTo(known.tema_t0_over_t1, 5);
    expect(tema.percent).toBeCloseTo(100 * (1 - 1 / known.tema_t0_over_t1), 3);
    const b311 = oneBend(ratio, 'b31.1');
    expect(b311.wall / WALL).toBeCloseTo(known.b31_I_extrados, 5);
    expect(b311.percent).toBeCloseTo(100 * (1 - known.b31_I_extrados), 3);
  });
});

// Read in source: least wall to buy for a wall that is needed, by radius in diameters.
test.each(Object.entries(published<Record<string, number>>('thin.b311')))(
  'a tube bought as B31.1 recommends for %s diameters (thin.b311), %d times the wall, keeps the wall that its factor asks for',
  (ratio, factor) => {
    expect(oneBend(Number(ratio), 'b31.1', { wall: WALL * factor }).wall).toBeGreaterThanOrEqual(WALL);
  },
);

// Read in source: percent of the outside diameter.
test('out of round at most as B31.1 (oval.b311) and TEMA (oval.tema) say; by geometry, which says nothing, as B31.1', () => {
  const most = (rule: ThinningRule): number => (100 * oneBend(2, rule).outOfRound) / OD;
  expect(most('b31.1')).toBeCloseTo(published<number>('oval.b311'), 10);
  expect(most('geometric')).toBeCloseTo(published<number>('oval.b311'), 10);
  expect(most('tema')).toBeCloseTo(published<number>('oval.tema'), 10);
});

test('the words name the standard and its limit', () => {
  expect(thinningWords('geometric').outOfRound).toMatch(/8 %.*ASME B31\.1/);
  expect(thinningWords('tema').outOfRound).toMatch(/10 %.*TEMA RCB-2\.31/);
  expect(thinningWords('b31.1').outOfRound).toMatch(/8 %.*ASME B31\.1/);
  expect(thinningWords('tema').wall).toMatch(/TEMA/);
  expect(thinningWords('b31.1').wall).toMatch(/102\.4\.5/);
});

// Formula read in source, examples recomputed: (2 Kr + 0.2 OD/t + B/180) / (R/OD), Kr = 2.
test.each([
  [76.2, 'ex_50_8x1_65_clr76_2_90'],
  [101.6, 'ex_clr101_6'],
] as const)('the ratio is the one that bending difficulty is told by (wallfactor), radius %d', (radius, key) => {
  const { ratio } = oneBend(radius / 50.8, 'geometric', { od: 50.8, wall: 1.65 });
  const difficulty = (2 * 2 + (0.2 * 50.8) / 1.65 + 90 / 180) / ratio;
  expect(difficulty).toBeCloseTo(published<Record<string, number>>('wallfactor')[key]!, 3);
});
