/**
 * How a tube's rings are joined into triangles, and how deep each part of it is shaded. Follows from how many rings each
 * bend and straight has, which hardly changes along a drag: the last few are kept.
 */

/** Points of a ring. */
export const AROUND = 48;
const STRAIGHT_SHADE = 255;
const BEND_SHADE = 222;
const BORE_SHADE = 70;

/** A stretch of the outer wall; `index` counts as `Ref.bend` and `Ref.straight` do. */
export type TubePart = {
  readonly kind: 'bend' | 'straight';
  readonly index: number;
  /** The stretch's triangles, as a range of `indices`. */
  readonly first: number;
  readonly count: number;
};

export type Weave = {
  /** Greys that multiply the runner's colour, three bytes a vertex: bends a little deeper, the bore dark. */
  readonly shades: Uint8Array;
  readonly indices: Uint16Array | Uint32Array;
  /** How many of `indices`, from the first, are the outer wall. */
  readonly outerCount: number;
  readonly parts: readonly TubePart[];
};

type Run = Pick<TubePart, 'kind' | 'index'>;

const KEPT = 64;
const known = new Map<string, Weave>();

/**
 * Rings are numbered along the outer wall, then along the bore, then the two of each end.
 * @param starts the number of each run's first ring, and after the last run how many rings there are
 */
export function weave(runs: readonly Run[], starts: readonly number[]): Weave {
  const key = `${runs.map((r) => `${r.kind} ${r.index}`)} ${starts}`;
  const found = known.get(key) ?? woven(runs, starts);
  // What was used last stays longest.
  known.delete(key);
  known.set(key, found);
  if (known.size > KEPT) known.delete(known.keys().next().value!);
  return found;
}

function woven(runs: readonly Run[], starts: readonly number[]): Weave {
  const count = starts.at(-1)!;
  const vertices = (2 * count + 4) * AROUND;
  const shades = new Uint8Array(vertices * 3);
  const shade = (value: number, from: number, to?: number) =>
    shades.fill(value, from * AROUND * 3, to && to * AROUND * 3);
  runs.forEach((run, k) => {
    shade(run.kind === 'bend' ? BEND_SHADE : STRAIGHT_SHADE, starts[k]!, starts[k + 1]!);
  });
  shade(BORE_SHADE, count, 2 * count);
  shade(STRAIGHT_SHADE, 2 * count);

  const walls = count - runs.length;
  const size = (2 * walls + 2) * AROUND * 6;
  const indices = vertices > 0xffff ? new Uint32Array(size) : new Uint16Array(size);
  let at = 0;
  const parts = runs.map((run, k): TubePart => {
    const first = at;
    for (let i = starts[k]!; i < starts[k + 1]! - 1; i++) at = stitch(indices, at, i, i + 1);
    return { kind: run.kind, index: run.index, first, count: at - first };
  });
  const outerCount = at;
  runs.forEach((_, k) => {
    for (let i = starts[k]!; i < starts[k + 1]! - 1; i++) at = stitch(indices, at, count + i + 1, count + i);
  });
  if (count > 0) {
    const cap = 2 * count;
    at = stitch(indices, at, cap + 1, cap);
    stitch(indices, at, cap + 2, cap + 3);
  }
  return { shades, indices, outerCount, parts };
}

/** Joins ring `a` to ring `b` further along, facing outward. */
function stitch(indices: Uint16Array | Uint32Array, at: number, a: number, b: number): number {
  const [ra, rb] = [a * AROUND, b * AROUND];
  let i = at;
  for (let j = 0; j < AROUND; j++) {
    const k = j + 1 === AROUND ? 0 : j + 1;
    indices[i++] = ra + j;
    indices[i++] = ra + k;
    indices[i++] = rb + j;
    indices[i++] = rb + j;
    indices[i++] = ra + k;
    indices[i++] = rb + k;
  }
  return i;
}
