import { describe, expect, test } from 'vitest';
import { edges, loopArea, TraceError, traceRaster, usualThreshold } from '../../../geometry';
import { distanceToLoop } from '../../../geometry/plane/within';
import * as d from '../trace/drawn';

/** Two ports, one of them no circle, a tab at each side and three holes; about (100, 95), mm. */
const HOLES = [
  [130, 95, 18.5],
  [40, 130, 4.5],
  [160, 60, 4.5],
  [95, 95, 4.25],
] as const;
const gasket = d.without(
  d.any(d.bar(40, 95, 160, 95, 32), d.disc(40, 130, 9), d.disc(160, 60, 9)),
  d.roundedRectangle(60, 95, 40, 34, 8),
  ...HOLES.map(([x, y, r]) => d.disc(x, y, r)),
);
const WIDTH = 200;
const HEIGHT = 190;

const scan = (dpi: number, turn: number, noise: number, seed: number) =>
  d.drawn({ width: WIDTH, height: HEIGHT, dpi, shape: d.turned(gasket, turn, 100, 95), noise, seed });

/** Two points 100 mm apart along the picture's top. */
const scaleAt = (dpi: number) => ({
  between: [
    [10, 10],
    [10 + (100 * dpi) / 25.4, 10],
  ] as const,
  distance: 100,
});

function turnedPoint(x: number, y: number, degrees: number): [number, number] {
  const a = (degrees * Math.PI) / 180;
  return [
    100 + (x - 100) * Math.cos(a) - (y - 95) * Math.sin(a),
    95 + (x - 100) * Math.sin(a) + (y - 95) * Math.cos(a),
  ];
}

describe('a traced gasket', () => {
  const cases = [
    [150, 0, 0],
    [150, 7.3, 8],
    [150, 31, 8],
    [200, -88, 8],
    [300, 0, 0],
    [300, 7.3, 8],
  ] as const;
  // Measured: centres within 0.004 mm, radii within 0.002 mm, areas within 0.03 %, corner radii within 0.08 mm.
  test.each(cases)('%i dpi, turned %f°, noise %i, seed 5: holes within 0.01 mm', (dpi, turn, noise) => {
    const traced = traceRaster(scan(dpi, turn, noise, 5), scaleAt(dpi));
    const circles = traced.loops.flatMap(({ circle }) => circle ?? []);
    expect(traced.loops).toHaveLength(6);
    expect(circles).toHaveLength(4);
    for (const [x, y, r] of HOLES) {
      const [tx, ty] = turnedPoint(x, y, turn);
      const off = circles.map(({ centre: [cx, cy] }) => Math.hypot(cx - tx, cy - ty));
      const nearest = off.indexOf(Math.min(...off));
      expect(off[nearest]).toBeLessThan(0.01);
      expect(Math.abs(circles[nearest]!.radius - r)).toBeLessThan(0.005);
    }
    const [outline] = traced.loops;
    // A bar with round ends, and two tabs of which a lens lies on the bar.
    expect(Math.abs(loopArea(outline!.loop) / outlineArea() - 1)).toBeLessThan(0.0005);
    const other = traced.loops.find(({ circle, loop }) => !circle && loop !== outline!.loop)!;
    expect(edges(other.loop)).toHaveLength(8);
    for (const radius of edges(other.loop).flatMap(({ arc }) => arc?.radius ?? []))
      expect(Math.abs(radius - 8)).toBeLessThan(0.1);
    expect(Math.abs(loopArea(other.loop) / (40 * 34 - (4 - Math.PI) * 64) - 1)).toBeLessThan(0.001);
    expect(traced.stray).toBeLessThan(0.1);
    expect(traced.loops.every(({ loop }) => loopArea(loop) > 0)).toBe(true);
  });

  test('the outline is told to be six pieces, its tabs and ends to their radius', () => {
    const { loops } = traceRaster(scan(300, 7.3, 8, 9), scaleAt(300));
    const radii = edges(loops[0]!.loop).flatMap(({ arc }) => (arc ? [arc.radius] : []));
    expect(edges(loops[0]!.loop)).toHaveLength(6);
    for (const [k, r] of [9, 9, 32, 32].entries()) expect([...radii].sort((a, b) => a - b)[k]).toBeCloseTo(r, 1);
  });

  test('shapes that are no arcs come within the tolerance', () => {
    const wavy: d.Shape = (x, y) => {
      const a = Math.atan2(y - 60, x - 100);
      return Math.hypot(x - 100, y - 60) < 45 + 4 * Math.sin(3 * a) + 1.5 * Math.cos(7 * a + 1);
    };
    const raster = d.drawn({ width: 200, height: 120, dpi: 200, shape: wavy });
    const { loops, stray } = traceRaster(raster, scaleAt(200));
    expect(stray).toBeLessThan(0.1);
    const all = edges(loops[0]!.loop);
    expect(all.length).toBeLessThan(60);
    for (let a = 0; a < 2 * Math.PI; a += 0.01) {
      const r = 45 + 4 * Math.sin(3 * a) + 1.5 * Math.cos(7 * a + 1);
      expect(distanceToLoop([100 + r * Math.cos(a), 60 + r * Math.sin(a)], all)).toBeLessThan(0.1);
    }
  });

  test('one bit a pixel, as a fax has it: holes within 0.02 mm at 150 dpi', () => {
    const raster = scan(150, 7.3, 0, 1);
    const data = raster.data.map((v) => (v > 132 ? 255 : 0));
    const { loops } = traceRaster({ ...raster, data }, scaleAt(150));
    const [x, y] = turnedPoint(40, 130, 7.3);
    const hole = loops
      .flatMap(({ circle }) => circle ?? [])
      .find((c) => Math.hypot(c.centre[0] - x, c.centre[1] - y) < 1);
    expect(Math.hypot(hole!.centre[0] - x, hole!.centre[1] - y)).toBeLessThan(0.02);
    expect(hole!.radius).toBeCloseTo(4.5, 1);
  });

  test('a light gasket on dark, with dust: the same, and the dust is counted', () => {
    const dust = d.any(d.disc(20, 20, 0.8), d.disc(180, 30, 0.6), d.disc(100, 70, 1));
    const shape: d.Shape = (x, y) => (dust(x, y) ? !gasket(x, y) : gasket(x, y));
    const raster = d.drawn({ width: WIDTH, height: HEIGHT, dpi: 200, shape, dark: 230, light: 30, noise: 6, seed: 3 });
    const traced = traceRaster(raster, scaleAt(200));
    expect(traced.shade).toBe('light');
    expect(traced.loops).toHaveLength(6);
    expect(traced.specks).toBe(3);
  });
});

/** By counting: a ray's worth of fine samples, independent of loops. */
let known: number | null = null;
function outlineArea(): number {
  if (known !== null) return known;
  const shape = d.any(d.bar(40, 95, 160, 95, 32), d.disc(40, 130, 9), d.disc(160, 60, 9));
  const step = 0.05;
  let count = 0;
  for (let x = step / 2; x < WIDTH; x += step) for (let y = step / 2; y < HEIGHT; y += step) if (shape(x, y)) count++;
  known = count * step * step;
  return known;
}

describe('pictures that cannot be traced are refused, saying why', () => {
  const grey = (f: (i: number, j: number) => number, width = 300, height = 200) => ({
    width,
    height,
    data: Uint8Array.from({ length: width * height }, (_, k) => f(k % width, Math.floor(k / width))),
  });
  const scale = {
    between: [
      [0, 0],
      [250, 0],
    ] as const,
    distance: 42,
  };
  test.each([
    ['one shade', grey(() => 200), /one even shade/],
    ['off the edge', grey((i, j) => (i < 150 && j > 50 && j < 150 ? 20 : 220)), /runs off the picture's left edge/],
    [
      'a drawing in lines',
      grey((i, j) => {
        const ring = (r: number) => Math.abs(Math.hypot(i - 150, j - 100) - r) < 2;
        return ring(80) || ring(20) ? 20 : 220;
      }),
      /drawn in lines/,
    ],
  ])('%s', (_, raster, words) => {
    expect(() => traceRaster(raster, scale)).toThrow(TraceError);
    expect(() => traceRaster(raster, scale)).toThrow(words);
  });

  test('points too near, and a scale beyond use', () => {
    const raster = grey((i, j) => (Math.hypot(i - 150, j - 100) < 60 ? 20 : 220));
    expect(() =>
      traceRaster(raster, {
        ...scale,
        between: [
          [0, 0],
          [3, 4],
        ],
      }),
    ).toThrow(/5 px apart/);
    expect(() => traceRaster(raster, { ...scale, distance: 2000 })).toThrow(/a pixel would be 8 mm/);
    expect(() => traceRaster(raster, scale, { threshold: 5 })).toThrow(/nothing darker than 5/);
    expect(traceRaster(raster, scale).loops).toHaveLength(1);
  });

  test('the level lies half-way between ink and paper, however little ink there is', () => {
    expect(usualThreshold(grey((i, j) => (i < 6 && j < 6 ? 40 : 220)))).toBe(130);
  });
});
