/**
 * A closed mesh made ready to be lit: corners are split where the surface has an edge, and share a normal where it is
 * smooth. An edge is where two facets meet at more than a crease's angle, or where a line is drawn. Any one length unit.
 */
import type { Mesh } from '../../../geometry';

export type Creased = {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** In the order of the mesh's triangles. */
  readonly indices: Uint32Array;
};

/** Chords of a round wall turn by a few degrees, what is cut or welded by more. */
export const CREASE_DEG = 35;
/** Ends of a drawn line count as on a corner this near, as a share of a millimetre. */
const SAME_PLACE = 1000;

/** @param lines pairs of points: where one of them runs along a facet's side, that is an edge however flat */
export function creased({ positions, triangles }: Mesh, lines: ArrayLike<number> = []): Creased {
  const count = triangles.length;
  const facing = facets(positions, triangles);
  const flat = Math.cos((CREASE_DEG * Math.PI) / 180);
  const drawn = drawnSides(lines);

  // Corners that share a normal are gathered into trees; each names the one above it.
  const above = Uint32Array.from({ length: count }, (_, i) => i);
  const root = (corner: number): number => {
    let top = corner;
    while (above[top] !== top) top = above[top]!;
    for (let c = corner; above[c] !== top; ) {
      const next = above[c]!;
      above[c] = top;
      c = next;
    }
    return top;
  };
  const unite = (a: number, b: number) => {
    above[root(a)] = root(b);
  };

  const sides = new Map<number, number>();
  const vertices = positions.length / 3;
  for (let c = 0; c < count; c++) {
    const d = c % 3 === 2 ? c - 2 : c + 1;
    const [from, to] = [triangles[c]!, triangles[d]!];
    const key = from < to ? from * vertices + to : to * vertices + from;
    const other = sides.get(key);
    if (other === undefined) {
      sides.set(key, c);
      continue;
    }
    const [s, t] = [3 * Math.floor(c / 3), 3 * Math.floor(other / 3)];
    const cosine = facing[s]! * facing[t]! + facing[s + 1]! * facing[t + 1]! + facing[s + 2]! * facing[t + 2]!;
    if (cosine < flat || drawn(positions, from, to)) continue;
    // The neighbour runs along the shared side the other way.
    unite(c, other % 3 === 2 ? other - 2 : other + 1);
    unite(d, other);
  }

  const place = new Map<number, number>();
  const indices = new Uint32Array(count);
  for (let c = 0; c < count; c++) {
    const top = root(c);
    let at = place.get(top);
    if (at === undefined) {
      at = place.size;
      place.set(top, at);
    }
    indices[c] = at;
  }
  const split = new Float32Array(3 * place.size);
  const sums = new Float64Array(3 * place.size);
  for (let c = 0; c < count; c++) {
    const [to, from, facet] = [3 * indices[c]!, 3 * triangles[c]!, 3 * Math.floor(c / 3)];
    const share = cornerAngle(positions, triangles, c);
    for (let k = 0; k < 3; k++) {
      split[to + k] = positions[from + k]!;
      sums[to + k] = sums[to + k]! + share * facing[facet + k]!;
    }
  }
  const normals = new Float32Array(sums.length);
  for (let i = 0; i < sums.length; i += 3) {
    const long = Math.hypot(sums[i]!, sums[i + 1]!, sums[i + 2]!) || 1;
    for (let k = 0; k < 3; k++) normals[i + k] = sums[i + k]! / long;
  }
  return { positions: split, normals, indices };
}

/** The unit normal of each triangle. */
function facets(p: Float64Array, triangles: Uint32Array): Float64Array {
  const normals = new Float64Array(triangles.length);
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [3 * triangles[i]!, 3 * triangles[i + 1]!, 3 * triangles[i + 2]!];
    const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
    const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
    const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const long = Math.hypot(x, y, z) || 1;
    normals[i] = x / long;
    normals[i + 1] = y / long;
    normals[i + 2] = z / long;
  }
  return normals;
}

/** The facet's angle at a corner: what it adds to the normal there, however its neighbours are cut into triangles. */
function cornerAngle(p: Float64Array, triangles: Uint32Array, corner: number): number {
  const first = 3 * Math.floor(corner / 3);
  const at = 3 * triangles[corner]!;
  const next = 3 * triangles[first + ((corner + 1) % 3)]!;
  const last = 3 * triangles[first + ((corner + 2) % 3)]!;
  const [ux, uy, uz] = [p[next]! - p[at]!, p[next + 1]! - p[at + 1]!, p[next + 2]! - p[at + 2]!];
  const [vx, vy, vz] = [p[last]! - p[at]!, p[last + 1]! - p[at + 1]!, p[last + 2]! - p[at + 2]!];
  return Math.atan2(Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx), ux * vx + uy * vy + uz * vz);
}

function drawnSides(lines: ArrayLike<number>) {
  const name = (points: ArrayLike<number>, at: number) =>
    `${Math.round(points[at]! * SAME_PLACE)} ${Math.round(points[at + 1]! * SAME_PLACE)} ${Math.round(points[at + 2]! * SAME_PLACE)}`;
  const both = (a: string, b: string) => (a < b ? `${a}|${b}` : `${b}|${a}`);
  const known = new Set<string>();
  for (let i = 0; i + 5 < lines.length; i += 6) known.add(both(name(lines, i), name(lines, i + 3)));
  return (positions: Float64Array, from: number, to: number): boolean =>
    known.size > 0 && known.has(both(name(positions, 3 * from), name(positions, 3 * to)));
}
