/**
 * A mesh's hierarchy asked from the design's frame, in mm: the point asked about is taken into the mesh's own frame and unit,
 * what is found there is brought back. So moving a mesh builds nothing; a pose costs some twenty products a distance.
 */
import type { Vec3 } from '../../shared/vec3';
import type { FlatTree } from './buildTree';
import type { Field } from './convexMinimum';
import { type Placement, type See, type TriangleTree, treeOver } from './triangleTree';

/** @param placement null: it stands as it is, in mm */
export function placedTree(flat: FlatTree, placement: Placement | null): TriangleTree {
  const own = treeOver(flat);
  if (!placement) return own;
  const { scale } = placement;
  const p = new Float64Array(3);
  const idle: Show[] = [];
  return {
    flat,
    placement,
    visit([x, y, z], limit, see) {
      const show = idle.pop() ?? makeShow(placement);
      intoMesh(placement, x, y, z, p);
      try {
        show.to = see;
        own.visit([p[0]!, p[1]!, p[2]!], () => limit() / scale, show.see);
      } finally {
        idle.push(show);
      }
    },
    nearest(x, y, z, below = Number.POSITIVE_INFINITY, place) {
      intoMesh(placement, x, y, z, p);
      const found = own.nearest(p[0]!, p[1]!, p[2]!, below / scale, place);
      if (place && found < Number.POSITIVE_INFINITY) outOfMesh(placement, place[0]!, place[1]!, place[2]!, place);
      return found * scale;
    },
  };
}

/** From the design's frame into the mesh's own. */
export function intoMesh(
  { scale, position, x: ex, y: ey, z: ez }: Placement,
  x: number,
  y: number,
  z: number,
  into: Float64Array,
): void {
  const dx = (x - position[0]) / scale;
  const dy = (y - position[1]) / scale;
  const dz = (z - position[2]) / scale;
  into[0] = dx * ex[0] + dy * ex[1] + dz * ex[2];
  into[1] = dx * ey[0] + dy * ey[1] + dz * ey[2];
  into[2] = dx * ez[0] + dy * ez[1] + dz * ez[2];
}

/** From the mesh's own frame and unit into the design's. */
export function outOfMesh(
  { scale, position, x: ex, y: ey, z: ez }: Placement,
  x: number,
  y: number,
  z: number,
  into: Float64Array | [number, number, number],
): void {
  into[0] = position[0] + scale * (x * ex[0] + y * ey[0] + z * ez[0]);
  into[1] = position[1] + scale * (x * ex[1] + y * ey[1] + z * ez[1]);
  into[2] = position[2] + scale * (x * ex[2] + y * ey[2] + z * ez[2]);
}

type Show = { to: See; readonly see: See };
type Corner = [number, number, number];

/** Brings a shown triangle back, in memory that is used again. */
function makeShow(placement: Placement): Show {
  const corners: [Corner, Corner, Corner] = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  const [a, b, c] = corners;
  const place = new Float64Array(3);
  const q = new Float64Array(3);
  const { scale } = placement;
  let inner: Field = () => 0;
  const field: Field = (x, y, z) => {
    intoMesh(placement, x, y, z, q);
    return scale * inner(q[0]!, q[1]!, q[2]!);
  };
  const bring = (v: Vec3, into: Corner): void => outOfMesh(placement, v[0], v[1], v[2], into);
  const show: Show = {
    to: () => {},
    see(ownA, ownB, ownC, ownField, index, ownPlace) {
      inner = ownField;
      bring(ownA, a);
      bring(ownB, b);
      bring(ownC, c);
      outOfMesh(placement, ownPlace[0]!, ownPlace[1]!, ownPlace[2]!, place);
      show.to(a, b, c, field, index, place);
    },
  };
  return show;
}
