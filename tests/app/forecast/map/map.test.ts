/** The map of sizes: rooms of the cells, the best, steps by keys, and what of a rule is seen. */
import { describe, expect, it } from 'vitest';
import {
  apart,
  axisOf,
  bestOf,
  decimalsOf,
  edgeWays,
  planMap,
  seenOf,
  shareOf,
  stepFrom,
  triedOf,
} from '../../../../src/app/forecast/map/mapPlan';
import type { MapCell } from '../../../../src/app/forecast/map/types';

const cells: MapCell[] = [0.4, 0.5, 0.7].flatMap((length) =>
  [0.036, 0.04].map((bore) => ({ length, bore, torque: 180 - 40 * (length - 0.5) ** 2 - 1e5 * (bore - 0.04) ** 2 })),
);
const arrangement = { key: 'a', name: '4 into 1', outlet: null, cells, rules: [] };

describe('the map', () => {
  it('gives each size the room half way to its neighbours, to scale', () => {
    expect(axisOf([0.5, 0.4, 0.7, 0.5], 0.05).edges).toEqual([0.35, 0.45, 0.6, 0.8].map((e) => expect.closeTo(e, 9)));
    expect(axisOf([0.5], 0.05).edges).toEqual([0.45, 0.55].map((e) => expect.closeTo(e, 9)));
    const plan = planMap(cells, { left: 10, top: 20, width: 450, height: 200 });
    expect(plan.boxOf({ length: 0.5, bore: 0.04 })).toEqual({
      left: expect.closeTo(110, 6),
      top: expect.closeTo(20, 6),
      width: expect.closeTo(150, 6),
      height: expect.closeTo(100, 6),
    });
    expect(plan.boxOf({ length: 0.55, bore: 0.04 })).toBeNull();
    expect(plan.toX(0.35)).toBeCloseTo(10, 9);
  });

  it('finds the best of what was followed', () => {
    expect(bestOf(arrangement)).toMatchObject({ length: 0.5, bore: 0.04 });
    const open = { ...arrangement, cells: cells.map((cell) => ({ ...cell, torque: null })) };
    expect(bestOf(open)).toBeNull();
  });

  it('shows decimals where the sizes lie close', () => {
    expect(decimalsOf([{ torque: 180 }, { torque: 183 }])).toBe(1);
    expect(decimalsOf([{ torque: 150 }, { torque: 183 }])).toBe(0);
  });

  it('steps to the next size that way, over gaps, and stays at the edge', () => {
    const from = { length: 0.4, bore: 0.04 };
    expect(stepFrom(cells, from, 'ArrowRight')).toMatchObject({ length: 0.5, bore: 0.04 });
    expect(
      stepFrom(
        cells.filter(({ length }) => length !== 0.5),
        from,
        'ArrowRight',
      ),
    ).toMatchObject({ length: 0.7 });
    expect(stepFrom(cells, from, 'ArrowDown')).toMatchObject({ length: 0.4, bore: 0.036 });
    expect(stepFrom(cells, from, 'ArrowUp')).toBeNull();
    expect(stepFrom(cells, from, 'Enter')).toBeNull();
  });

  it('cuts a rule’s range at its own edges, and says whether its middle is seen', () => {
    const axis = axisOf([0.4, 0.5, 0.7], 0.05);
    expect(seenOf({ low: 0.2, middle: 0.3, high: 0.42 }, axis)).toEqual({
      low: expect.closeTo(0.35, 9),
      high: 0.42,
      middle: false,
    });
    expect(seenOf({ low: 0.9, middle: 1, high: 1.1 }, axis)).toBeNull();
  });

  it('counts what was tried, and colours no difference that the error could be', () => {
    const part = cells.map((cell, k) => (k < 2 ? cell : { ...cell, torque: null }));
    expect(triedOf({ ...arrangement, cells: part })).toEqual({ tried: 2, all: 6 });
    const close = [{ torque: 180 }, { torque: 179.6 }];
    expect(shareOf(180, close, 2)).toBe(1);
    expect(shareOf(179.6, close, 2)).toBeCloseTo(0.8, 9);
    expect(shareOf(179.6, close, null)).toBeGreaterThan(0.7);
    expect(shareOf(150, [{ torque: 180 }, { torque: 150 }], 2)).toBe(0);
  });

  it('says where a better size may lie beyond', () => {
    expect(edgeWays({ length: 0.5, bore: 0.04 }, cells)).toEqual(['wider']);
    expect(edgeWays({ length: 0.4, bore: 0.036 }, cells)).toEqual(['shorter', 'narrower']);
    expect(
      edgeWays(
        { length: 0.5, bore: 0.04 },
        cells.filter(({ bore }) => bore === 0.04),
      ),
    ).toEqual([]);
  });

  it('keeps letters apart and within, in their order', () => {
    expect(apart([100, 102, 50], 13, 0, 200)).toEqual([100, 113, 50]);
    expect(apart([195, 198], 13, 0, 200)).toEqual([187, 200]);
  });
});
