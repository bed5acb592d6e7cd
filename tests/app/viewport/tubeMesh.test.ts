/** The picture of a tube against closed forms: radii, normals, triangles facing out, and parts that count as the bender does. */
import { describe, expect, it } from 'vitest';
import { bends, centerline, pointAt, sampleCenterline, straightIndices } from '../../../geometry';
import { tubeMesh } from '../../../src/app/viewport/model/tubeMesh';

const RADIUS = 21.2;
const WALL = 1.5;
const line = centerline(
  [
    [0, 0, 0],
    [0, 200, 0],
    [0, 200, -300],
    [250, 200, -300],
  ],
  [63.6, 63.6],
);
// A U-bend stored as two points without a straight between them, as the contract has it past 170°.
const uBend = centerline(
  [
    [0, 0, 0],
    [0, 150, 0],
    [0, 150, -127.2],
    [0, 0, -127.2],
  ],
  [63.6, 63.6],
);

const vertex = (a: ArrayLike<number>, i: number) => [a[3 * i]!, a[3 * i + 1]!, a[3 * i + 2]!] as const;

describe('tubeMesh', () => {
  it.each([undefined, 7])('tells where each ring stands along the line, none farther apart than asked: %s', (step) => {
    const mesh = tubeMesh(line, RADIUS, WALL, undefined, step);
    const rings = mesh.stations.length;
    const around = mesh.positions.length / 3 / (2 * rings + 4);
    expect(mesh.stations[0]).toBe(0);
    expect(mesh.stations.at(-1)).toBeCloseTo(line.length, 3);
    for (let i = 0; i < rings; i++) {
      const { position } = pointAt(line, mesh.stations[i]!);
      const corner = vertex(mesh.positions, i * around);
      expect(Math.hypot(...corner.map((x, k) => x - position[k]!))).toBeCloseTo(RADIUS, 3);
      if (i > 0 && step) expect(mesh.stations[i]! - mesh.stations[i - 1]!).toBeLessThanOrEqual(step + 1e-3);
    }
  });

  const mesh = tubeMesh(line, RADIUS, WALL);

  it('keeps every corner of the wall at the radius from the centerline, bore corners at the bore', () => {
    const axis = sampleCenterline(line, 0.15);
    const radii = new Set<number>();
    for (let i = 0; i < mesh.positions.length / 3; i++) {
      const p = vertex(mesh.positions, i);
      const d = Math.min(...axis.map((s) => Math.hypot(...p.map((x, k) => x - s.position[k]!))));
      radii.add(Math.round(d * 1e3) / 1e3);
    }
    expect([...radii].sort()).toEqual([RADIUS - WALL, RADIUS]);
  });

  it('faces outward: the triangles enclose the metal of the wall', () => {
    let volume = 0;
    for (let t = 0; t < mesh.indices.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => vertex(mesh.positions, mesh.indices[t + k]!)) as [
        readonly [number, number, number],
        readonly [number, number, number],
        readonly [number, number, number],
      ];
      volume +=
        (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])) /
        6;
    }
    // Pappus: area of the wall's section times the length of its axis; chords of 48 sides lose 0.29 %, bends a little more.
    const exact = Math.PI * (RADIUS ** 2 - (RADIUS - WALL) ** 2) * line.length;
    expect(volume / exact).toBeGreaterThan(0.99);
    expect(volume / exact).toBeLessThan(1);
  });

  it('has unit normals that agree with the triangles they shade', () => {
    for (let t = 0; t < mesh.indices.length; t += 3) {
      const [i, j, k] = [0, 1, 2].map((n) => mesh.indices[t + n]!);
      const [a, b, c] = [i, j, k].map((n) => vertex(mesh.positions, n!));
      const e = b!.map((x, n) => x - a![n]!);
      const f = c!.map((x, n) => x - a![n]!);
      const cross = [e[1]! * f[2]! - e[2]! * f[1]!, e[2]! * f[0]! - e[0]! * f[2]!, e[0]! * f[1]! - e[1]! * f[0]!];
      const n = vertex(mesh.normals, i!);
      expect(Math.hypot(...n)).toBeCloseTo(1, 5);
      expect(cross.reduce((sum, x, m) => sum + x * n[m]!, 0)).toBeGreaterThan(0);
    }
  });

  it('numbers its parts as bends and straights are counted, and together they are the whole outer wall', () => {
    expect(mesh.parts.map((p) => `${p.kind} ${p.index}`)).toEqual([
      'straight 0',
      'bend 0',
      'straight 1',
      'bend 1',
      'straight 2',
    ]);
    let next = 0;
    for (const part of mesh.parts) {
      expect(part.first).toBe(next);
      next += part.count;
    }
    expect(next).toBe(mesh.outerCount);
  });

  it('draws a continuous bend as one part with no seam inside it', () => {
    const u = tubeMesh(uBend, RADIUS, WALL);
    expect(bends(uBend)).toHaveLength(1);
    expect(straightIndices(uBend)).toHaveLength(2);
    expect(u.parts.map((p) => `${p.kind} ${p.index}`)).toEqual(['straight 0', 'bend 0', 'straight 1']);
    const rings = u.seams.length / 6 / 48;
    expect(rings).toBe(4);
  });

  it('stays finite where bends do not fit', () => {
    const cramped = centerline(
      [
        [0, 0, 0],
        [0, 30, 0],
        [0, 30, -40],
        [50, 30, -40],
      ],
      [63.6, 63.6],
    );
    const drawn = tubeMesh(cramped, RADIUS, WALL);
    expect(drawn.positions.every(Number.isFinite)).toBe(true);
    expect(drawn.normals.every(Number.isFinite)).toBe(true);
  });
});
