/**
 * What stands round a sensor, and the gaps of round bars and of swinging handles to it: tubes, collectors, flange plates,
 * surroundings, all at rest and bare. mm; a gap is sought only below a limit.
 */
import type { Sensor } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import type { Meshes } from '../check/meshes';
import { obstaclesOf } from '../check/obstacles';
import { bodyToMesh, bodyToShape } from '../clearance/bodies';
import { chain } from '../clearance/chain';
import { type Field, minimumOnTriangle } from '../clearance/convexMinimum';
import { type ConvexShape, frustumShape } from '../clearance/shapes';
import { triangleField } from '../clearance/triangle';
import type { TriangleTree } from '../clearance/triangleTree';
import { tubeToShape } from '../clearance/tubeShape';
import { plateHulls } from '../flange/plateHull';
import type { Frustum } from '../header/merge';
import type { Header } from '../header/resolve';
import { SELF_SEPARATION } from '../tolerance';
import { add, distance, scale } from '../vector';

/** A flat triangle with room all round it: what a handle sweeps as it swings, or a bar where two corners are one. */
export type Sweep = { readonly corners: readonly [Vec3, Vec3, Vec3]; readonly radius: number };

export type Neighbour = {
  readonly id: string;
  /** Both null where nothing is nearer than `below`. */
  toBar(bar: Frustum, below: number): number | null;
  toSweep(sweep: Sweep, below: number): number | null;
};

/** @param missing files of surroundings that nobody has read: they are not among the neighbours */
export type Around = { readonly neighbours: readonly Neighbour[]; readonly missing: readonly string[] };

/** All but the tube or collector that the sensor stands on, where it stands on it. */
export function around(header: Header, meshes: Meshes, sensor: Sensor, bungRadius: number): Around {
  const { on, at } = sensor;
  const tubes = header.runners.flatMap((r): Neighbour[] => {
    const { centerline: line, tubeRadius, runner } = r;
    if (!line) return [];
    const isOwn = 'runner' in on && on.runner === runner.id;
    const near = SELF_SEPARATION * 2 * tubeRadius + bungRadius;
    const parts = isOwn
      ? [chain(line, tubeRadius, 0, at - near), chain(line, tubeRadius, at + near)]
      : [chain(line, tubeRadius)];
    return parts.flatMap((part): Neighbour[] => {
      if (!part) return [];
      const toShape = (shape: ConvexShape, below: number) => tubeToShape(part, shape, below)?.gap ?? null;
      return [
        {
          id: runner.id,
          toBar: (bar, below) => toShape(frustumShape(bar), below),
          toSweep: (sweep, below) => toShape(sweepShape(sweep), below),
        },
      ];
    });
  });
  const bodies = [...header.merges.values()].flatMap((m): Neighbour[] =>
    'merge' in on && on.merge === m.merge.id ? [] : [convex(m.merge.id, frustumShape(m.body))],
  );
  const plates = plateHulls(header).map(({ flange, shape }) => convex(flange, shape));
  const { obstacles, missing } = obstaclesOf(header, meshes);
  const others = obstacles.map(({ surrounding: { id }, shape }) =>
    'visit' in shape ? triangles(id, shape) : convex(id, shape),
  );
  return { neighbours: [...tubes, ...bodies, ...plates, ...others], missing: missing.map((m) => m.file) };
}

const convex = (id: string, shape: ConvexShape): Neighbour => ({
  id,
  toBar: (bar, below) => bodyToShape(bar, shape, below)?.value ?? null,
  toSweep: ({ corners: [a, b, c], radius }, below) => {
    const limit = below + radius;
    const first = shape.signedDistance(...middleOf([a, b, c]));
    if (first - reachOf([a, b, c]) >= limit) return null;
    const { value } = minimumOnTriangle(shape.signedDistance, a, b, c);
    return value < limit ? value - radius : null;
  },
});

const triangles = (id: string, tree: TriangleTree): Neighbour => ({
  id,
  toBar: (bar, below) => bodyToMesh(bar, tree, below)?.value ?? null,
  toSweep: ({ corners, radius }, below) => {
    const limit = below + radius;
    const least = leastOverTriangle((x, y, z, near) => tree.nearest(x, y, z, near), corners, limit);
    return least < limit ? least - radius : null;
  },
});

/** How exactly a sweep is held against a mesh, mm: the answer is at most so much too small. */
const SWEEP_RESOLUTION = 0.25;

/** Least value of a distance over a triangle, by halving it: no field changes faster than one walks. A lower bound. */
function leastOverTriangle(
  f: (x: number, y: number, z: number, near: number) => number,
  corners: Sweep['corners'],
  below: number,
): number {
  let best = below;
  const search = ([a, b, c]: Sweep['corners']): void => {
    const reach = reachOf([a, b, c]);
    const low = f(...middleOf([a, b, c]), best + reach) - reach;
    if (low >= best) return;
    if (reach < SWEEP_RESOLUTION) {
      best = low;
      return;
    }
    const [p, q, r] = [distance(a, b), distance(b, c), distance(c, a)];
    const [u, v, w] = p >= q && p >= r ? [a, b, c] : q >= r ? [b, c, a] : [c, a, b];
    const half = scale(add(u, v), 0.5);
    search([u, half, w]);
    search([half, v, w]);
  };
  search(corners);
  return best;
}

const middleOf = ([a, b, c]: Sweep['corners']): Vec3 => scale(add(add(a, b), c), 1 / 3);
const reachOf = (corners: Sweep['corners']): number => {
  const middle = middleOf(corners);
  return Math.max(...corners.map((p) => distance(p, middle)));
};

function sweepShape({ corners, radius }: Sweep): ConvexShape {
  const flat: Field = triangleField(...corners);
  return {
    centre: middleOf(corners),
    reach: reachOf(corners) + radius,
    signedDistance: (x, y, z) => flat(x, y, z) - radius,
  };
}
