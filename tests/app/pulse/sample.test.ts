/** Values and pixels read off a picture whose every value is known, and where panels, ticks and curves lie. */
import { describe, expect, it } from 'vitest';
import { coloursFor, legendRange } from '../../../src/app/pulse/colourScale';
import { movedBy } from '../../../src/app/pulse/cursorKeys';
import { curvePath } from '../../../src/app/pulse/curves';
import { endWords } from '../../../src/app/pulse/endWords';
import { framePicture, pxToTime, timeToPx, xToPx } from '../../../src/app/pulse/frame';
import { paintPipe } from '../../../src/app/pulse/paint';
import { placesFor } from '../../../src/app/pulse/places';
import { GAP, panelAt, planPanels } from '../../../src/app/pulse/plan';
import { gaugeOf, valueText, withUnit, wordsFor } from '../../../src/app/pulse/quantities';
import { ARM, ramp } from '../../../src/app/pulse/ramp';
import { extentOf, rangeOf, rowsOf, valueAt } from '../../../src/app/pulse/sample';
import { decimalsFor, roundRange, roundStep, roundUp, ticksIn, tickText } from '../../../src/app/pulse/scale';
import { timeText } from '../../../src/app/pulse/words';
import type { RigEnd } from '../../../src/pulse/rig/types';
import { pressureAt, RIG, runUntil } from './rigs';

const whole = runUntil(0.01);
const picture = whole.picture!;

describe('a value of the picture', () => {
  it('is linear between cell centres and rows, and the outermost cell’s own beyond its centre', () => {
    for (const [x, time] of [
      [0.31, 0.0034],
      [0.77, 0.0091],
      [0.05, 0],
      [0.95, 0.01],
    ] as const) {
      const found = valueAt(picture, 11, 0, x, time, 'pressure')!;
      // Values are kept in single precision.
      expect(Math.abs(found - pressureAt(x, time))).toBeLessThan(0.02);
    }
    expect(valueAt(picture, 11, 0, 0, 0, 'pressure')).toBeCloseTo(pressureAt(0.05, 0), 1);
    expect(valueAt(picture, 11, 1, 0.5, 0.01, 'velocity')).toBeCloseTo(0.45, 6);
  });

  it('is none beyond what the run has come to', () => {
    const half = runUntil(0.005);
    expect(rowsOf(half)).toBe(6);
    expect(valueAt(half.picture!, 6, 0, 0.5, 0.005, 'temperature')).toBeCloseTo(300.005, 4);
    expect(valueAt(half.picture!, 6, 0, 0.5, 0.0051, 'pressure')).toBe(null);
    // Where room for all rows is there from the start, only those that were come to count.
    expect(rowsOf({ picture, time: 0.0035 })).toBe(4);
    expect(rowsOf({ picture: null, time: 1 })).toBe(0);
  });

  it('lies within the range, which is that of all pipes', () => {
    const { low, high } = rangeOf(picture, 11, 'pressure')!;
    expect(low).toBeCloseTo(pressureAt(0.05, 0), 1);
    expect(high).toBeCloseTo(pressureAt(0.95, 0.01), 1);
    expect(rangeOf(picture, 1, 'pressure')!.high).toBeCloseTo(pressureAt(0.95, 0), 1);
    expect(rangeOf(picture, 0, 'pressure')).toBe(null);
  });

  it('is told of the pipe from face to face', () => {
    const [from, to] = extentOf(picture.pipes[1]!);
    expect(from).toBeCloseTo(0, 12);
    expect(to).toBeCloseTo(0.5, 12);
  });
});

describe('its pixels', () => {
  const scale = { middle: pressureAt(0.5, 0.005), half: 1e4 };
  const paint = (rows: number) => paintPipe(picture, rows, 0, 'pressure', scale, RIG.duration, 'light', 40, 20);
  const pixel = (of: ReturnType<typeof paint>, i: number, j: number) => [
    ...of.rgba.subarray(4 * (j * 40 + i), 4 * (j * 40 + i) + 4),
  ];

  it('have time upward and x to the right', () => {
    const shades = ramp('light');
    const expected = (i: number, j: number) => {
      const value = pressureAt((i + 0.5) / 40, ((20 - j - 0.5) / 20) * RIG.duration);
      return shades[Math.round(ARM * (1 + (value - scale.middle) / scale.half))]!;
    };
    const painted = paint(11);
    for (const [i, j] of [
      [5, 3],
      [33, 3],
      [5, 16],
      [33, 16],
      [20, 10],
    ] as const) {
      const [r, g, b, alpha] = pixel(painted, i, j);
      expect(alpha).toBe(255);
      for (const [k, part] of [r, g, b].entries()) expect(Math.abs(part! - expected(i, j)[k]!)).toBeLessThan(4);
    }
  });

  it('stay clear where the run has not come to, and where there is no number', () => {
    const half = paint(6);
    expect(pixel(half, 10, 0)).toEqual([0, 0, 0, 0]);
    expect(pixel(half, 10, 8)).toEqual([0, 0, 0, 0]);
    expect(pixel(half, 10, 11)[3]).toBe(255);
    const broken = structuredClone(picture);
    broken.pipes[0]!.pressure.fill(Number.NaN);
    const painted = paintPipe(broken, 11, 0, 'pressure', scale, RIG.duration, 'light', 4, 4);
    expect([...painted.rgba].every((c) => c === 0)).toBe(true);
  });
});

describe('the colours', () => {
  it('turn round ambient, reach as far either way as the rarest value, and the legend shows only what there is', () => {
    const colours = coloursFor('pressure', RIG, { low: 91_325, high: 501_325 }, 1);
    expect(colours).toMatchObject({ middle: 101.325, half: 400, low: 91.325, high: 501.325 });
    const [from, to] = legendRange(colours);
    expect(from).toBeGreaterThan(0);
    expect(to).toBeCloseTo(501.325, 6);
    expect(coloursFor('pressure', RIG, { low: 91_325, high: 501_325 }, 0.25).half).toBe(100);
    expect(coloursFor('velocity', RIG, { low: -33, high: 12 }, 1)).toMatchObject({ middle: 0, half: 40 });
  });

  it('stay pale for gas at rest', () => {
    expect(coloursFor('pressure', RIG, { low: 101_325, high: 101_325.0001 }, 1).half).toBeCloseTo(0.6, 12);
    expect(coloursFor('temperature', RIG, null, 1).half).toBeCloseTo(1.5, 12);
  });
});

it('rigs without dimensions have their colours and their decimals too', () => {
  const bare = { gas: { gamma: 1.4, gasConstant: 1 }, ambient: { pressure: 1, temperature: 1 } };
  const { half, decimals } = coloursFor('pressure', bare, { low: 0.1, high: 1 }, 1);
  // In their own numbers, under no unit.
  expect(half).toBeCloseTo(1, 12);
  expect(valueText('pressure', 0.123456, decimals)).toBe('0.1235');
  expect(withUnit('Pressure', wordsFor('pressure', bare).unit)).toBe('Pressure');
  expect(timeText(0.05, { ...bare, duration: 0.2 })).toBe('0.0500');
  expect(withUnit('Pressure', wordsFor('pressure', RIG).unit)).toBe('Pressure, kPa');
  expect(timeText(0.005, RIG)).toBe('5.00');
  expect(wordsFor('pressure', { gas: { components: ['air'] } })).toMatchObject({ unit: 'kPa', factor: 1e-3 });
  expect(gaugeOf('velocity', bare)).toMatchObject({ least: 0.005, decimals: 4 });
  expect(gaugeOf('pressure', RIG)).toMatchObject({ middle: 101.325, decimals: 2 });
  expect(gaugeOf('temperature', RIG)).toMatchObject({ middle: 293.15, decimals: 2 });
  expect(gaugeOf('velocity', RIG)).toMatchObject({ middle: 0, decimals: 2 });
});

describe('round numbers', () => {
  it('are 1, 2 or 5 times a power of ten', () => {
    expect([0.7, 1, 1.1, 2.4, 5, 5.1, 0.013].map(roundStep)).toEqual([1, 1, 2, 5, 5, 10, 0.02]);
    expect([399, 400, 401, 0.11].map((n) => Number(roundUp(n).toPrecision(12)))).toEqual([400, 400, 500, 0.12]);
  });

  it('come in ticks within the range, no more than asked for, with the decimals they need', () => {
    expect(ticksIn(0, 30, 10)).toEqual({ at: [0, 5, 10, 15, 20, 25, 30], step: 5, decimals: 0 });
    const { at, decimals } = ticksIn(-0.31, 0.42, 5);
    expect(at.map((t) => tickText(t, decimals))).toEqual(['−0.2', '0.0', '0.2', '0.4']);
    for (const most of [1, 2, 3, 7, 12])
      for (const to of [0.0073, 1, 17, 960])
        expect(ticksIn(0, to, most).at.length, `${most} in ${to}`).toBeLessThanOrEqual(most + 1);
  });

  it('end a range that holds what it must, and never one of no width', () => {
    for (const [from, to] of [
      [48.2, 200],
      [101.325, 101.325],
      [-7, 3],
    ] as const) {
      const [low, high] = roundRange(from, to, 1);
      expect(low).toBeLessThanOrEqual(from);
      expect(high).toBeGreaterThanOrEqual(to);
      expect(high - low).toBeGreaterThanOrEqual(1);
      expect(high - low).toBeLessThan(2 * Math.max(1, to - from));
    }
  });

  it('tell a thousandth, and have a real minus sign', () => {
    expect([0.03, 1, 10, 30, 999, 5000].map(decimalsFor)).toEqual([5, 3, 2, 2, 1, 0]);
    expect(valueText('velocity', 12.345, 2)).toBe('+12.35');
    expect(valueText('velocity', -0.001, 2)).toBe('0.00');
    expect(valueText('pressure', -3, 2)).toBe('−3.00');
  });
});

describe('panels', () => {
  it('lie side by side to one scale and fill the room', () => {
    const plan = planPanels([1, 0.5, 0.25], 700 + 2 * GAP);
    expect(plan.panels.map(({ width }) => width)).toEqual([400, 200, 100]);
    expect(plan.panels.map(({ left }) => left)).toEqual([0, 400 + GAP, 600 + 2 * GAP]);
    expect(plan.width).toBe(700 + 2 * GAP);
  });

  it('outgrow the room where the shortest could not be read, within reason, still to one scale', () => {
    const phone = planPanels([0.8, 0.8, 0.8, 0.8, 1.2], 320);
    expect(phone.panels[0]!.width).toBeCloseTo(60, 9);
    expect(phone.panels[4]!.width).toBeCloseTo(90, 9);
    // A short one among them may be narrower, so that a laptop shows all, but never vanishes.
    const laptop = planPanels([0.8, 0.8, 0.8, 0.8, 0.2, 1.2], 700);
    expect(laptop.width).toBeCloseTo(700, 9);
    const odd = planPanels([0.01, 3], 320);
    expect(odd.width).toBeCloseTo(800, 9);
    expect(odd.panels[1]!.width / odd.panels[0]!.width).toBeCloseTo(300, 6);
    expect(planPanels([0.1, 3, 3], 700).panels[0]!.width).toBeCloseTo(14, 9);
  });

  it('are found under a place, or the nearest', () => {
    const plan = planPanels([1, 1], 200 + GAP);
    expect(panelAt(plan, 50)).toEqual({ pipe: 0, share: 0.5 });
    expect(panelAt(plan, 100 + GAP + 25)).toEqual({ pipe: 1, share: 0.25 });
    expect(panelAt(plan, 101)).toEqual({ pipe: 0, share: 1 });
    expect(panelAt(plan, -40)).toEqual({ pipe: 0, share: 0 });
    expect(panelAt(plan, 9999)).toEqual({ pipe: 1, share: 1 });
  });

  it('and what is drawn over them go back and forth between px and the pipe', () => {
    const frame = framePicture(RIG, picture, 640, 480, (text) => 7 * text.length);
    expect(xToPx(frame, 1, 0.25)).toBeCloseTo(
      frame.left + frame.plan.panels[1]!.left + frame.plan.panels[1]!.width / 2,
      9,
    );
    expect(timeToPx(frame, 0, 0.01)).toBe(frame.top + frame.height);
    expect(timeToPx(frame, 0.01, 0.01)).toBe(frame.top);
    expect(pxToTime(frame, timeToPx(frame, 0.0037, 0.01), 0.01)).toBeCloseTo(0.0037, 12);
    expect(pxToTime(frame, -100, 0.01)).toBe(0.01);
    const wording = (room: number) => framePicture(RIG, picture, room, 480, (text) => 7 * text.length).wording;
    expect(wording(640)).toEqual(['beside', 'beside']);
    expect(wording(300)).toEqual(['beside', 'below']);
    expect(wording(200)).toEqual(['below', 'upright']);
  });

  it('have their ends in words, numbered where there are several of a kind', () => {
    expect(endWords(RIG, 'a')).toEqual({ start: 'closed', finish: 'junction' });
    expect(endWords(RIG, 'b')).toEqual({ start: 'junction', finish: 'open' });
    const second: RigEnd = {
      kind: 'junction',
      at: [
        ['b', 'finish'],
        ['c', 'start'],
      ],
      model: 'equal-pressure',
    };
    expect(endWords({ ends: [...RIG.ends, second] }, 'c')).toEqual({ start: 'junction 2', finish: '' });
  });
});

describe('keys', () => {
  const from = { pipe: 0, x: picture.pipes[0]!.x[4]!, time: 0.005 };
  const press = (key: string, far = false, at: typeof from | null = from, rows = 11) =>
    movedBy(key, far, at, picture, rows);

  it('walk cell by cell and row by row, time upward', () => {
    expect(press('ArrowRight')!.x).toBeCloseTo(0.55, 12);
    expect(press('ArrowLeft')!.x).toBeCloseTo(0.35, 12);
    expect(press('ArrowUp')!.time).toBeCloseTo(0.006, 12);
    expect(press('ArrowDown', true)!.time).toBe(0);
    expect(press('Home')!.x).toBeCloseTo(0.05, 12);
    expect(press('End')!.x).toBeCloseTo(0.95, 12);
  });

  it('pass from one pipe into the next, stop at the outer ends and at what the run has come to', () => {
    expect(press('ArrowRight', true)).toMatchObject({ pipe: 1, x: picture.pipes[1]!.x[0] });
    const back = movedBy('ArrowLeft', false, { pipe: 1, x: picture.pipes[1]!.x[0]!, time: 0 }, picture, 11);
    expect(back).toMatchObject({ pipe: 0, x: picture.pipes[0]!.x[9] });
    expect(movedBy('ArrowRight', true, { pipe: 1, x: 0.4, time: 0 }, picture, 11)!.x).toBeCloseTo(0.45, 12);
    expect(press('ArrowUp', true, from, 7)!.time).toBeCloseTo(0.006, 12);
  });

  it('begin in the middle, and others mean nothing here', () => {
    expect(press('ArrowLeft', false, null)).toMatchObject({ pipe: 0, time: picture.times[5] });
    expect(press('a')).toBe(null);
    expect(press('ArrowLeft', false, from, 0)).toBe(null);
  });
});

it('places along pipes: one step and one number of decimals for all, enough for each length', () => {
  const of = (perMetre: number, ...lengths: number[]) =>
    placesFor(
      { pipes: lengths.map((length) => ({ ...RIG.pipes[0]!, length })) },
      { plan: { perMetre, panels: [], width: 0 } },
    );
  // 52 px at least between ticks.
  expect(of(100, 0.8, 0.25)).toEqual({ step: 1, decimals: 2 });
  expect(of(150, 0.8, 0.4)).toEqual({ step: 0.5, decimals: 1 });
  expect(of(10, 3, 12)).toEqual({ step: 10, decimals: 0 });
  expect(of(600, 0.0625, 1)).toEqual({ step: 0.1, decimals: 4 });
});

describe('a curve', () => {
  it('of few points has every one of them', () => {
    expect(
      curvePath(
        [0, 1, 2],
        [5, 7, 6],
        (t) => 10 * t,
        (v) => v,
      ),
    ).toBe('M0.00 5.00L10.00 7.00L20.00 6.00');
    expect(
      curvePath(
        [],
        [],
        (t) => t,
        (v) => v,
      ),
    ).toBe('');
  });

  it('of far more points than pixels stays short and loses no peak', () => {
    const count = 100_000;
    const values = Float64Array.from({ length: count }, (_, k) => Math.sin(k / 300));
    values[54_321] = 9;
    values[54_322] = -9;
    const times = values.map((_, k) => k / count);
    const path = curvePath(
      times,
      values,
      (t) => 500 * t,
      (v) => v,
    );
    const points = path
      .slice(1)
      .split('L')
      .map((point) => point.split(' ').map(Number) as [number, number]);
    expect(points.length).toBeLessThan(4 * 501);
    expect(points.some(([, y]) => y === 9)).toBe(true);
    expect(points.some(([, y]) => y === -9)).toBe(true);
    for (let k = 1; k < points.length; k++) expect(points[k]![0]).toBeGreaterThanOrEqual(points[k - 1]![0]);
  });
});
