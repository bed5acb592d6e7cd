/**
 * A part as the picture takes it: single precision, corners split at its creases, outside before inside, and a print by
 * which two makings of it are told to be alike. mm, in the part's own frame.
 */
import type { HeaderPart, PartKind } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { creased } from './creased';

export type Shape = {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** Greys that multiply the metal's colour, three bytes a vertex: the bore is dark. */
  readonly shades: Uint8Array;
  readonly indices: Uint32Array;
  /** How many of `indices`, from the first, are seen from outside. */
  readonly outerCount: number;
  /** Weld and cut lines, as pairs of points. */
  readonly edges: Float32Array;
  /** Of the box round it. */
  readonly middle: Vec3;
  readonly half: Vec3;
};

export type ShownPart = Omit<HeaderPart, 'mesh' | 'edges'> & {
  readonly shape: Shape;
  /** Alike for alike shapes. */
  readonly print: string;
};

const PLAIN_SHADE = 255;
const BORE_SHADE = 78;
/** Kinds that gas flows through, with the axis of their own frame in the middle. */
const HOLLOW: ReadonlySet<PartKind> = new Set(['transition', 'tube', 'stub', 'cone', 'outlet', 'joint']);
/** A wall that faces the axis at least so squarely is a bore. */
const INWARD = -0.4;

export function shownPart({ mesh, edges, ...part }: HeaderPart): ShownPart {
  // A tube's picture is its runner's, which follows every drag.
  if (part.kind === 'tube') return { ...part, shape: { ...EMPTY, ...boxOf(mesh.positions) }, print: '' };
  const split = creased(mesh, edges);
  const inner = HOLLOW.has(part.kind) ? borers(split.positions, split.normals) : null;
  const shades = new Uint8Array(split.positions.length).fill(PLAIN_SHADE);
  if (inner) for (let v = 0; v < inner.length; v++) if (inner[v]) shades.fill(BORE_SHADE, 3 * v, 3 * v + 3);
  const { indices, outerCount } = outerFirst(split.indices, inner);
  const shape: Shape = {
    positions: split.positions,
    normals: split.normals,
    shades,
    indices,
    outerCount,
    edges: Float32Array.from(edges),
    ...boxOf(split.positions),
  };
  return { ...part, shape, print: printOf(shape) };
}

const EMPTY = {
  positions: new Float32Array(0),
  normals: new Float32Array(0),
  shades: new Uint8Array(0),
  indices: new Uint32Array(0),
  outerCount: 0,
  edges: new Float32Array(0),
};

/** What of a part can be handed to another thread without copying. */
export const buffersOf = ({ kind, shape }: ShownPart): ArrayBufferLike[] =>
  kind === 'tube'
    ? []
    : [shape.positions, shape.normals, shape.shades, shape.indices, shape.edges].map((array) => array.buffer);

function borers(positions: Float32Array, normals: Float32Array): Uint8Array {
  const inner = new Uint8Array(positions.length / 3);
  for (let v = 0; v < inner.length; v++) {
    const [x, y] = [positions[3 * v]!, positions[3 * v + 1]!];
    inner[v] = x * normals[3 * v]! + y * normals[3 * v + 1]! < INWARD * Math.hypot(x, y) ? 1 : 0;
  }
  return inner;
}

function outerFirst(indices: Uint32Array, inner: Uint8Array | null): Pick<Shape, 'indices' | 'outerCount'> {
  if (!inner) return { indices, outerCount: indices.length };
  const sorted = new Uint32Array(indices.length);
  let [front, back] = [0, indices.length];
  for (let i = 0; i < indices.length; i += 3) {
    const isInner = inner[indices[i]!]! + inner[indices[i + 1]!]! + inner[indices[i + 2]!]! === 3;
    if (isInner) back -= 3;
    sorted.set(indices.subarray(i, i + 3), isInner ? back : front);
    if (!isInner) front += 3;
  }
  return { indices: sorted, outerCount: front };
}

function boxOf(positions: Float32Array | Float64Array): Pick<Shape, 'middle' | 'half'> {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const k = (i % 3) as 0 | 1 | 2;
    low[k] = Math.min(low[k], positions[i]!);
    high[k] = Math.max(high[k], positions[i]!);
  }
  const along = (work: (k: 0 | 1 | 2) => number): Vec3 => [work(0), work(1), work(2)];
  return { middle: along((k) => (low[k] + high[k]) / 2), half: along((k) => (high[k] - low[k]) / 2) };
}

/** FNV-1a over the words of what is drawn; lengths go with it. */
function printOf({ positions, indices, edges }: Shape): string {
  const prints = [positions, indices, edges].map((array) => {
    const words = new Uint32Array(array.buffer, array.byteOffset, array.length);
    let hash = 0x811c9dc5;
    for (let i = 0; i < words.length; i++) hash = Math.imul(hash ^ words[i]!, 0x01000193);
    return `${array.length}:${(hash >>> 0).toString(16)}`;
  });
  return prints.join(' ');
}
