/**
 * A soup with fewer triangles, no place of whose surface has moved farther than asked, either way: corners in one cell of a grid
 * become one, in the middle of the box about them (vertex clustering: Rossignac & Borrel, 1993). What shrinks to an edge or a
 * point beside no other triangle stays as such, so that a thin pipe is never lost. Any unit, the same for both.
 */
import { Numbering } from './numbering';
import type { TriangleSoup } from './soup';

/** Of a coordinate, as a part of it, where it is written in single precision. */
const ROUNDING = 2 ** -24;
/** A cell must fit into 32 bits beside the farthest coordinate. */
const MOST_CELLS = 2 ** 30;

/** @param most how far a place may move; where that is less than rounding the soup itself comes back */
export function thinSoup(soup: TriangleSoup, most: number): TriangleSoup {
  let far = 0;
  for (let i = 0; i < soup.length; i++) far = Math.max(far, Math.abs(soup[i]!));
  // From the middle of a box to its corner is half its diagonal.
  const cell = (2 / Math.sqrt(3)) * (most - 2 * far * ROUNDING);
  if (!(cell > 0) || far / cell >= MOST_CELLS) return soup;
  const { corners, places } = gathered(soup, cell);
  const out = new Float32Array(soup.length);
  let length = 0;
  const put = (n: number): void => {
    for (let k = 0; k < 3; k++) out[length++] = places[3 * n + k]!;
  };
  const seen = new Numbering();
  const edges = new Numbering();
  const used = new Uint8Array(places.length / 3);
  for (let t = 0; t < corners.length; t += 3) {
    const [a, b, c] = [corners[t]!, corners[t + 1]!, corners[t + 2]!];
    if (a === b || b === c || c === a) continue;
    const [low, high] = [Math.min(a, b, c), Math.max(a, b, c)];
    const { count } = seen;
    if (seen.of(low, a + b + c - low - high, high) < count) continue;
    put(a);
    put(b);
    put(c);
    used[a] = used[b] = used[c] = 1;
    edges.of(Math.min(a, b), Math.max(a, b), 0);
    edges.of(Math.min(b, c), Math.max(b, c), 0);
    edges.of(Math.min(c, a), Math.max(c, a), 0);
  }
  for (let t = 0; t < corners.length; t += 3) {
    const [a, b, c] = [corners[t]!, corners[t + 1]!, corners[t + 2]!];
    const [low, high] = [Math.min(a, b, c), Math.max(a, b, c)];
    if (low === high || (a !== b && b !== c && c !== a)) continue;
    const { count } = edges;
    if (edges.of(low, high, 0) < count) continue;
    put(low);
    put(high);
    put(high);
    used[low] = used[high] = 1;
  }
  for (let n = 0; n < used.length; n++) {
    if (used[n]) continue;
    for (let k = 0; k < 3; k++) put(n);
  }
  return out.slice(0, length);
}

/** The corners' cells by number, and for each cell the middle of what lies in it. */
function gathered(soup: TriangleSoup, cell: number): { corners: Uint32Array; places: Float64Array } {
  const cells = new Numbering();
  const corners = new Uint32Array(soup.length / 3);
  let boxes = new Float32Array(6 * 1024);
  for (let v = 0; v < corners.length; v++) {
    const { count } = cells;
    const o = 3 * v;
    const n = cells.of(Math.floor(soup[o]! / cell), Math.floor(soup[o + 1]! / cell), Math.floor(soup[o + 2]! / cell));
    corners[v] = n;
    if (6 * n === boxes.length) {
      const more = new Float32Array(2 * boxes.length);
      more.set(boxes);
      boxes = more;
    }
    for (let k = 0; k < 3; k++) {
      const x = soup[o + k]!;
      const low = 6 * n + k;
      if (n === count || x < boxes[low]!) boxes[low] = x;
      if (n === count || x > boxes[low + 3]!) boxes[low + 3] = x;
    }
  }
  const places = new Float64Array(3 * cells.count);
  for (let n = 0; n < cells.count; n++)
    for (let k = 0; k < 3; k++) places[3 * n + k] = (boxes[6 * n + k]! + boxes[6 * n + 3 + k]!) / 2;
  return { corners, places };
}
