/** Large meshes are thinned for seeking only: what is found keeps its clearance to the mesh as it is. */
import { expect, test } from 'vitest';
import { lengthWindows, type Meshes } from '../../../geometry';
import type { Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { designOf } from './single';

/** A flat sheet of 2·n² triangles. */
function sheet(n: number, at: (u: number, v: number) => Vec3): Float32Array {
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
  return Float32Array.from(soup);
}

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
