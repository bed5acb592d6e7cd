/**
 * What stands in the way of a piece: surroundings, and pieces of the header that are still in place; with the least gap that is
 * asked of each. Ground drawn as a box goes on for ever below its top: it tells whether a way out needs the vehicle raised. mm.
 */
import type { Surrounding } from '../../shared/design/types';
import { isTree, type Obstacle } from '../check/obstacles';
import { planeShape } from '../clearance/shapes';
import { type Body, extent } from './body';
import type { Distance } from './gap';
import { AT_REST, matrixOf } from './pose';
import type { Solid } from './solids';

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
  const isBox = surrounding.shape === 'box' && isGround(surrounding);
  const { signedDistance } = isBox ? planeShape({ position: surrounding.max, normal: [0, 0, 1] }) : shape;
  const bounds = surrounding.shape === 'plane' || isBox ? null : boundsOfShape(shape);
  return { id, distance: (x, y, z) => signedDistance(x, y, z), bounds };
}

const AS_IT_IS = matrixOf(AT_REST);

export const isGround = ({ kind }: Surrounding): boolean => kind === 'ground';

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

/** What of the header has not come off yet, as something in the way of the rest. */
export function standingPart(id: string, solids: readonly Solid[], body: Body): Standing {
  const { middle, reach } = body;
  return {
    id,
    bounds: extent(body, AS_IT_IS),
    distance(x, y, z, below) {
      const off = Math.sqrt((x - middle[0]) ** 2 + (y - middle[1]) ** 2 + (z - middle[2]) ** 2) - reach;
      if (off >= below) return Number.POSITIVE_INFINITY;
      let least = Number.POSITIVE_INFINITY;
      for (const solid of solids) least = Math.min(least, solid(x, y, z));
      return least;
    },
  };
}

/** Around all that has an end; null where nothing has. */
export function commonBox(all: readonly Standing[]): Float64Array | null {
  const boxes = all.flatMap(({ bounds }) => (bounds ? [bounds] : []));
  if (boxes.length === 0) return null;
  return Float64Array.from({ length: 6 }, (_, k) =>
    k < 3 ? Math.min(...boxes.map((b) => b[k]!)) : Math.max(...boxes.map((b) => b[k]!)),
  );
}
