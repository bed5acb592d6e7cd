/**
 * A mesh's hierarchy asked from the design's frame, in mm: the point asked about is taken into the mesh's own frame and unit,
 * what is found there is brought back. So moving a mesh builds nothing; a pose costs some twenty products a distance.
 */
import type { Vec3 } from '../../shared/vec3';
import type { FlatTree } from './buildTree';
import type { Field } from './convexMinimum';
import type { SeeNear } from './fieldWalk';
import type { Rising } from './rising';
import { type Placement, type See, type TriangleTree, treeOver } from './triangleTree';

/** @param placement null: it stands as it is, in mm */
export function placedTree(flat: FlatTree, placement: Placement | null): TriangleTree {
  const tree = treeOver(flat);
  if (!placement) return tree;
  const { scale, x: ex, y: ey, z: ez } = placement;
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
        tree.visit([p[0]!, p[1]!, p[2]!], () => limit() / scale, show.see);
      } finally {
        idle.push(show);
      }
    },
    visitWhere(rising, limit, see) {
      const show = idle.pop() ?? makeShow(placement);
      const q: [number, number, number] = [0, 0, 0];
      const own: Rising = (x, y, z, way) => {
        outOfMesh(placement, x, y, z, q);
        const value = rising(q[0], q[1], q[2], way);
        const [wx, wy, wz] = [way[0]!, way[1]!, way[2]!];
        way[0] = wx * ex[0] + wy * ex[1] + wz * ex[2];
        way[1] = wx * ey[0] + wy * ey[1] + wz * ey[2];
        way[2] = wx * ez[0] + wy * ez[1] + wz * ez[2];
        return value / scale;
      };
      try {
        show.toNear = see;
        tree.visitWhere(own, () => limit() / scale, show.seeNear);
      } finally {
        idle.push(show);
      }
    },
    nearest(x, y, z, below = Number.POSITIVE_INFINITY, place) {
      intoMesh(placement, x, y, z, p);
      const found = tree.nearest(p[0]!, p[1]!, p[2]!, below / scale, place);
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

type Show = { to: See; readonly see: See; toNear: SeeNear; readonly seeNear: SeeNear };
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
  const bringAll = (ownA: Vec3, ownB: Vec3, ownC: Vec3, ownField: Field): void => {
    inner = ownField;
    bring(ownA, a);
    bring(ownB, b);
    bring(ownC, c);
  };
  const show: Show = {
    to: () => {},
    toNear: () => {},
    seeNear(ownA, ownB, ownC, ownField) {
      bringAll(ownA, ownB, ownC, ownField);
      show.toNear(a, b, c, field);
    },
    see(ownA, ownB, ownC, ownField, index, ownPlace) {
      bringAll(ownA, ownB, ownC, ownField);
      outOfMesh(placement, ownPlace[0]!, ownPlace[1]!, ownPlace[2]!, place);
      show.to(a, b, c, field, index, place);
    },
  };
  return show;
}
