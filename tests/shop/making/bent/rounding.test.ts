/** What rounding to a tape and a dial costs: cases by hand, and against marching the rounded numbers with plain matrices. */
import { describe, expect, test } from 'vitest';
import type { BentTube } from '../../../../src/shop/making/report';
import { designOf, type Extras, randomDesign, tubesOf } from '../designs';

const RADIANS = Math.PI / 180;
const SHAPE = { rotation: 0, angle: 90, radius: 60 };

describe('by hand', () => {
  test('a straight tube: its length alone', () => {
    const [{ rounded }] = tubesOf(designOf([], 300.2)) as [BentTube];
    expect(rounded).toEqual({
      tape: 0.5,
      dial: 0.5,
      position: expect.closeTo(0.2),
      angle: 0,
      length: expect.closeTo(-0.2),
    });
  });

  test('numbers that a tape and a dial have cost nothing', () => {
    // 1° of this radius is 1 mm of arc.
    const shapes = [{ length: 100, rotation: 0, angle: 40, radius: 180 / Math.PI }];
    const [{ rounded }] = tubesOf(designOf(shapes, 80)) as [BentTube];
    expect(rounded.position).toBeLessThan(1e-9);
    expect(rounded.angle).toBeLessThan(1e-9);
    expect(Math.abs(rounded.length)).toBeLessThan(1e-9);
  });

  test('one bend, set a little less than asked: its angle, and where that leads', () => {
    const [{ rounded }] = tubesOf(designOf([{ ...SHAPE, length: 100, angle: 60.2 }], 80)) as [BentTube];
    expect(rounded.angle).toBeCloseTo(0.2, 8);
    const arc = (degrees: number): number => 60 * degrees * RADIANS;
    const end = Math.round((180 + arc(60.2)) * 2) / 2;
    expect(rounded.length).toBeCloseTo(end - (180 + arc(60.2)), 8);
    const place = (degrees: number, last: number): [number, number] => {
      const a = degrees * RADIANS;
      return [60 * Math.sin(a) + last * Math.cos(a), 60 * (1 - Math.cos(a)) + last * Math.sin(a)];
    };
    const [u, v] = [place(60, end - 100 - arc(60)), place(60.2, 80)];
    expect(rounded.position).toBeCloseTo(Math.hypot(u[0] - v[0], u[1] - v[1]), 8);
  });

  test('springback: the dial is rounded, not what is left', () => {
    const tooling = { bender: { testBends: [[100, 90]] as [number, number][] } };
    const [{ rounded }] = tubesOf(designOf([{ ...SHAPE, length: 100, angle: 45.3 }], 80, { tooling })) as [BentTube];
    expect(rounded.angle).toBeCloseTo(50.5 * 0.9 - 45.3, 8);
  });

  test('steps are the workshop’s', () => {
    const workshop = { tape: 1, dial: 2 };
    const [{ rounded }] = tubesOf(designOf([{ ...SHAPE, length: 100.4, angle: 61 }], 80, { workshop })) as [BentTube];
    expect([rounded.tape, rounded.dial]).toEqual([1, 2]);
    expect(rounded.angle).toBeCloseTo(1, 8);
  });
});

/** Four by four, columns of a frame and its place. */
type Matrix = readonly (readonly number[])[];
const times = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => b[0]!.map((_, j) => row.reduce((sum, x, k) => sum + x * b[k]![j]!, 0)));
const along = (x: number, z = 0): Matrix => [
  [1, 0, 0, x],
  [0, 1, 0, 0],
  [0, 0, 1, z],
  [0, 0, 0, 1],
];
const about = (axis: 'x' | 'y', degrees: number): Matrix => {
  const [c, s] = [Math.cos(degrees * RADIANS), Math.sin(degrees * RADIANS)];
  return axis === 'x'
    ? [
        [1, 0, 0, 0],
        [0, c, -s, 0],
        [0, s, c, 0],
        [0, 0, 0, 1],
      ]
    : [
        [c, 0, s, 0],
        [0, 1, 0, 0],
        [-s, 0, c, 0],
        [0, 0, 0, 1],
      ];
};

/** From the rows' own start; bends toward z. */
function march(rows: readonly { length: number; dial: number; angle: number; radius: number }[]): Matrix {
  let frame = along(0);
  let before = 0;
  for (const { length, dial, angle, radius } of rows) {
    frame = times(times(frame, along(length)), about('x', dial - before));
    before = dial;
    frame = times(times(times(frame, along(0, radius)), about('y', -angle)), along(0, -radius));
  }
  return frame;
}

/** The builder's tube, from the printed numbers of the end that it is bent from, in which the other end is placed. */
function byHand(tube: BentTube, { stretch, back }: { stretch: number; back: (set: number) => number }) {
  const fromStart = tube.clampable.fromStart || !tube.clampable.fromEnd;
  const rows = fromStart ? tube.fromStart : tube.fromEnd;
  const on = (step: number, x: number): number => Math.round(x / step) * step;
  let at = on(0.5, fromStart ? tube.trimStart : tube.trimEnd);
  const made = rows.map((row) => {
    const angle = row.angle === 0 ? 0 : back(on(0.5, row.set));
    const length = on(0.5, row.mark) - at;
    at = on(0.5, row.mark) + row.radius * angle * RADIANS * (1 - stretch);
    return { length, dial: row.angle === 0 ? on(0.5, row.dial) : on(0.5, row.dial), angle, radius: row.radius };
  });
  return { rows, made, fromStart };
}

test('as marched by hand (seeds 1 to 80), bent from the start: place, angle, length', () => {
  for (let seed = 1; seed <= 80; seed++) {
    const share = 0.96;
    const extras: Extras = {
      tooling: {
        trimStart: 7.3,
        trimEnd: 11,
        bender: { clamp: 0, tail: 0, stretch: 3, testBends: [[100, 100 * share]] },
      },
    };
    const [tube] = tubesOf(randomDesign(seed, extras)) as [BentTube];
    const { rows, made, fromStart } = byHand(tube, { stretch: 0.03, back: (set) => set * share });
    expect(fromStart).toBe(true);
    const [real, nominal] = [march(made), march(rows)];
    const off = Math.hypot(...[0, 1, 2].map((k) => real[k]![3]! - nominal[k]![3]!));
    const cosine = [0, 1, 2].reduce((sum, k) => sum + real[k]![0]! * nominal[k]![0]!, 0);
    expect(tube.rounded.position, `seed ${seed}`).toBeCloseTo(off, 6);
    expect(Math.cos(tube.rounded.angle * RADIANS), `seed ${seed}`).toBeCloseTo(cosine, 10);
    const long = (list: readonly { length: number; angle: number; radius: number }[]): number =>
      list.reduce((sum, { length, angle, radius }) => sum + length + radius * angle * RADIANS, 0);
    expect(tube.rounded.length, `seed ${seed}`).toBeCloseTo(long(made) - long(rows), 8);
  }
});

test('bent from its other end: marched from there, then looked at with its start in place (seeds 1 to 40)', () => {
  for (let seed = 1; seed <= 40; seed++) {
    // Its start serves as a tail alone.
    const shapes = [
      { length: 12, rotation: 0, angle: 30.3 + seed, radius: 60 },
      { length: 50.2, rotation: 33.3, angle: 70.6, radius: 60 },
      { length: 61.7, rotation: -100.2, angle: 40.1, radius: 75 },
    ];
    const tooling = { bender: { clamp: 40, tail: 10, stretch: 2 } };
    const [tube] = tubesOf(designOf(shapes, 44.4, { tooling })) as [BentTube];
    expect(tube.clampable).toEqual({ fromStart: false, fromEnd: true });
    const { rows, made } = byHand(tube, { stretch: 0.02, back: (set) => set });
    // Where the sawn tube begins, seen from its finished start: the two marches meet there.
    const inverse = (m: Matrix): Matrix => {
      const r = [0, 1, 2].map((i) => [0, 1, 2].map((j) => m[j]![i]!));
      const t = r.map((row) => -row.reduce((sum, x, k) => sum + x * m[k]![3]!, 0));
      return [...r.map((row, i) => [...row, t[i]!]), [0, 0, 0, 1]];
    };
    const [real, nominal] = [made, rows].map((list) => {
      const bends = list.slice(0, -1);
      // Turned so that the last bend made, which is the first of the tube, lies in its plane.
      const level = { ...list.at(-1)!, dial: bends.at(-1)!.dial };
      return inverse(march([...bends, level]));
    }) as [Matrix, Matrix];
    const off = Math.hypot(...[0, 1, 2].map((k) => real[k]![3]! - nominal[k]![3]!));
    expect(tube.rounded.position, `seed ${seed}`).toBeCloseTo(off, 6);
  }
});

test('a split tube is rounded piece by piece', () => {
  const shapes = [
    { ...SHAPE, length: 60.2 },
    { ...SHAPE, length: 70.1, rotation: 33.3, angle: 47.7 },
  ];
  const both = tubesOf(designOf(shapes, 55, { runner: { splits: [2] } }));
  expect(both.map(({ rounded }) => rounded.angle)).toEqual([0, 47.7 - 47.5].map((x) => expect.closeTo(x, 8)));
});
