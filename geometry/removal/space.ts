/**
 * What stands in the way of a piece: surroundings, and pieces of the header that are still in place; with the least gap that is
 * asked of each. Ground drawn as a box goes on for ever below its top. mm.
 */
import type { Surrounding } from '../../shared/design/types';
import { isTree, type Obstacle } from '../check/obstacles';
import { planeShape } from '../clearance/shapes';
import { type Body, extent } from './body';
import type { Cell } from './cells';
import type { Distance } from './gap';
import { AT_REST, matrixOf } from './pose';

export type Standing = {
  readonly id: string;
  readonly distance: Distance;
  /** Low x, y, z, high x, y, z; null for what has no end. */
  readonly bounds: Float64Array | null;
};

export function standingOf({ surrounding, shape }: Obstacle): Standing {
  const { id } = surrounding;
  if (isTree(shape))
    return { id, distance: (x, y, z, below) => shape.nearest(x, y, z, below), bounds: boundsOfTree(shape) };
  const { signedDistance } = isGround(surrounding)
    ? planeShape({ position: surrounding.max, normal: [0, 0, 1] })
    : shape;
  const bounds = surrounding.shape === 'plane' || isGround(surrounding) ? null : boundsOfShape(shape);
  return { id, distance: (x, y, z) => signedDistance(x, y, z), bounds };
}

const AS_IT_IS = matrixOf(AT_REST);

type Ground = Extract<Surrounding, { shape: 'box' }>;
const isGround = (s: Surrounding): s is Ground => s.shape === 'box' && s.kind === 'ground';

function boundsOfShape({ bounds, centre, reach }: Exclude<Obstacle['shape'], { visit: unknown }>): Float64Array {
  return bounds ?? Float64Array.of(...centre.map((x) => x - reach), ...centre.map((x) => x + reach));
}

/** Seen from so far, mm, what is nearest is what reaches out farthest, but for half a millimetre over a metre. */
const AFAR = 1e6;

/** Of its triangles, to within a millimetre; null where it has none. */
function boundsOfTree(tree: Extract<Obstacle['shape'], { visit: unknown }>): Float64Array | null {
  let bounds = Float64Array.of(0, 0, 0, 0, 0, 0);
  // The second look is from before its middle.
  for (let look = 0; look < 2; look++) {
    const from = [0, 1, 2].map((k) => (bounds[k]! + bounds[3 + k]!) / 2);
    bounds = Float64Array.from({ length: 6 }, (_, k) => {
      const sign = k < 3 ? -1 : 1;
      const eye = from.map((x, axis) => (axis === k % 3 ? x + sign * AFAR : x));
      return from[k % 3]! + sign * (AFAR - tree.nearest(eye[0]!, eye[1]!, eye[2]!));
    });
  }
  return Number.isFinite(bounds[0]!) ? bounds : null;
}

/** A piece that has not come off yet, as something in the way of another. */
export function standingPiece(id: string, body: Body): Standing {
  return { id, distance: (x, y, z, below) => toCells(body.cells, x, y, z, below), bounds: extent(body, AS_IT_IS) };
}

/** How exactly a place is held against a piece, mm: told at most so much too near. */
const EXACT = 0.05;

function toCells(root: Cell, x: number, y: number, z: number, below: number): number {
  let best = below;
  const off = (c: Cell): number => Math.sqrt((x - c.x) ** 2 + (y - c.y) ** 2 + (z - c.z) ** 2);
  const search = (c: Cell, d: number): void => {
    if (d - c.outer >= best) return;
    const parts = c.outer - c.inner <= Math.max(EXACT, 0.01 * (d - c.inner)) ? null : c.parts();
    if (!parts) {
      best = Math.min(best, d - c.outer);
      return;
    }
    const [a, b] = parts;
    if (!a) return;
    const da = off(a);
    if (!b) {
      search(a, da);
      return;
    }
    const db = off(b);
    const first = da - a.outer <= db - b.outer;
    search(first ? a : b, first ? da : db);
    search(first ? b : a, first ? db : da);
  };
  search(root, off(root));
  return best < below ? best : Number.POSITIVE_INFINITY;
}

/** Around all that has an end; null where nothing has. */
export function commonBox(all: readonly Standing[]): Float64Array | null {
  const boxes = all.flatMap(({ bounds }) => (bounds ? [bounds] : []));
  if (boxes.length === 0) return null;
  return Float64Array.from({ length: 6 }, (_, k) =>
    k < 3 ? Math.min(...boxes.map((b) => b[k]!)) : Math.max(...boxes.map((b) => b[k]!)),
  );
}
