/** How promising a line is before anything is solved: its length, its bends, and roughly by how much it misses the rules. mm. */
import { isTree, type Obstacle } from '../check/obstacles';
import { type ConvexShape, frustumShape } from '../clearance/shapes';
import { bends, isContinuous } from '../curve/bends';
import { type Centerline, centerline, type Segment } from '../curve/centerline';
import { pointOnSegment } from '../curve/pointAt';
import type { ResolvedRunner } from '../header/resolve';
import { RADIANS } from '../tolerance';
import type { Alone } from './alone';
import type { Line } from './sampled';

export type Rated = {
  readonly alone: Alone;
  readonly line: Line;
  readonly length: number;
  readonly bends: number;
  /** Sum of what rules are missed by, mm. */
  readonly missed: number;
};

/** Between places looked at along a line, mm: far coarser than check, far finer than what a start needs. */
const STEP = 30;

/** What stands in the runner's way, each with the room its centerline needs. Meshes are left to the solver. */
export type Hindrance = { readonly shape: ConvexShape; readonly room: number };

export function hindrances({ runner, header, obstacles }: Alone): Hindrance[] {
  const own = (id: string): boolean =>
    runner.runner.to.merge === id || ('merge' in runner.runner.from && runner.runner.from.merge === id);
  return [
    ...obstacles.flatMap(({ shape, surrounding }: Obstacle): Hindrance[] =>
      isTree(shape) ? [] : [{ shape, room: runner.tubeRadius + (surrounding.clearance ?? 0) }],
    ),
    ...[...header.merges]
      .filter(([id]) => !own(id))
      .map(([, { body }]) => ({ shape: frustumShape(body), room: runner.tubeRadius })),
  ];
}

/** Null for a line with more bends than the tooling allows, or none that can be measured. */
export function rated(alone: Alone, line: Line, hindered: readonly Hindrance[]): Rated | null {
  const curve = centerline(line.points, line.radii);
  const made = bends(curve);
  if (made.length > alone.runner.tooling.maxBends || !Number.isFinite(curve.length)) return null;
  const missed = missedByShape(curve, made, alone.runner) + missedByRoom(curve, hindered, alone.runner.tubeRadius);
  return { alone, line, length: curve.length, bends: made.length, missed };
}

function missedByShape(curve: Centerline, made: ReturnType<typeof bends>, { tooling }: ResolvedRunner): number {
  const { firstStraight, betweenStraight, lastStraight, maxBendAngle } = tooling;
  const n = curve.radii.length;
  let sum = 0;
  for (let i = 0; i <= n; i++) {
    if (i > 0 && isContinuous(curve, i - 1)) continue;
    const least = i === 0 ? firstStraight : i === n ? lastStraight : betweenStraight;
    sum += Math.max(0, least - curve.straights[i]!);
  }
  for (const bend of made) sum += bend.radius * Math.max(0, bend.angle - maxBendAngle * RADIANS);
  return sum;
}

function missedByRoom(curve: Centerline, hindered: readonly Hindrance[], tubeRadius: number): number {
  if (hindered.length === 0) return 0;
  const deepest = new Float64Array(hindered.length);
  for (const segment of curve.segments) {
    const near = hindranceNumbersNear(segment, hindered);
    if (near.length === 0) continue;
    const steps = Math.max(1, Math.ceil(segment.length / STEP));
    for (let k = 0; k < steps; k++) {
      const along = ((k + 0.5) / steps) * segment.length;
      // Tubes end flat: what stands beside an end counts only where the tube is whole.
      const station = segment.station + along;
      if (station < tubeRadius || station > curve.length - tubeRadius) continue;
      const [x, y, z] = pointOnSegment(segment, along).position;
      for (const j of near) {
        const short = hindered[j]!.room - hindered[j]!.shape.signedDistance(x, y, z);
        if (short > deepest[j]!) deepest[j] = short;
      }
    }
  }
  return deepest.reduce((sum, d) => sum + d, 0);
}

/** What could be touched by a segment, from the spheres about both. */
function hindranceNumbersNear(segment: Segment, hindered: readonly Hindrance[]): number[] {
  const [x, y, z] = pointOnSegment(segment, segment.length / 2).position;
  const near: number[] = [];
  for (let j = 0; j < hindered.length; j++) {
    const { shape, room } = hindered[j]!;
    const [dx, dy, dz] = [x - shape.centre[0], y - shape.centre[1], z - shape.centre[2]];
    const reach = shape.reach + room + segment.length / 2;
    if (dx * dx + dy * dy + dz * dz < reach * reach) near.push(j);
  }
  return near;
}
