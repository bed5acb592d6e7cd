/**
 * The solid between a floor and a ceiling over a triangulated plane region: floor and ceiling have the region's triangles,
 * and walls stand on its border. Where ceiling and floor meet, they share the corner, so the solid ends in an edge there.
 * x, y in the plane, z across it. mm.
 */
import type { Point2 } from '../plane/loop';
import { LEAST_MESH_STEP } from '../tolerance';
import type { Mesh } from './mesh';

export type PlaneRegion = {
  readonly points: readonly Point2[];
  /** Three corners a triangle, counter-clockwise; neighbours share corners. */
  readonly triangles: readonly (readonly [number, number, number])[];
};

export type Lifted = {
  readonly mesh: Mesh;
  /** Border edges of the region, [from, to] with the region on the left. */
  readonly border: readonly (readonly [number, number])[];
};

/** @param floor height at a point @param ceiling likewise, nowhere below the floor */
export function liftedSolid(
  { points, triangles }: PlaneRegion,
  floor: (p: Point2) => number,
  ceiling: (p: Point2) => number,
): Lifted {
  const positions: number[] = [];
  const put = ([x, y]: Point2, z: number): number => positions.push(x, y, z) / 3 - 1;
  const low = points.map((p) => put(p, floor(p)));
  const high = points.map((p, i) => {
    const z = ceiling(p);
    return z - floor(p) < LEAST_MESH_STEP ? low[i]! : put(p, z);
  });

  const corners: number[] = [];
  const face = (a: number, b: number, c: number) => {
    if (a !== b && b !== c && c !== a) corners.push(a, b, c);
  };
  const border = borderOf(triangles);
  for (const [a, b, c] of triangles) {
    // A triangle squeezed flat between floor and ceiling is no metal.
    if (low[a] === high[a] && low[b] === high[b] && low[c] === high[c]) continue;
    face(high[a]!, high[b]!, high[c]!);
    face(low[a]!, low[c]!, low[b]!);
  }
  for (const [a, b] of border) {
    face(low[a]!, low[b]!, high[b]!);
    face(low[a]!, high[b]!, high[a]!);
  }
  return { mesh: { positions: Float64Array.from(positions), triangles: Uint32Array.from(corners) }, border };
}

/** Edges that one triangle alone runs along. */
export function borderOf(triangles: PlaneRegion['triangles']): (readonly [number, number])[] {
  const found = new Map<string, readonly [number, number]>();
  for (const [a, b, c] of triangles)
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      if (!found.delete(`${to} ${from}`)) found.set(`${from} ${to}`, [from, to]);
    }
  return [...found.values()];
}
