/**
 * What every solid of ours must be, measured: closed, oriented outward, no zero-area triangle. Shared by tests, command
 * line and app. Volume by the divergence theorem, taken about a vertex so that far-off parts lose no digits. mm, mm², mm³.
 */
import { type Bounds, type Mesh, roundedToFloat32 } from '../solid/mesh';
import { meshCrossings } from './selfCrossing';

export type MeshReport = {
  /** Edges that belong to one triangle only. */
  readonly openEdges: number;
  /** Edges that two triangles run along the same way, or that more than two share. */
  readonly badEdges: number;
  /** Triangles whose corners lie on a line. */
  readonly zeroArea: number;
  /** Positive where the triangles face outward. */
  readonly volume: number;
  readonly area: number;
  readonly bounds: Bounds;
};

/** Measures the mesh as it is; round it first (`roundedToFloat32`) to judge what a single-precision file would hold. */
export function measureMesh(mesh: Mesh): MeshReport {
  return { ...countEdges(mesh), ...integrate(mesh), bounds: boundsOf(mesh) };
}

/** What is wrong with the mesh as a solid, in words; empty where it is sound. */
export function meshProblems(mesh: Mesh): string[] {
  if (mesh.triangles.length === 0) return ['it has no triangles'];
  if (!mesh.positions.every(Number.isFinite)) return ['it has a vertex that is not a finite number'];
  const report = measureMesh(mesh);
  const found: string[] = [];
  if (report.openEdges > 0) found.push(`it is not closed: ${report.openEdges} open edges`);
  if (report.badEdges > 0) found.push(`${report.badEdges} edges join triangles that do not face the same way`);
  if (report.zeroArea > 0) found.push(`${report.zeroArea} triangles have no area`);
  if (!(report.volume > 0)) found.push('it faces inward or encloses nothing');
  return found;
}

/** So many places are looked for where a part passes through itself: one is shown, the others counted. */
const MOST_CROSSINGS = 20;

/**
 * Thinner than this share of its length, a triangle cannot be told the way it faces by a reader who computes in single
 * precision: its two sides' product is off by the 2²³rd part of their lengths, and a thousandth of a turn is allowed.
 */
const NEEDLE = 1000 * 2 ** -23;

/**
 * What is wrong with the mesh as one piece of metal, in words: sound as a solid once rounded to the single precision that
 * files and pictures hold, one shell, no needle, nowhere through itself. Empty where it is so.
 */
export function partProblems(mesh: Mesh): string[] {
  const rounded = roundedToFloat32(mesh);
  const found = meshProblems(rounded);
  if (found.length > 0) return found;
  const needles = needleCount(rounded);
  if (needles > 0) found.push(`${needles} triangles are so thin that single precision loses which way they face`);
  const shells = shellCount(rounded);
  if (shells > 1) found.push(`it is ${shells} pieces, not one`);
  const crossings = meshCrossings(rounded, MOST_CROSSINGS);
  const first = crossings[0];
  if (!first) return found;
  const [one, other] = first.triangles;
  const others = crossings.length === MOST_CROSSINGS ? 'many' : `${crossings.length - 1}`;
  const more = crossings.length > 1 ? `, and at ${others} other places` : '';
  const at = first.at.map((x) => x.toFixed(2)).join(', ');
  found.push(`triangles ${one} and ${other} pass through each other at (${at})${more}`);
  return found;
}

function needleCount({ positions, triangles }: Mesh): number {
  let needles = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const [ux, uy, uz] = [0, 1, 2].map((k) => positions[b + k]! - positions[a + k]!) as [number, number, number];
    const [vx, vy, vz] = [0, 1, 2].map((k) => positions[c + k]! - positions[a + k]!) as [number, number, number];
    const longest = Math.max(
      ux * ux + uy * uy + uz * uz,
      vx * vx + vy * vy + vz * vz,
      (vx - ux) ** 2 + (vy - uy) ** 2 + (vz - uz) ** 2,
    );
    if (Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) < NEEDLE * longest) needles++;
  }
  return needles;
}

/** How many pieces the triangles make that share no corner. */
export function shellCount({ positions, triangles }: Mesh): number {
  const parent = Uint32Array.from({ length: positions.length / 3 }, (_, v) => v);
  const root = (v: number): number => {
    let top = v;
    while (parent[top] !== top) top = parent[top] = parent[parent[top]!]!;
    return top;
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const a = root(triangles[t]!);
    parent[root(triangles[t + 1]!)] = a;
    parent[root(triangles[t + 2]!)] = a;
  }
  const roots = new Set<number>();
  for (let t = 0; t < triangles.length; t += 3) roots.add(root(triangles[t]!));
  return roots.size;
}

/** In a closed, oriented mesh every edge is run along once each way. */
function countEdges({ positions, triangles }: Mesh): { openEdges: number; badEdges: number } {
  const vertices = positions.length / 3;
  const seen = new Map<number, number>();
  for (let t = 0; t < triangles.length; t += 3) {
    for (let k = 0; k < 3; k++) {
      const key = triangles[t + k]! * vertices + triangles[t + ((k + 1) % 3)]!;
      seen.set(key, (seen.get(key) ?? 0) + 1);
    }
  }
  let openEdges = 0;
  let badEdges = 0;
  for (const [key, count] of seen) {
    const from = Math.floor(key / vertices);
    const to = key - from * vertices;
    if (count > 1) badEdges++;
    else if (!seen.has(to * vertices + from)) openEdges++;
  }
  return { openEdges, badEdges };
}

function integrate({ positions, triangles }: Mesh): { zeroArea: number; volume: number; area: number } {
  const [ox, oy, oz] = [positions[0] ?? 0, positions[1] ?? 0, positions[2] ?? 0];
  let zeroArea = 0;
  let volume = 0;
  let area = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 3 * triangles[t]!;
    const b = 3 * triangles[t + 1]!;
    const c = 3 * triangles[t + 2]!;
    const [ax, ay, az] = [positions[a]! - ox, positions[a + 1]! - oy, positions[a + 2]! - oz];
    const [ux, uy, uz] = [positions[b]! - ox - ax, positions[b + 1]! - oy - ay, positions[b + 2]! - oz - az];
    const [vx, vy, vz] = [positions[c]! - ox - ax, positions[c + 1]! - oy - ay, positions[c + 2]! - oz - az];
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const twice = Math.hypot(nx, ny, nz);
    if (twice === 0) zeroArea++;
    area += twice / 2;
    volume += (ax * nx + ay * ny + az * nz) / 6;
  }
  return { zeroArea, volume, area };
}

/** The box around every vertex; of an empty mesh, from +∞ to −∞. */
export function boundsOf({ positions }: Mesh): Bounds {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const axis = (i % 3) as 0 | 1 | 2;
    min[axis] = Math.min(min[axis], positions[i]!);
    max[axis] = Math.max(max[axis], positions[i]!);
  }
  return { min, max };
}
