import { describe, expect, test } from 'vitest';
import { joinMeshes, type Mesh, measureMesh, meshProblems } from '../../../geometry';

/** A box corner: the tetrahedron on the three unit axes, scaled; volume k³/6. */
function corner(k = 1, at = 0): Mesh {
  return {
    positions: Float64Array.from([0, 0, 0, k, 0, 0, 0, k, 0, 0, 0, k], (v) => v + at),
    triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]),
  };
}

const withTriangles = (...triangles: number[]): Mesh => ({ ...corner(), triangles: Uint32Array.from(triangles) });

describe('mesh invariants', () => {
  test('a sound solid has nothing to say, and its volume and area are right wherever it lies', () => {
    for (const at of [0, 5000]) {
      const report = measureMesh(corner(2, at));
      expect(meshProblems(corner(2, at))).toEqual([]);
      expect(report.volume).toBeCloseTo(8 / 6, 12);
      expect(report.area).toBeCloseTo(3 * 2 + 2 * Math.sqrt(3), 12);
    }
  });

  test('a missing triangle is three open edges', () => {
    expect(meshProblems(withTriangles(0, 2, 1, 0, 1, 3, 0, 3, 2))[0]).toBe('it is not closed: 3 open edges');
  });

  test('a turned triangle is three bad edges', () => {
    expect(meshProblems(withTriangles(0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 3, 2)).join()).toMatch(/3 edges join triangles/);
  });

  test('an inside-out solid is found by its volume', () => {
    expect(meshProblems(withTriangles(0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 3, 2))).toEqual([
      'it faces inward or encloses nothing',
    ]);
  });

  test('corners on a line are a triangle without area', () => {
    const flat = { ...corner(), positions: Float64Array.from([0, 0, 0, 1, 0, 0, 2, 0, 0, 0, 0, 1]) };
    expect(meshProblems(flat).join()).toMatch(/1 triangles have no area/);
  });

  test('nothing, and numbers that are not numbers, are said', () => {
    expect(meshProblems(withTriangles())).toEqual(['it has no triangles']);
    const holed = corner();
    holed.positions[4] = Number.NaN;
    expect(meshProblems(holed)).toEqual(['it has a vertex that is not a finite number']);
  });

  test('joined shells keep their volumes and share nothing', () => {
    const both = joinMeshes([corner(1), corner(2, 50)]);
    expect(meshProblems(both)).toEqual([]);
    expect(measureMesh(both).volume).toBeCloseTo(1 / 6 + 8 / 6, 10);
  });
});
