import { describe, expect, test } from 'vitest';
import { bends, bendTable, centerline, cross, distance, fromBendTable, rotate, unit } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { bendInParts, randomSketch, type Sketch, seeds } from './lines';

const lineOf = ({ points, radii }: Pick<Sketch, 'points' | 'radii'>) => centerline(points, radii);
const tableOf = (sketch: Sketch) => bendTable(lineOf(sketch), sketch.up);
const turned = (sketch: Sketch, f: (v: Vec3) => Vec3, by: Vec3 = [0, 0, 0]): Sketch => ({
  points: sketch.points.map((p) => f(p).map((x, k) => x + by[k]!) as unknown as Vec3),
  radii: sketch.radii,
  up: f(sketch.up),
});

function expectRebuilt(sketch: Sketch): void {
  const line = lineOf(sketch);
  const start = { position: line.points[0]!, direction: line.directions[0]!, up: sketch.up };
  const table = bendTable(line, sketch.up);
  const again = lineOf(fromBendTable(start, table));
  expect(Math.abs(again.length - line.length)).toBeLessThan(1e-9);
  for (const { station, position } of [0, 0.2, 0.5, 0.8, 1].map((t) => at(line, t * line.length)))
    expect(distance(at(again, station).position, position)).toBeLessThan(1e-9);
  expect(bends(again)).toHaveLength(bends(line).length);
}

function at(line: ReturnType<typeof centerline>, station: number): { station: number; position: Vec3 } {
  let best = { station, position: line.points.at(-1)! };
  for (const s of line.segments) {
    if (station < s.station || station > s.station + s.length) continue;
    const along = station - s.station;
    if (s.kind === 'straight')
      best = { station, position: s.start.map((x, k) => x + along * s.direction[k]!) as unknown as Vec3 };
    else {
      // About the bend's own axis, not by the kernel's formula for points on an arc.
      const centre = s.start.map((x, k) => x + s.radius * s.inward[k]!) as unknown as Vec3;
      const arm = s.inward.map((x) => -s.radius * x) as unknown as Vec3;
      const swung = rotate(arm, unit(cross(s.direction, s.inward)), along / s.radius);
      best = { station, position: centre.map((x, k) => x + swung[k]!) as unknown as Vec3 };
    }
  }
  return best;
}

describe.each(seeds(30))('a random runner, seed %i', (seed) => {
  const sketch = randomSketch(random(seed));
  const table = tableOf(sketch);

  test('rebuilt from its rows is itself to 1e-9 mm', () => expectRebuilt(sketch));

  test('has rotations and clocking in (−180, 180], the first 0, and a last row of straight alone', () => {
    for (const { rotation } of table.rows) {
      expect(rotation).toBeGreaterThan(-180);
      expect(rotation).toBeLessThanOrEqual(180);
    }
    expect(table.rows[0]!.rotation).toBe(0);
    expect(table.clocking).toBeGreaterThan(-180);
    expect(table.clocking).toBeLessThanOrEqual(180);
    expect(table.rows.at(-1)).toMatchObject({ rotation: 0, angle: 0, radius: 0 });
    expect(table.rows).toHaveLength(bends(lineOf(sketch)).length + 1);
  });

  test('has the same table wherever it lies and however it is turned', () => {
    const next = random(seed + 1000);
    const axis = unit([next.between(-1, 1), next.between(-1, 1), next.between(-1, 1)]);
    const angle = next.between(-3, 3);
    const moved = tableOf(turned(sketch, (v) => rotate(v, axis, angle), [300, -120, 45]));
    expect(moved.clocking).toBeCloseTo(table.clocking, 8);
    for (const [i, row] of moved.rows.entries())
      for (const key of ['length', 'rotation', 'angle', 'radius'] as const)
        expect(row[key]).toBeCloseTo(table.rows[i]![key], 8);
  });

  test('mirrored flips the sign of every rotation and of the clocking, and nothing else', () => {
    const mirrored = tableOf(turned(sketch, ([x, y, z]) => [x, -y, z]));
    const flipped = (x: number): number => (Math.abs(x) > 180 - 1e-9 ? 180 : -x);
    expect(mirrored.clocking).toBeCloseTo(flipped(table.clocking), 8);
    for (const [i, row] of mirrored.rows.entries()) {
      const it = table.rows[i]!;
      expect(row.rotation).toBeCloseTo(flipped(it.rotation), 8);
      expect([row.length, row.angle, row.radius]).toEqual(
        [it.length, it.angle, it.radius].map((x) => expect.closeTo(x, 8)),
      );
    }
  });
});

describe('continuous bends', () => {
  test.each<[string, number[]]>([
    ['a U-bend in two parts', [90, 90]],
    ['a U-bend in two unequal parts', [130, 50]],
    ['200° in two parts', [100, 100]],
    ['three parts', [60, 45, 50]],
    ['nearly a full turn in three parts', [115, 115, 115]],
    ['a full turn in three parts', [120, 120, 120]],
    ['a hair less than a full turn', [119.99, 119.99, 119.99]],
  ])('%s is one row, and rebuilt it is itself', (_, parts) => {
    const points = bendInParts(60, parts, 40);
    const sketch: Sketch = { points, radii: parts.map(() => 60), up: [0, 0.3, 1] };
    const { rows } = tableOf(sketch);
    expect(rows).toHaveLength(2);
    expect(rows[0]!.angle).toBeCloseTo(
      parts.reduce((a, b) => a + b, 0),
      9,
    );
    expect(rows.map((r) => r.length)).toEqual([expect.closeTo(40, 8), expect.closeTo(40, 8)]);
    expectRebuilt(sketch);
  });

  const parts = (radii: number[], move: (p: Vec3, i: number) => Vec3 = (p) => p): number =>
    bends(centerline(bendInParts(60, [50, 60], 80).map(move), radii)).length;
  test('are one only with one radius, in one plane, turning one way, with no straight between', () => {
    expect(parts([60, 60])).toBe(1);
    expect(parts([60, 60 + 5e-7])).toBe(1);
    expect(parts([60, 59.9999])).toBe(2);
    const slide =
      (by: number) =>
      (p: Vec3, i: number): Vec3 => {
        if (i < 2) return p;
        const t = (50 * Math.PI) / 180;
        return [p[0] + by * Math.cos(t), p[1] + by * Math.sin(t), p[2]];
      };
    expect(parts([60, 60], slide(0.009))).toBe(1);
    expect(parts([60, 60], slide(0.011))).toBe(2);
    // The last leg swung about the middle one.
    const swing =
      (degrees: number) =>
      (p: Vec3, i: number, all = bendInParts(60, [50, 60], 80)): Vec3 => {
        if (i < 3) return p;
        const axis = unit([0, 1, 2].map((k) => all[2]![k]! - all[1]![k]!) as unknown as Vec3);
        const arm = [0, 1, 2].map((k) => p[k]! - all[2]![k]!) as unknown as Vec3;
        return rotate(arm, axis, (degrees * Math.PI) / 180).map((x, k) => x + all[2]![k]!) as unknown as Vec3;
      };
    expect(parts([60, 60], (p, i) => swing(0.049)(p, i))).toBe(1);
    expect(parts([60, 60], (p, i) => swing(0.051)(p, i))).toBe(2);
    expect(parts([60, 60], (p, i) => swing(180)(p, i))).toBe(2);
  });
});

describe('clocking', () => {
  const elbow = (to: Vec3): Vec3[] => [
    [0, 0, 0],
    [0, 100, 0],
    [to[0] * 100, 100 + to[1] * 100, to[2] * 100],
  ];
  const clockingOf = (to: Vec3, up: Vec3) => bendTable(centerline(elbow(to), [50]), up).clocking;
  // Travel +Y, up +Z: right-handed about travel turns up toward +X.
  test.each<[Vec3, number]>([
    [[0, 0, 1], 0],
    [[1, 0, 0], 90],
    [[0, 0, -1], 180],
    [[-1, 0, 0], -90],
    [[1, 0, 1], 45],
  ])('toward %j from up +Z', (to, degrees) => {
    expect(clockingOf(to, [0, 0, 1])).toBeCloseTo(degrees, 9);
    // What of up lies along the travel does not count.
    expect(clockingOf(to, [0, 7, 1])).toBeCloseTo(degrees, 9);
  });
  test('an up along the travel still gives a table that rebuilds', () => {
    expectRebuilt({ points: elbow([0.3, 0.1, 1]), radii: [50], up: [0, 1, 0] });
    expectRebuilt({ points: elbow([0.3, 0.1, 1]), radii: [50], up: [0, -2, 0] });
  });
  test('a straight runner has none, and one row', () => {
    const table = bendTable(
      centerline(
        [
          [0, 0, 0],
          [0, 70, 0],
        ],
        [],
      ),
      [0, 0, 1],
    );
    expect(table).toEqual({ clocking: 0, rows: [{ length: 70, rotation: 0, angle: 0, radius: 0 }] });
  });
});

test('rotation is right-handed about the travel: a quarter turn by hand', () => {
  // Along +X, bend toward +Y; then along +Y, bend toward +Z: about +Y the plane's normal went from +Z to +X, +90°.
  const up: Vec3[] = [
    [0, 0, 0],
    [100, 0, 0],
    [100, 100, 0],
    [100, 100, 100],
  ];
  expect(bendTable(centerline(up, [40, 40]), [0, 0, 1]).rows[1]!.rotation).toBeCloseTo(90, 9);
  const down = up.map(([x, y, z]): Vec3 => [x, y, -z]);
  expect(bendTable(centerline(down, [40, 40]), [0, 0, 1]).rows[1]!.rotation).toBeCloseTo(-90, 9);
  const s: Vec3[] = [
    [0, 0, 0],
    [100, 0, 0],
    [100, 100, 0],
    [200, 100, 0],
  ];
  expect(bendTable(centerline(s, [40, 40]), [0, 0, 1]).rows[1]!.rotation).toBe(180);
});
