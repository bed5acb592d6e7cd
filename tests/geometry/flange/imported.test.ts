import { describe, expect, test } from 'vitest';
import { circleLoop, type Loop, loopArea, placeDrawing, takeDrawing, traceRaster } from '../../../geometry';
import { moveLoop, type Rigid } from '../../../geometry/plane/rigid';
import { validateDesign } from '../../../shared/design/parse';
import { DesignError } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { random } from '../../random';
import * as d from '../trace/drawn';
import { DESIGN, HOLES, LOOPS, OPENINGS, OUTLINE } from './drawings';

const moved = (loops: readonly Loop[], rigid: Rigid) => loops.map((loop) => moveLoop(loop, rigid));
const refusal = (act: () => unknown): string => {
  try {
    act();
  } catch (error) {
    if (error instanceof DesignError) return error.message;
    throw error;
  }
  return 'not refused';
};

function expectSameLoop(found: Loop, wanted: Loop, within = 1e-5) {
  expect(found).toHaveLength(wanted.length);
  for (const [x, y, bulge] of wanted)
    expect(found.some(([u, v, b]) => Math.hypot(u - x, v - y) < within && Math.abs(b - bulge) < 1e-6)).toBe(true);
}

describe('a drawing laid over its flange', () => {
  const chance = random(12);
  const ways = Array.from(
    { length: 12 },
    (_, k): Rigid => ({
      mirrored: k % 3 === 2,
      turn: 2 * Math.PI * chance(),
      shift: [400 * chance() - 200, 400 * chance() - 200],
    }),
  );
  test.each(ways)('however it lies, seed 12: $mirrored $turn', (way) => {
    const drawing = placeDrawing(DESIGN, 'f1', moved(LOOPS, way));
    expect(drawing.fit!.worst).toBeLessThan(1e-6);
    expect(drawing.rigid.mirrored).toBe(way.mirrored);
    expectSameLoop(drawing.outline, OUTLINE);
    expect(drawing.openings.map(({ port }) => port)).toEqual(['p1', 'p2', 'p3']);
    for (const [k, { loop }] of drawing.openings.entries()) expectSameLoop(loop, OPENINGS[k]!);
    expect(drawing.holes).toHaveLength(3);
    for (const [x, y, d] of HOLES)
      expect(
        drawing.holes.some(
          (h) => Math.hypot(h.centre[0] - x, h.centre[1] - y) < 1e-5 && Math.abs(2 * h.radius - d) < 1e-6,
        ),
      ).toBe(true);
    expect(loopArea(drawing.outline)).toBeCloseTo(loopArea(OUTLINE), 3);
    expect(drawing.notes.some((note) => note.includes('other side'))).toBe(way.mirrored);
  });

  test('the side can be given, and is then not said', () => {
    const over = moved(LOOPS, { mirrored: true, turn: 0.3, shift: [5, 9] });
    expect(placeDrawing(DESIGN, 'f1', over, { mirrored: true }).notes).toEqual([]);
    // These openings fit from one side alone.
    expect(placeDrawing(DESIGN, 'f1', over, { mirrored: false }).fit!.worst).toBeGreaterThan(0.5);
  });

  test('where it fits more than one way it is turned least, and the others are named', () => {
    const round = (['p1', 'p2', 'p3'] as const).map((id, k) => ({
      ...DESIGN.ports[0]!,
      id,
      position: [500 + 90 * k, 80, 30] as const,
    }));
    const even: Design = { ...DESIGN, ports: round, flanges: [{ id: 'f1', ports: ['p1', 'p2', 'p3'], thickness: 8 }] };
    const loops = [OUTLINE, ...[0, -90, -180].map((x) => circleLoop([x, 0], 18))];
    const { rigid, notes } = placeDrawing(even, 'f1', loops);
    expect([rigid.mirrored, rigid.turn]).toEqual([false, expect.closeTo(0, 6)]);
    expect(notes[0]).toMatch(/would fit as well .*turned 180°.*check which way round/);
    const other = placeDrawing(even, 'f1', loops, { turned: true });
    expect([other.rigid.mirrored, Math.abs(other.rigid.turn)]).toEqual([false, expect.closeTo(Math.PI, 6)]);
    expect(other.fit!.worst).toBeLessThan(1e-6);
  });

  test('what the ports and the openings differ by is told', () => {
    const off = DESIGN.ports.map((p) => (p.id === 'p2' ? { ...p, position: [593, 80, 33] as const } : p));
    const { fit, openings, notes } = placeDrawing({ ...DESIGN, ports: off }, 'f1', LOOPS);
    // 3 mm over three ports: least squares leave two thirds with p2, and a third with each other.
    expect(openings[1]!.off).toBeCloseTo(2, 1);
    expect(openings[0]!.off).toBeCloseTo(1, 1);
    expect(fit!.worst).toBeCloseTo(2, 1);
    expect(notes.join(' ')).toMatch(/opening of p2 lies 2(\.\d+)? mm from the port/);
  });

  test('by an offset it lies where it was put', () => {
    const shifted = moved(LOOPS, { mirrored: false, turn: 0, shift: [7, -3] });
    const { outline, fit, openings } = placeDrawing(DESIGN, 'f1', shifted, { offset: { shift: [-7, 3] } });
    expectSameLoop(outline, OUTLINE);
    expect(fit).toBeNull();
    expect(openings).toHaveLength(3);
    const turned = moved(LOOPS, { mirrored: false, turn: Math.PI / 2, shift: [0, 0] });
    expectSameLoop(placeDrawing(DESIGN, 'f1', turned, { offset: { shift: [0, 0], turn: -90 } }).outline, OUTLINE);
  });

  test('an outline of very many corners is drawn in fewer, and says how near', () => {
    const ripple: Loop = Array.from({ length: 5000 }, (_, k) => {
      const a = (2 * Math.PI * k) / 5000;
      return [-90 + 165 * Math.cos(a), 60 * Math.sin(a) + 2 * Math.cos(9 * a), 0];
    });
    const { outline, notes } = placeDrawing(DESIGN, 'f1', [ripple, ...LOOPS.filter((l) => l !== OUTLINE)]);
    expect(outline.length).toBeLessThanOrEqual(2000);
    expect(loopArea(outline) / loopArea(ripple)).toBeCloseTo(1, 4);
    expect(notes.at(-1)).toMatch(/5000 corners are drawn in \d+, within 0\.\d+ mm/);
  });
});

describe('what is taken into the design', () => {
  const drawing = placeDrawing(DESIGN, 'f1', LOOPS);

  test('the outline alone, where nothing else is asked', () => {
    const next = takeDrawing(DESIGN, drawing);
    expectSameLoop(next.flanges![0]!.outline!, OUTLINE);
    expect(next.ports).toBe(DESIGN.ports);
    expect(next.flanges![0]!.fasteners).toBe(DESIGN.flanges![0]!.fasteners);
    expect(DESIGN.flanges![0]!.outline).toBeUndefined();
  });

  test('holes as fasteners: those near stay what they were, moved; others are named by their size', () => {
    const { fasteners } = takeDrawing(DESIGN, drawing, { fasteners: true }).flanges![0]!;
    expect(fasteners).toEqual([
      { position: [460, 80, 51.5], kind: 'stud', thread: 'M8', length: 35, hole: 9 },
      { position: [715, 80, 5.5], kind: 'bolt', thread: 'M10', hole: 11 },
      { position: [545, 80, 58], kind: 'stud', thread: 'M8', hole: 9 },
    ]);
  });

  test('openings as the ports’, of the kind that is nearest', () => {
    const wider = DESIGN.ports.map((p) => ({ ...p, opening: { shape: 'round', diameter: 34 } as const }));
    const blind: Design = { ...DESIGN, ports: wider };
    const { ports } = takeDrawing(blind, placeDrawing(blind, 'f1', LOOPS), { openings: true });
    expect(ports.map((p) => p.opening)).toEqual(DESIGN.ports.map((p) => p.opening));
  });

  test('a scanned gasket comes to the same, within 0.1 mm, turned as it lay on the glass', () => {
    const metal = d.without(
      d.roundedRectangle(-90, 0, 300, 70, 10),
      d.disc(0, 0, 18),
      d.roundedRectangle(-90, 3, 40, 34, 8),
      d.bar(-191, 0, -179, 0, 16),
      ...HOLES.map(([x, y, diameter]) => d.disc(x, y, diameter / 2)),
    );
    const shape: d.Shape = (x, y) => {
      const [u, v] = [x - 260, y - 150];
      return metal(u * Math.cos(0.4) + v * Math.sin(0.4), v * Math.cos(0.4) - u * Math.sin(0.4));
    };
    const raster = d.drawn({ width: 350, height: 230, dpi: 150, shape, noise: 6, seed: 2 });
    const { loops } = traceRaster(raster, {
      between: [
        [0, 50],
        [1500, 50],
      ],
      distance: 254,
    });
    const placed = placeDrawing(
      DESIGN,
      'f1',
      loops.map(({ loop }) => loop),
    );
    expect(placed.fit!.worst).toBeLessThan(0.05);
    const { fasteners } = takeDrawing(DESIGN, placed, { fasteners: true }).flanges![0]!;
    for (const [k, [x, z]] of [
      [460, 51.5],
      [715, 5.5],
      [545, 58],
    ].entries()) {
      expect(Math.hypot(fasteners![k]!.position[0] - x!, fasteners![k]!.position[2] - z!)).toBeLessThan(0.05);
      expect(Math.abs(fasteners![k]!.hole - HOLES[k]![2])).toBeLessThan(0.05);
    }
    const openings = takeDrawing(DESIGN, placed, { openings: true }).ports.map((p) => p.opening);
    expect(openings.map((o) => o.shape)).toEqual(['round', 'rounded-rectangle', 'oval']);
    expect(openings[1]).toMatchObject({ width: expect.closeTo(40, 1), height: expect.closeTo(34, 1) });
  });
});

describe('drawings that cannot be taken are refused with place and remedy', () => {
  const place = (loops: readonly Loop[], design: Design = DESIGN, id = 'f1') =>
    refusal(() => placeDrawing(design, id, loops));
  test('nothing closed, no such flange, ports of two planes', () => {
    expect(place([])).toMatch(/^drawing: found no closed curve; allowed: the outline/);
    expect(place(LOOPS, DESIGN, 'f9')).toMatch(/^flanges\/f9: found no such flange; allowed: one of "f1"/);
    const leaning = DESIGN.ports.map((p) => (p.id === 'p3' ? { ...p, direction: [0.2, 1, 0] as const } : p));
    expect(place(LOOPS, { ...DESIGN, ports: leaning })).toMatch(/^ports\/p\d: found a port that is not in the plane/);
  });
  test('too few openings, a wrong scale', () => {
    expect(place(LOOPS.slice(0, 5))).toMatch(/^flanges\/f1\/outline: found (4 openings|no openings)/);
    const inches = LOOPS.map((loop) => loop.map(([x, y, b]): Loop[number] => [x / 25.4, y / 25.4, b]));
    expect(place(inches)).toMatch(
      /its openings lie 0\.04 times as far apart as the ports; allowed: .*check its unit or scale/,
    );
  });
  const times = (by: number): Loop[] => LOOPS.map((loop) => loop.map(([x, y, b]): Loop[number] => [by * x, by * y, b]));
  test('a scale a little wrong is named, and no port blamed for it; a port that is wrong is', () => {
    const { notes } = placeDrawing(DESIGN, 'f1', times(390 / 400));
    expect(notes).toEqual([
      'At 1.026 times it fits within 0.00 mm: check the distance that set its scale, or its unit.',
    ]);
    // Out of the line by 2 mm, which no size mends.
    const off = DESIGN.ports.map((p) => (p.id === 'p2' ? { ...p, position: [590, 80, 36] as const } : p));
    const blamed = placeDrawing({ ...DESIGN, ports: off }, 'f1', LOOPS).notes.join(' ');
    expect(blamed).toMatch(/opening of p2 lies .* measure the port again/);
    expect(blamed).not.toMatch(/times it fits/);
  });
  test('a scale so wrong that it is refused is named too', () => {
    expect(place(times(1.108))).toMatch(
      /an opening 10\.\d+ mm from port p\d .* at 0\.903 times it fits within 0\.00 mm/,
    );
  });
  test('a frame or a second part beside it', () => {
    expect(place([...LOOPS, circleLoop([300, 0], 10)])).toMatch(/^drawing at \(300, 0\): found a closed curve outside/);
  });
  test('an outline that crosses itself, at the place', () => {
    const bow: Loop = [
      [-240, -40, 0],
      [60, 40, 0],
      [60, -40, 0],
      [-240, 40, 0],
    ];
    expect(place([bow.map(([x, y, b]): Loop[number] => [x, y + 0.001 * x, b])])).toMatch(
      /no closed curve|crosses itself/,
    );
    const knot: Loop = [...OUTLINE.slice(0, 2), [80, 0, 0], [20, -45, 0], ...OUTLINE.slice(2)];
    expect(place([knot, ...LOOPS.filter((l) => l !== OUTLINE)])).toMatch(
      /^drawing at \(.*\): found an outline that crosses itself/,
    );
  });
  test('what is taken is a design that a file can hold', () => {
    const whole = { ...DESIGN, tubes: {}, merges: [], runners: [] };
    const next = takeDrawing(whole, placeDrawing(whole, 'f1', LOOPS), { fasteners: true, openings: true });
    expect(validateDesign(next)).toEqual(next);
  });
});
