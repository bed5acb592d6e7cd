/**
 * Curves that meet end to end → closed loops. Ends nearer than the tolerance are one place; where an end meets none, or
 * more than one, the drawing is refused with that place, and how wide the gap is. The file's own unit.
 */
import type { Loop } from '../../../geometry';
import type { OutlineVertex } from '../../../shared/design/types';
import { DxfError } from './dxfError';
import type { Curve } from './readCurves';

type At = readonly [number, number];
type End = { readonly at: At; readonly piece: number; readonly last: boolean };

export function joinCurves(open: readonly Curve[], tolerance: number): { loop: Loop; layer: string }[] {
  const pieces = open.filter(({ vertices }) => lengthOf(vertices) > tolerance);
  const ends = pieces.flatMap(({ vertices }, piece): End[] => [
    { at: [vertices[0]![0], vertices[0]![1]], piece, last: false },
    { at: [vertices.at(-1)![0], vertices.at(-1)![1]], piece, last: true },
  ]);
  const partner = partners(ends, pieces, tolerance);
  const used = new Set<number>();
  const loops: { loop: Loop; layer: string }[] = [];
  for (const [start, piece] of pieces.entries()) {
    if (used.has(start)) continue;
    const loop: OutlineVertex[] = [];
    let [now, backward] = [start, false];
    do {
      used.add(now);
      const { vertices } = pieces[now]!;
      loop.push(...(backward ? reversed(vertices) : vertices).slice(0, -1));
      const out = partner[2 * now + (backward ? 0 : 1)]!;
      [now, backward] = [out >> 1, (out & 1) === 1];
    } while (now !== start);
    loops.push({ loop, layer: piece.layer });
  }
  return loops;
}

/** For each end, the one other that it meets. */
function partners(ends: readonly End[], pieces: readonly Curve[], tolerance: number): number[] {
  const near = cells(ends, tolerance);
  return ends.map((end, k) => {
    const met = near(end.at).filter((j) => j !== k && gap(ends[j]!.at, end.at) <= tolerance);
    const { place } = pieces[end.piece]!;
    if (met.length > 1)
      throw new DxfError(
        `${met.length + 1} ends meet at ${say(end.at)} (${place}): delete what is drawn twice, or is no edge of the flange`,
      );
    if (met.length === 1) return met[0]!;
    let nearest: End | null = null;
    for (const [j, other] of ends.entries())
      if (j !== k && (!nearest || gap(other.at, end.at) < gap(nearest.at, end.at))) nearest = other;
    const wide = nearest
      ? `; the nearest other end is ${round(gap(nearest.at, end.at))} away, at ${say(nearest.at)}`
      : '';
    throw new DxfError(
      `an open path ends at ${say(end.at)} (${place})${wide}: close the gap, or delete what is no edge of the flange`,
    );
  });
}

/** Ends by squares of the tolerance's size: those near a place lie in its square or one beside it. */
function cells(ends: readonly End[], size: number): (at: At) => number[] {
  const table = new Map<string, number[]>();
  const key = (x: number, y: number) => `${x} ${y}`;
  const cell = ([x, y]: At): At => [Math.floor(x / size), Math.floor(y / size)];
  for (const [k, { at }] of ends.entries()) {
    const [i, j] = cell(at);
    const here = table.get(key(i, j));
    if (here) here.push(k);
    else table.set(key(i, j), [k]);
  }
  return (at) => {
    const [i, j] = cell(at);
    const found: number[] = [];
    for (let a = -1; a <= 1; a++) for (let b = -1; b <= 1; b++) found.push(...(table.get(key(i + a, j + b)) ?? []));
    return found;
  };
}

const reversed = (vertices: readonly OutlineVertex[]): OutlineVertex[] =>
  vertices.map((_, k) => {
    const [x, y] = vertices[vertices.length - 1 - k]!;
    const before = vertices[vertices.length - 2 - k]?.[2] ?? 0;
    return [x, y, before === 0 ? 0 : -before];
  });

/** Of its chords: enough to tell whether it is longer than nothing. */
const lengthOf = (vertices: readonly OutlineVertex[]): number =>
  vertices.slice(1).reduce((sum, [x, y], k) => sum + Math.hypot(x - vertices[k]![0], y - vertices[k]![1]), 0);

const gap = (a: At, b: At): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const round = (x: number): number => Number(x.toPrecision(3));
const say = ([x, y]: At): string => `(${Math.round(x * 1000) / 1000}, ${Math.round(y * 1000) / 1000})`;
