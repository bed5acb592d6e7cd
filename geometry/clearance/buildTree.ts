/**
 * Builds the flat hierarchy behind `triangleTree`, in the soup's own frame and unit: nodes in the order of a walk, so that a branch's first child is the next
 * node, and triangles in the order of the leaves, so that what is searched together lies together in memory. Splits by the
 * surface-area heuristic over bins of the boxes' middles on the axis along which they spread widest (Wald 2007; all three axes made
 * the building twice as long and the answers no faster); where it has nothing to say
 * (middles in one place, or too deep) a run is halved.
 */
import { type Corners, triangleKind } from './triangle';

/** In single precision as scans are, or in double as parts of our own making are. */
export type FlatTree<A extends Corners = Float32Array> = {
  /** Six numbers a node: low x, y, z, high x, y, z. */
  readonly bounds: A;
  /** A leaf: its first triangle. A branch: its second child. */
  readonly link: Uint32Array;
  /** A leaf: how many triangles. A branch: 0. */
  readonly count: Uint8Array;
  /** Nine numbers a triangle, in the order of the leaves: the soup that came in, otherwise sorted. */
  readonly soup: A;
  /** `triangleKind` of each. */
  readonly kinds: Uint8Array;
  /** Never more nodes than this wait while a walk goes down. */
  readonly depth: number;
};

const LEAF = 4;
const BINS = 16;
/** A run this small is not worth as many. */
const SMALL = 24;
const FEW_BINS = 6;
/** Below this the halving begins: a run of 2³² more fits under it. */
const DEEPEST_SPLIT = 64;

/** Hears which part of the work is done, from 0 to 1. */
export type Progress = (part: number) => void;

/** How many triangles find their leaf between two words of progress. */
const STRIDE = 32_768;
/** The sorting's part of the work; copying and the bounds are the rest. */
const SORTING = 0.8;

/** @param soup nine numbers a triangle, in any unit; left as it is */
export const buildTree = <A extends Corners>(soup: A, progress?: Progress): FlatTree<A> =>
  buildOrdered(soup, progress).tree;

/** With what each triangle was in the soup that came in. */
export function buildOrdered<A extends Corners>(
  soup: A,
  progress?: Progress,
): { readonly tree: FlatTree<A>; readonly order: Uint32Array } {
  const total = Math.floor(soup.length / 9);
  const split = splitter(soup, total);
  let link = new Uint32Array(Math.max(1, total));
  let count = new Uint8Array(Math.max(1, total));
  let nodes = 0;
  let depth = 0;
  let told = 0;
  const node = (first: number, past: number, level: number): void => {
    if (nodes === link.length) [link, count] = [grown(link, Uint32Array), grown(count, Uint8Array)];
    const own = nodes++;
    depth = Math.max(depth, level);
    if (past - first <= LEAF) {
      link[own] = first;
      count[own] = past - first;
      if (progress && past - told >= STRIDE) {
        told = past;
        progress((SORTING * past) / total);
      }
      return;
    }
    const middle = level < DEEPEST_SPLIT ? split.at(first, past) : (first + past) >> 1;
    node(first, middle, level + 1);
    link[own] = nodes;
    node(middle, past, level + 1);
  };
  if (total > 0) node(0, total, 1);
  const sorted = likeIt(soup, 9 * total);
  const kinds = new Uint8Array(total);
  for (let t = 0; t < total; t++) {
    const from = 9 * split.order[t]!;
    for (let k = 0; k < 9; k++) sorted[9 * t + k] = soup[from + k]!;
    kinds[t] = triangleKind(sorted, 9 * t);
  }
  link = link.slice(0, nodes);
  count = count.slice(0, nodes);
  const tree = { bounds: boundsOf(link, count, sorted), link, count, soup: sorted, kinds, depth };
  progress?.(1);
  return { tree, order: split.order };
}

const likeIt = <A extends Corners>(soup: A, length: number): A =>
  (soup instanceof Float32Array ? new Float32Array(length) : new Float64Array(length)) as A;

function grown<A extends Uint32Array | Uint8Array>(old: A, Kind: new (length: number) => A): A {
  const more = new Kind(2 * old.length);
  more.set(old);
  return more;
}

/** Exact, as the corners are in single precision too; from the leaves up: a child always comes after its branch. */
function boundsOf<A extends Corners>(link: Uint32Array, count: Uint8Array, soup: A): A {
  const bounds = likeIt(soup, 6 * link.length);
  for (let n = link.length - 1; n >= 0; n--) {
    const own = 6 * n;
    if (count[n] === 0) {
      const [one, two] = [own + 6, 6 * link[n]!];
      for (let k = 0; k < 3; k++) {
        bounds[own + k] = Math.min(bounds[one + k]!, bounds[two + k]!);
        bounds[own + 3 + k] = Math.max(bounds[one + 3 + k]!, bounds[two + 3 + k]!);
      }
      continue;
    }
    const from = 9 * link[n]!;
    const past = from + 9 * count[n]!;
    for (let k = 0; k < 3; k++) {
      let low = soup[from + k]!;
      let high = low;
      for (let i = from + k + 3; i < past; i += 3) {
        low = Math.min(low, soup[i]!);
        high = Math.max(high, soup[i]!);
      }
      bounds[own + k] = low;
      bounds[own + 3 + k] = high;
    }
  }
  return bounds;
}

/**
 * Boxes in single precision, moved along with the order so that every pass reads memory in a row: they choose splits only,
 * the bounds are made exactly from the triangles.
 */
function splitter(soup: Corners, total: number) {
  const order = new Uint32Array(total);
  const boxes = new Float32Array(6 * total);
  for (let t = 0; t < total; t++) {
    order[t] = t;
    for (let k = 0; k < 3; k++) {
      const a = soup[9 * t + k]!;
      const b = soup[9 * t + 3 + k]!;
      const c = soup[9 * t + 6 + k]!;
      boxes[6 * t + k] = Math.min(a, b, c);
      boxes[6 * t + 3 + k] = Math.max(a, b, c);
    }
  }
  const bins = new Float64Array(BINS * 6);
  const held = new Uint32Array(BINS);
  const right = new Float64Array(BINS);
  const grow = new Float64Array(6);
  /** Of the run being split: the axis along which its middles spread widest, where they begin (twice), bins a millimetre. */
  let axis = 0;
  let begin = 0;
  let rate = 0;
  let used = BINS;

  return { order, at };

  function at(first: number, past: number): number {
    used = past - first < SMALL ? FEW_BINS : BINS;
    spread(first, past);
    if (rate === 0) return (first + past) >> 1;
    fill(first, past);
    const bin = cheapest();
    return bin < 0 ? (first + past) >> 1 : partition(first, past, bin);
  }

  function spread(first: number, past: number): void {
    let [lx, ly, lz] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    let [hx, hy, hz] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = 6 * first; i < 6 * past; i += 6) {
      const x = boxes[i]! + boxes[i + 3]!;
      const y = boxes[i + 1]! + boxes[i + 4]!;
      const z = boxes[i + 2]! + boxes[i + 5]!;
      if (x < lx) lx = x;
      if (x > hx) hx = x;
      if (y < ly) ly = y;
      if (y > hy) hy = y;
      if (z < lz) lz = z;
      if (z > hz) hz = z;
    }
    const [wx, wy, wz] = [hx - lx, hy - ly, hz - lz];
    axis = wx >= wy && wx >= wz ? 0 : wy >= wz ? 1 : 2;
    begin = axis === 0 ? lx : axis === 1 ? ly : lz;
    const r = used / Math.max(wx, wy, wz);
    rate = Number.isFinite(r) ? r : 0;
  }

  function fill(first: number, past: number): void {
    held.fill(0);
    for (let b = 0; b < 6 * used; b += 6)
      for (let k = 0; k < 3; k++) {
        bins[b + k] = Number.POSITIVE_INFINITY;
        bins[b + 3 + k] = Number.NEGATIVE_INFINITY;
      }
    const [along, from, perMm, last] = [axis, begin, rate, used - 1];
    for (let i = 6 * first; i < 6 * past; i += 6) {
      const bin = ((boxes[i + along]! + boxes[i + 3 + along]! - from) * perMm) | 0;
      const b = Math.min(bin, last);
      held[b] = held[b]! + 1;
      const o = 6 * b;
      const x0 = boxes[i]!,
        y0 = boxes[i + 1]!,
        z0 = boxes[i + 2]!;
      const x1 = boxes[i + 3]!,
        y1 = boxes[i + 4]!,
        z1 = boxes[i + 5]!;
      if (x0 < bins[o]!) bins[o] = x0;
      if (y0 < bins[o + 1]!) bins[o + 1] = y0;
      if (z0 < bins[o + 2]!) bins[o + 2] = z0;
      if (x1 > bins[o + 3]!) bins[o + 3] = x1;
      if (y1 > bins[o + 4]!) bins[o + 4] = y1;
      if (z1 > bins[o + 5]!) bins[o + 5] = z1;
    }
  }

  /** The split with the least sum of area times triangles: the first bin of its right side, −1 where there is none. */
  function cheapest(): number {
    emptied();
    let behind = 0;
    for (let bin = used - 1; bin > 0; bin--) {
      behind += take(bin);
      right[bin] = behind > 0 ? behind * area() : Number.POSITIVE_INFINITY;
    }
    emptied();
    let before = 0;
    let least = Number.POSITIVE_INFINITY;
    let found = -1;
    for (let bin = 1; bin < used; bin++) {
      before += take(bin - 1);
      if (before === 0) continue;
      const cost = before * area() + right[bin]!;
      if (cost >= least) continue;
      least = cost;
      found = bin;
    }
    return found;
  }

  function emptied(): void {
    grow.fill(Number.POSITIVE_INFINITY, 0, 3);
    grow.fill(Number.NEGATIVE_INFINITY, 3);
  }

  function take(b: number): number {
    for (let k = 0; k < 3; k++) {
      grow[k] = Math.min(grow[k]!, bins[6 * b + k]!);
      grow[3 + k] = Math.max(grow[3 + k]!, bins[6 * b + 3 + k]!);
    }
    return held[b]!;
  }

  function area(): number {
    const x = grow[3]! - grow[0]!;
    const y = grow[4]! - grow[1]!;
    const z = grow[5]! - grow[2]!;
    return x * y + y * z + z * x;
  }

  function partition(first: number, past: number, bin: number): number {
    const [along, from, perMm, last] = [axis, begin, rate, used - 1];
    let i = first;
    let j = past - 1;
    for (;;) {
      while (i <= j && Math.min(last, ((boxes[6 * i + along]! + boxes[6 * i + 3 + along]! - from) * perMm) | 0) < bin)
        i++;
      while (i <= j && Math.min(last, ((boxes[6 * j + along]! + boxes[6 * j + 3 + along]! - from) * perMm) | 0) >= bin)
        j--;
      if (i >= j) return i;
      swap(i, j);
    }
  }

  function swap(i: number, j: number): void {
    const kept = order[i]!;
    order[i] = order[j]!;
    order[j] = kept;
    for (let k = 0; k < 6; k++) {
      const box = boxes[6 * i + k]!;
      boxes[6 * i + k] = boxes[6 * j + k]!;
      boxes[6 * j + k] = box;
    }
  }
}
