/** Copes and mitres, unrolled, against published values; keys of fabrication.json in the tests. */
import { expect, test } from 'vitest';
import { copeOrdinate, mitreCut, saddleCut, segmentedBend, type WrapCut } from '../../geometry';
import { published } from './published';

const RADIANS = Math.PI / 180;
const INCH = 25.4;
const about = { id: 'a', title: 'A', wall: 1.65 };

/** How far the cut dips below the piece's longest line. */
const depthOf = (cut: WrapCut): number => cut.height(cut.heel) - cut.height(cut.crotch);

type Table = { Rh: number; rb: number; angle: number; offset: number; t: number[] };

test.each(published<Table[]>('cope.tables'))(
  'sixteen ordinates (cope.tables): $rb on $Rh at $angle°, offset $offset',
  ({ Rh, rb, angle, offset, t }) => {
    const a = angle * RADIANS;
    const cut = saddleCut({ ...about, outsideDiameter: 2 * rb, headerRadius: Rh, angle: a, offset });
    expect(t).toHaveLength(16);
    const most = Math.max(...t);
    for (const [i, ordinate] of t.entries()) {
      const phi = (i * Math.PI) / 8;
      expect(copeOrdinate(Rh, rb, a, offset, phi)).toBeCloseTo(ordinate, 3);
      // The curve itself, which may dip between two stations where the table does not look.
      expect(Math.abs(cut.height(0) - cut.height(phi) - (ordinate - t[0]!))).toBeLessThan(2e-4);
    }
    expect(cut.height(cut.crotch)).toBeLessThanOrEqual(30 + 1e-9);
    expect(copeOrdinate(Rh, rb, a, offset, cut.crotch)).toBeGreaterThan(most - 1e-4);
  },
);

test('equal tubes, square: as deep as one radius (cope.eq)', () => {
  const cut = saddleCut({ ...about, outsideDiameter: 1.5 * INCH, headerRadius: 0.75 * INCH, angle: Math.PI / 2 });
  expect(depthOf(cut) / INCH).toBeCloseTo(published<number>('cope.eq'), 9);
});

test('4.5 on 6.625, square (cope.4on6)', () => {
  const cut = saddleCut({
    ...about,
    outsideDiameter: 4.5 * INCH,
    headerRadius: (6.625 / 2) * INCH,
    angle: Math.PI / 2,
  });
  expect(Math.abs(depthOf(cut) / INCH - published<number>('cope.4on6'))).toBeLessThan(0.0005);
});

test('by the outside of the branch or by its bore (cope.wall)', () => {
  const it = published<{ OD_based: number; ID_based: number; on_76_2: { OD: number; ID: number } }>('cope.wall');
  const depth = (headerRadius: number, measuredOn: 'outside' | 'bore') =>
    depthOf(saddleCut({ ...about, outsideDiameter: 50.8, headerRadius, angle: Math.PI / 2, measuredOn }));
  expect(depth(25.4, 'outside')).toBeCloseTo(it.OD_based, 3);
  expect(depth(25.4, 'bore')).toBeCloseTo(it.ID_based, 3);
  expect(depth(38.1, 'outside')).toBeCloseTo(it.on_76_2.OD, 3);
  expect(depth(38.1, 'bore')).toBeCloseTo(it.on_76_2.ID, 3);
});

// OD 273, 90° by 4 cuts, radius 381.
test('a segmented bend of large pipe (mit.exA)', () => {
  const it = published<{ a: number; L1: number; L2: number; cb: number }>('mit.exA');
  const bend = segmentedBend(273, 381, 90 * RADIANS, 4);
  expect(bend.cutAngle / RADIANS).toBeCloseTo(it.a, 10);
  expect(bend.middle.centerline).toBeCloseTo(it.L1, 5);
  expect(bend.end.centerline).toBeCloseTo(it.L2, 5);
  expect(bend.cutback).toBeCloseTo(it.cb, 5);
  const cut = mitreCut({ ...about, outsideDiameter: 273, cutAngle: bend.cutAngle });
  expect(depthOf(cut)).toBeCloseTo(2 * it.cb, 5);
});

test('84·tan 15° (mit.exB)', () => {
  expect(segmentedBend(168, 300, 90 * RADIANS, 3).cutback).toBeCloseTo(published<number>('mit.exB'), 5);
});

type Pie = Record<'od' | 'deg' | 'joints' | 'clr' | 'cut' | 'midCL' | 'endCL' | 'long' | 'short', number> & {
  drop12: number[];
};

test.each(published<Pie[]>('mit.pie'))('pie cuts (mit.pie): $od, $deg° by $joints joints', (it) => {
  const bend = segmentedBend(it.od, it.clr, it.deg * RADIANS, it.joints);
  expect(bend.cutAngle / RADIANS).toBeCloseTo(it.cut, 9);
  expect(bend.middle.centerline).toBeCloseTo(it.midCL, 3);
  expect(bend.end.centerline).toBeCloseTo(it.endCL, 3);
  expect(bend.middle.long).toBeCloseTo(it.long, 3);
  expect(bend.middle.short).toBeCloseTo(it.short, 3);
  const cut = mitreCut({ ...about, outsideDiameter: it.od, cutAngle: bend.cutAngle });
  expect(it.drop12).toHaveLength(13);
  for (const [i, drop] of it.drop12.entries())
    expect(Math.abs(cut.height(0) - cut.height((i * Math.PI) / 6) - drop)).toBeLessThan(1e-4);
});
