/** Meshes made ready to be lit: sharp where they have edges, smooth where they are round, the same surface as before. */
import { describe, expect, it } from 'vitest';
import { frustumSolid, type Mesh } from '../../../geometry';
import { creased } from '../../../src/app/made/creased';
import { shownPart } from '../../../src/app/made/shape';

/** Corners of a unit cube by their bits, two triangles a side, seen from outside. */
const cube: Mesh = {
  positions: Float64Array.from([0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) => [i & 1, (i >> 1) & 1, (i >> 2) & 1])),
  triangles: Uint32Array.from(
    [
      [0, 2, 3, 1],
      [4, 5, 7, 6],
      [0, 1, 5, 4],
      [2, 6, 7, 3],
      [0, 4, 6, 2],
      [1, 3, 7, 5],
    ].flatMap(([a, b, c, d]) => [a!, b!, c!, a!, c!, d!]),
  ),
};

/** A solid round bar along z. */
function bar(sides: number): Mesh {
  const positions: number[] = [0, 0, 0, 0, 0, 5];
  for (const z of [0, 5])
    for (let k = 0; k < sides; k++)
      positions.push(Math.cos((2 * Math.PI * k) / sides), Math.sin((2 * Math.PI * k) / sides), z);
  const triangles: number[] = [];
  for (let k = 0; k < sides; k++) {
    const [a, b] = [2 + k, 2 + ((k + 1) % sides)];
    const [c, d] = [a + sides, b + sides];
    triangles.push(0, b, a, 1, c, d, a, b, d, a, d, c);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

const corner = (points: Float32Array, i: number) => [...points.subarray(3 * i, 3 * i + 3)];

describe('a creased mesh', () => {
  it('gives each side of a cube corners of its own, square to it', () => {
    const { positions, normals, indices } = creased(cube);
    expect(positions.length / 3).toBe(24);
    for (let i = 0; i < normals.length; i += 3)
      expect([...normals.subarray(i, i + 3)].map(Math.abs).sort()).toEqual([0, 0, 1]);
    // The same triangles at the same places, in the same order.
    indices.forEach((index, c) => {
      const at = cube.triangles[c]!;
      expect(corner(positions, index)).toEqual([...cube.positions.subarray(3 * at, 3 * at + 3)]);
    });
  });

  it('is smooth round a bar and sharp at its ends', () => {
    const { positions, normals } = creased(bar(24));
    // Round the wall twice, and each end's rim and middle.
    expect(positions.length / 3).toBe(2 * 24 + 2 * 25);
    for (let i = 0; i < normals.length; i += 3) {
      const [x, y, z] = normals.subarray(i, i + 3) as unknown as [number, number, number];
      if (Math.abs(z) > 0.5) expect(Math.abs(z)).toBeCloseTo(1, 6);
      else expect(x * positions[i]! + y * positions[i + 1]!).toBeCloseTo(1, 6);
    }
  });

  it('keeps the sides of a bar apart that turns by more than a crease', () => {
    expect(creased(bar(8)).positions.length / 3).toBe(8 * 4 + 2 * 9);
  });

  it('has an edge wherever a line is drawn', () => {
    const mesh = bar(24);
    const [a, b] = [2, 2 + 24].map((v) => [...mesh.positions.subarray(3 * v, 3 * v + 3)]);
    const lined = creased(mesh, [...b!, ...a!]);
    expect(lined.positions.length / 3).toBe(2 * 24 + 2 * 25 + 2);
  });
});

describe('a part as it is drawn', () => {
  const part = {
    id: 'collector m cone',
    kind: 'cone' as const,
    name: 'cone',
    of: { kind: 'merge' as const, id: 'm' },
    pose: { position: [0, 0, 0], direction: [0, 0, 1], up: [0, 1, 0] } as const,
    volume: 1,
    material: undefined,
    edges: new Float32Array(0),
  };
  /** A bar with a bore through it, as a cone of a collector has. */
  const sleeve = (): Mesh => {
    const n = 32;
    const positions: number[] = [];
    for (const [r, z] of [
      [10, 0],
      [10, 20],
      [8, 20],
      [8, 0],
    ] as const)
      for (let k = 0; k < n; k++)
        positions.push(r * Math.cos((2 * Math.PI * k) / n), r * Math.sin((2 * Math.PI * k) / n), z);
    const triangles: number[] = [];
    for (let ring = 0; ring < 4; ring++)
      for (let k = 0; k < n; k++) {
        const [a, b] = [ring * n + k, ring * n + ((k + 1) % n)];
        const [c, d] = [((ring + 1) % 4) * n + k, ((ring + 1) % 4) * n + ((k + 1) % n)];
        triangles.push(a, b, d, a, d, c);
      }
    return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
  };

  it('has its bore last, and dark', () => {
    const { shape } = shownPart({ ...part, mesh: sleeve() });
    const inner = shape.indices.subarray(shape.outerCount);
    expect(inner.length).toBe(32 * 6);
    for (const v of inner) {
      expect(Math.hypot(shape.positions[3 * v]!, shape.positions[3 * v + 1]!)).toBeCloseTo(8, 5);
      expect(shape.shades[3 * v]).toBeLessThan(128);
    }
    for (const v of shape.indices.subarray(0, shape.outerCount)) expect(shape.shades[3 * v]).toBe(255);
    expect(shape.middle).toEqual([0, 0, 10]);
    expect(shape.half).toEqual([10, 10, 10]);
  });

  it('has the same print for the same shape, and another for another', () => {
    const print = (mesh: Mesh, edges = part.edges) => shownPart({ ...part, edges, mesh }).print;
    const first = print(
      frustumSolid({ position: [0, 0, 0], axis: [0, 0, 1], length: 9, startRadius: 5, endRadius: 3 }),
    );
    const again = print(
      frustumSolid({ position: [0, 0, 0], axis: [0, 0, 1], length: 9, startRadius: 5, endRadius: 3 }),
    );
    const other = print(
      frustumSolid({ position: [0, 0, 0], axis: [0, 0, 1], length: 9, startRadius: 5, endRadius: 3.01 }),
    );
    expect(again).toBe(first);
    expect(other).not.toBe(first);
    expect(print(sleeve(), Float32Array.of(0, 0, 0, 1, 1, 1))).not.toBe(print(sleeve()));
  });
});
