/** Large meshes are thinned for seeking only: what is found keeps its clearance to the mesh as it is. */
import { describe, expect, test } from 'vitest';
import { lengthWindows, type Meshes } from '../../../geometry';
import { clustered } from '../../../geometry/window/thinned';
import type { Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { designOf } from './single';

/** A flat sheet of 2·n² triangles. */
function sheet(n: number, at: (u: number, v: number) => Vec3): Float64Array {
  const soup: number[] = [];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [a, b, c, d] = [
        at(i / n, j / n),
        at((i + 1) / n, j / n),
        at((i + 1) / n, (j + 1) / n),
        at(i / n, (j + 1) / n),
      ];
      soup.push(...a, ...b, ...c, ...a, ...c, ...d);
    }
  return Float64Array.from(soup);
}

describe('a clustered mesh', () => {
  const soup = sheet(60, (u, v) => [300 * u, 300 * v, 5 + 10 * Math.sin(9 * u)]);
  const thin = clustered(soup, 12);

  test('has few triangles, and vertices no farther than a cell from those it had', () => {
    expect(thin.length).toBeLessThan(soup.length / 4);
    expect(thin.length).toBeGreaterThan(9 * 500);
    for (let v = 0; v < thin.length; v += 3 * 31) {
      let nearest = Number.POSITIVE_INFINITY;
      for (let w = 0; w < soup.length; w += 3)
        nearest = Math.min(
          nearest,
          Math.hypot(thin[v]! - soup[w]!, thin[v + 1]! - soup[w + 1]!, thin[v + 2]! - soup[w + 2]!),
        );
      expect(nearest).toBeLessThan(12 * Math.sqrt(3));
    }
  });

  test('covers the same area, and keeps every triangle where cells are small', () => {
    const flat = sheet(40, (u, v) => [300 * u, 300 * v, 3]);
    const area = (s: Float64Array): number => {
      let sum = 0;
      for (let t = 0; t < s.length; t += 9) {
        const [ux, uy, vx, vy] = [s[t + 3]! - s[t]!, s[t + 4]! - s[t + 1]!, s[t + 6]! - s[t]!, s[t + 7]! - s[t + 1]!];
        sum += Math.abs(ux * vy - uy * vx) / 2;
      }
      return sum;
    };
    expect(area(clustered(flat, 20))).toBeGreaterThan(0.85 * 300 * 300);
    expect(clustered(flat, 1)).toHaveLength(flat.length);
  });
});

test('a wall as a fine mesh lengthens a runner as much as the same wall as a box', () => {
  const shortest = (surroundings: Surrounding[], meshes?: Meshes): number =>
    lengthWindows(designOf([0, 500, -200], [0, 1, 0], {}, surroundings), meshes).runners[0]!.shortest!;
  const [low, high]: [Vec3, Vec3] = [
    [-150, 250, -300],
    [150, 250, -40],
  ];
  const boxed = shortest([{ id: 'wall', shape: 'box', min: low, max: [150, 250.01, -40], clearance: 6 }]);
  const soup = sheet(64, (u, v) => [low[0] + u * (high[0] - low[0]), 250, low[2] + v * (high[2] - low[2])]);
  const meshed = shortest(
    [{ id: 'wall', shape: 'mesh', file: 'wall.stl', unit: 'mm', clearance: 6 }],
    new Map([['wall.stl', soup]]),
  );
  expect(boxed).toBeGreaterThan(shortest([]) + 1);
  // The same wall, the same least: the thinned one only leads there.
  expect(Math.abs(meshed - boxed)).toBeLessThan(1);
});
