import { describe, expect, test } from 'vitest';
import { centerline, distance, norm, pointAt, sampleCenterline } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { randomSketch, seeds } from './lines';

describe.each(seeds(20))('a random runner, seed %i', (seed) => {
  const { points, radii } = randomSketch(random(seed));
  const line = centerline(points, radii);

  test('is as long as its chords, however many, add up to', () => {
    // Each arc's chords fall short by at most a part (Δ²/24) of it; the step makes that less than 1e-6 of the whole.
    const count = 20_000;
    let sum = 0;
    let before = pointAt(line, 0).position;
    for (let k = 1; k <= count; k++) {
      const here = pointAt(line, (line.length * k) / count).position;
      sum += distance(before, here);
      before = here;
    }
    expect(Math.abs(sum / line.length - 1)).toBeLessThan(1e-6);
    expect(line.length).toBeGreaterThanOrEqual(sum - 1e-6);
  });

  test('runs from its first point to its last, smoothly and at the speed of its length', () => {
    expect(distance(pointAt(line, 0).position, points[0]!)).toBeLessThan(1e-9);
    expect(distance(pointAt(line, line.length).position, points.at(-1)!)).toBeLessThan(1e-9);
    const step = 1e-4;
    for (let s = 1; s < line.length - 1; s += 7.3) {
      const [a, b] = [pointAt(line, s - step), pointAt(line, s + step)];
      expect(norm(a.tangent)).toBeCloseTo(1, 12);
      const chord = [0, 1, 2].map((k) => (b.position[k]! - a.position[k]!) / (2 * step));
      for (const [k, x] of chord.entries()) expect(x).toBeCloseTo(pointAt(line, s).tangent[k]!, 5);
    }
  });

  test('keeps to a point’s straight and a circle about each bend', () => {
    for (const segment of line.segments) {
      const middle = pointAt(line, segment.station + segment.length / 2).position;
      if (segment.kind === 'straight') {
        const along = distance(middle, segment.start);
        expect(along).toBeCloseTo(segment.length / 2, 9);
        continue;
      }
      const centre = segment.start.map((x, k) => x + segment.radius * segment.inward[k]!) as unknown as Vec3;
      expect(distance(middle, centre)).toBeCloseTo(segment.radius, 9);
    }
  });

  test('is sampled as finely as asked, joints once', () => {
    const sagitta = 0.05;
    const stations = sampleCenterline(line, sagitta);
    expect(stations[0]!.station).toBeCloseTo(0, 9);
    expect(stations.at(-1)!.station).toBeCloseTo(line.length, 9);
    for (const [i, b] of stations.slice(1).entries()) {
      const a = stations[i]!;
      expect(b.station).toBeGreaterThan(a.station);
      const middle = pointAt(line, (a.station + b.station) / 2).position;
      const chord = a.position.map((x, k) => (x + b.position[k]!) / 2) as unknown as Vec3;
      expect(distance(middle, chord)).toBeLessThan(sagitta + 1e-9);
    }
  });
});

describe('points that do not turn', () => {
  const bent: Vec3[] = [
    [0, 0, 0],
    [100, 0, 0],
    [200, 80, 0],
    [300, 80, 60],
  ];
  /** A point on the first leg, moved aside so that the line turns by `degrees` there. */
  const withKink = (degrees: number): Vec3[] => [bent[0]!, [50, 25 * ((degrees * Math.PI) / 180), 0], ...bent.slice(1)];

  test('below 0.01° are dropped, with their radius; others stay', () => {
    const dropped = centerline(withKink(0.009), [999, 40, 30]);
    expect(dropped.source).toEqual([0, 2, 3, 4]);
    expect(dropped.radii).toEqual([40, 30]);
    expect(dropped.length).toBeCloseTo(centerline(bent, [40, 30]).length, 12);
    expect(centerline(withKink(0.011), [999, 40, 30]).source).toEqual([0, 1, 2, 3, 4]);
  });
  test('many small turns add up: none is dropped past the limit', () => {
    const t = (0.006 * Math.PI) / 180;
    const bow = Array.from({ length: 12 }, (_, i): Vec3 => [100 * i, 50 * t * i * i, 0]);
    const line = centerline(
      bow,
      bow.slice(2).map(() => 50),
    );
    for (const turn of line.turns) expect(turn).toBeGreaterThanOrEqual((0.01 * Math.PI) / 180);
    expect(line.turns.reduce((a, b) => a + b, 0)).toBeGreaterThan(8 * t);
  });
  test('twice the same point is dropped too', () => {
    const line = centerline([bent[0]!, bent[1]!, bent[1]!, bent[2]!, bent[3]!], [40, 40, 30]);
    expect(line.length).toBeCloseTo(centerline(bent, [40, 30]).length, 12);
    expect(line.points).toHaveLength(4);
  });
});

describe('what cannot be bent', () => {
  test('bends that overlap have a negative straight and a length all the same', () => {
    const line = centerline(
      [
        [0, 0, 0],
        [50, 0, 0],
        [50, 30, 0],
        [100, 30, 0],
      ],
      [40, 40],
    );
    expect(line.straights).toEqual([10, -50, 10].map((x) => expect.closeTo(x, 9)));
    expect(line.length).toBeCloseTo(-30 + 40 * Math.PI, 9);
  });
  test('a reversal is finite', () => {
    const line = centerline(
      [
        [0, 0, 0],
        [50, 0, 0],
        [10, 0, 0],
      ],
      [40],
    );
    expect(Number.isFinite(line.length)).toBe(true);
    for (const x of pointAt(line, 20).position) expect(Number.isFinite(x)).toBe(true);
  });
  test('too few points or radii are the caller’s mistake', () => {
    expect(() => centerline([[0, 0, 0]], [])).toThrow('two points, got 1');
    expect(() =>
      centerline(
        [
          [0, 0, 0],
          [1, 0, 0],
          [1, 1, 0],
        ],
        [],
      ),
    ).toThrow('3 points need 1 radii, got 0');
  });
});
