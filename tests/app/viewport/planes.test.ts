/** Cuts of the view: where their planes lie, and which side is gone. */
import { describe, expect, it } from 'vitest';
import { cutPlanes, extentOf, isCutAway } from '../../../src/app/viewport/cuts/planes';
import { roundLength } from '../../../src/app/viewport/picture/compose';
import { useViewState } from '../../../src/app/viewState';

const extent = extentOf([
  { at: [0, 0, 0], radius: 10 },
  { at: [100, 50, -200], radius: 20 },
]);

describe('cuts', () => {
  it('span the balls and start through the middle', () => {
    expect(extent).toEqual({ low: [-10, -10, -220], high: [120, 70, 10] });
    const { cuts } = useViewState.getState();
    const planes = cutPlanes({ ...cuts, z: { on: true, at: null, flip: false } }, extent);
    expect(planes).toEqual([{ axis: 2, at: -105, keep: -1 }]);
  });

  it('take away what lies beyond, or with flip what lies below; several together', () => {
    const { cuts } = useViewState.getState();
    const planes = cutPlanes(
      { x: { on: true, at: 40, flip: false }, y: { on: true, at: 5, flip: true }, z: cuts.z },
      extent,
    );
    expect(isCutAway(planes, [39, 6, 1000])).toBe(false);
    expect(isCutAway(planes, [41, 6, 0])).toBe(true);
    expect(isCutAway(planes, [39, 4, 0])).toBe(true);
    expect(isCutAway([], [41, 4, 0])).toBe(false);
  });
});

it('a scale bar is 1, 2 or 5 times a power of ten, never longer than its room', () => {
  expect([99, 100, 199, 250, 700, 0.3].map(roundLength)).toEqual(
    [50, 100, 100, 200, 500, 0.2].map((x) => expect.closeTo(x, 9)),
  );
});
