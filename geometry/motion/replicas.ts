/**
 * What stands around a header that moves, as the solver keeps clear of it: the header stands still and cold, and each surrounding
 * stands at several moments of the motion where it then is, seen from the header. Between the moments taken a tube comes no nearer
 * than `allowance` tells (see sweptBalls.ts), which is added to the clearance; `check` has the last word, over all of the motion. mm.
 */

import type { Vec3 } from '../../shared/vec3';
import type { Meshes } from '../check/meshes';
import { isTree, type Obstacle, obstaclesOf } from '../check/obstacles';
import { placedTree } from '../clearance/placedTree';
import type { ConvexShape } from '../clearance/shapes';
import type { Placement, TriangleTree } from '../clearance/triangleTree';
import type { Header } from '../header/resolve';
import { add, addScaled, cross, distance, norm, rotate, sub, unit } from '../vector';
import { hotGrowth, type Motion, motionOf, placedAt, type Stand, type Sway, sizeAt, swayOf } from './motion';

/** Between two moments nothing of the header goes further, mm. */
const STEP = 12;
/** What linear steps of the solver and rounding may miss, mm. */
const SPARE = 0.03;

/** For what moves nothing, the very list that `check` measures against. */
export function solverObstacles(header: Header, meshes: Meshes): readonly Obstacle[] {
  const { obstacles } = obstaclesOf(header, meshes);
  const motion = motionOf(header.design);
  if (!motion) return obstacles;
  const extent = extentOf(header);
  const thinnest = Math.min(...header.runners.map((r) => r.tubeRadius));
  return obstacles.flatMap((o) => replicasOf(o, motion, header, extent, thinnest));
}

/** The obstacles themselves, of a list that may hold them several times. */
export const originals = (obstacles: readonly Obstacle[]): readonly Obstacle[] =>
  obstacles.some((o) => o.original) ? [...new Set(obstacles.map((o) => o.original ?? o))] : obstacles;

const kept = new WeakMap<
  Obstacle['surrounding'],
  { key: string; shape: Obstacle['shape']; list: readonly Obstacle[] }
>();

function replicasOf(
  o: Obstacle,
  motion: Motion,
  header: Header,
  extent: readonly Vec3[],
  thinnest: number,
): readonly Obstacle[] {
  const materials = [
    ...header.runners.map((r) => r.tube.material),
    ...[...header.merges.values()].map((m) => m.material),
  ];
  const growth = materials.map((m) => hotGrowth(motion, m)).reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  const sway: Sway = { ...swayOf(motion, o.surrounding), growth };
  const { rock } = sway;
  const lever = rock ? BEYOND * Math.max(...extent.map((p) => norm(cross(sub(p, rock.position), rock.axis)))) : 0;
  const path = BEYOND * Math.abs(growth) * Math.max(...extent.map((p) => distance(p, sway.middle)));
  const turns = rock ? Math.max(1, Math.ceil((lever * (rock.high - rock.low)) / STEP)) : 0;
  const heats = growth === 0 ? 0 : Math.max(1, Math.ceil(path / STEP));
  const swing = rock && turns > 0 ? (lever * (rock.high - rock.low)) / turns : 0;
  const swell = heats > 0 ? path / heats : 0;
  const clearance = o.surrounding.clearance ?? 0;
  const allowance = (swing * swing + swell * swell) / (8 * (thinnest + clearance)) + SPARE;
  const key = `${motion.key} ${growth} ${turns} ${heats} ${allowance}`;
  const known = kept.get(o.surrounding);
  if (known?.key === key && known.shape === o.shape) return known.list;
  const surrounding = { ...o.surrounding, clearance: clearance + allowance };
  const list: Obstacle[] = [];
  for (let i = 0; i <= turns; i++)
    for (let k = 0; k <= heats; k++) {
      const angle = rock && turns > 0 ? rock.low + (i / turns) * (rock.high - rock.low) : 0;
      const stand: Stand = { angle, heat: heats > 0 ? k / heats : 0 };
      list.push({ surrounding, shape: seenFrom(o.shape, sway, stand), original: o, moment: list.length + 1 });
    }
  kept.set(o.surrounding, { key, shape: o.shape, list });
  return list;
}

/** Ends of what a header fills: its ports and its collectors. */
function extentOf(header: Header): Vec3[] {
  const bodies = [...header.merges.values()].flatMap(({ body }) => [
    body.position,
    addScaled(body.position, body.axis, body.length),
  ]);
  return [...[...header.ports.values()].map((p) => p.pose.position), ...bodies];
}

/** Runners swing out beyond their ends by about so much. */
const BEYOND = 1.2;

function seenFrom(shape: Obstacle['shape'], sway: Sway, stand: Stand): Obstacle['shape'] {
  const size = sizeAt(sway, stand);
  const back = (p: Vec3): Vec3 => {
    const { rock, middle } = sway;
    const cold = rock ? addScaled(rotate(sub(p, rock.position), rock.axis, -stand.angle), rock.position, 1) : p;
    return addScaled(middle, sub(cold, middle), 1 / size);
  };
  return isTree(shape) ? seenTree(shape, size, back) : seenShape(shape, sway, stand, size, back);
}

/** Where a place is at a moment, as twelve numbers: what fields ask thousands of times. */
function affine(sway: Sway, stand: Stand): (x: number, y: number, z: number, into: Float64Array) => void {
  const origin = placedAt(sway, [0, 0, 0], stand);
  const [ex, ey, ez] = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((e) => sub(placedAt(sway, e, stand), origin)) as [Vec3, Vec3, Vec3];
  return (x, y, z, into) => {
    for (let k = 0; k < 3; k++) into[k] = origin[k]! + x * ex[k]! + y * ey[k]! + z * ez[k]!;
  };
}

function seenShape(
  { signedDistance, centre, reach }: ConvexShape,
  sway: Sway,
  stand: Stand,
  size: number,
  back: (p: Vec3) => Vec3,
): ConvexShape {
  const move = affine(sway, stand);
  const p = new Float64Array(3);
  return {
    signedDistance(x, y, z) {
      move(x, y, z, p);
      return signedDistance(p[0]!, p[1]!, p[2]!) / size;
    },
    centre: back(centre),
    reach: reach / size,
  };
}

/** The same triangles, placed where they are seen from: what is rigid but for one size stays so. */
function seenTree({ flat, placement }: TriangleTree, size: number, back: (p: Vec3) => Vec3): TriangleTree {
  const { scale, position, x, y, z } = placement ?? RESTING;
  const turned = (way: Vec3): Vec3 => unit(sub(back(add(position, way)), back(position)));
  return placedTree(flat, { scale: scale / size, position: back(position), x: turned(x), y: turned(y), z: turned(z) });
}

const RESTING: Placement = { scale: 1, position: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
