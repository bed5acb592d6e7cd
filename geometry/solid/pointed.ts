/**
 * A solid that is star-shaped about its axis at every height and may end in a point: rings of equal angles, each reach given
 * along its ray, closed below by a fan and above by a point or a fan. z along the axis. mm, radians.
 */
import type { Mesh } from './mesh';

export type Level = { readonly z: number; readonly reach: readonly number[] };

/** @param levels upward, at least one, all reaches above 0 @param tip z of the point; null ends it flat at the last level */
export function pointedSolid(levels: readonly Level[], tip: number | null): Mesh {
  const n = levels[0]!.reach.length;
  const positions: number[] = [];
  for (const { z, reach } of levels)
    reach.forEach((r, i) => {
      const a = (2 * Math.PI * i) / n;
      positions.push(r * Math.cos(a), r * Math.sin(a), z);
    });
  const foot = positions.length / 3;
  positions.push(0, 0, levels[0]!.z);
  const head = foot + 1;
  positions.push(0, 0, tip ?? levels.at(-1)!.z);
  const triangles: number[] = [];
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    triangles.push(foot, j, i);
    for (let k = 0; k + 1 < levels.length; k++) {
      const [a, b] = [k * n, (k + 1) * n];
      triangles.push(a + i, a + j, b + j, a + i, b + j, b + i);
    }
    const top = (levels.length - 1) * n;
    triangles.push(top + i, top + j, head);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Area within the reaches, by the polygon of their ends made round again: ∫ r²/2 dφ, by the trapezoidal rule of a periodic function. */
export const reachArea = (reach: readonly number[]): number =>
  (Math.PI / reach.length) * reach.reduce((sum, r) => sum + r * r, 0);
