/**
 * The least gap over the header's motion between a runner, or a collector's body, and a surrounding, with the moment at which it
 * is least; places are where they are then. Between parts of the header nothing is swept: they move together, and what one
 * tube grows more than the next is far under the gaps between them. mm.
 */
import { isTree, type Obstacle } from '../check/obstacles';
import { bodyToMesh, bodyToShape } from '../clearance/bodies';
import { BOTH_ENDS, type Chain, chain, type WhichEnds } from '../clearance/chain';
import type { Minimum } from '../clearance/convexMinimum';
import type { Gap } from '../clearance/gap';
import { frustumShape } from '../clearance/shapes';
import { tubeToMesh } from '../clearance/tubeMesh';
import { tubeToShape } from '../clearance/tubeShape';
import { pointAt, writeOnSegment } from '../curve/pointAt';
import type { MotionPose } from '../gaps/report';
import type { ResolvedMerge, ResolvedRunner } from '../header/resolve';
import { DEGREES } from '../tolerance';
import { type Motion, type Stand, swayOf } from './motion';
import { movedBody, movedChain } from './moved';
import { type Away, leastOfBalls, type Path } from './sweptBalls';
import { leastOfMoments } from './sweptMoments';

/** @property station on the cold tube */
export type SweptGap = Gap & { readonly pose: MotionPose; readonly stand: Stand };
export type SweptBody = Minimum & { readonly pose: MotionPose; readonly stand: Stand };

/** As in tubeMesh: so many tube radii from an end no ball about the centerline comes out of it. */
const CLEAR_OF_END = 1.5;

const poseOf = ({ angle, heat }: Stand): MotionPose => ({ rock: angle * DEGREES, heat });

export function sweptTube(r: ResolvedRunner, o: Obstacle, motion: Motion, below: number): SweptGap | null {
  const line = r.centerline;
  if (!line) return null;
  const { shape } = o;
  const { tubeRadius } = r;
  const sway = swayOf(motion, o.surrounding, r.tube.material);
  const isShort = 2 * CLEAR_OF_END * tubeRadius >= line.length;
  const clear = isShort ? line.length : CLEAR_OF_END * tubeRadius;
  const pathsOf = (from: number, to: number): Path[] =>
    line.segments.flatMap((segment): Path[] => {
      const [low, high] = [Math.max(from, segment.station), Math.min(to, segment.station + segment.length)];
      if (!(high > low)) return [];
      const radius = segment.kind === 'arc' ? segment.radius : 0;
      return [{ from: low, to: high, radius, place: (s, into) => writeOnSegment(segment, s - segment.station, into) }];
    });
  const away: Away = isTree(shape)
    ? (x, y, z, room) => shape.nearest(x, y, z, room)
    : (x, y, z) => Math.max(0, shape.signedDistance(x, y, z));
  const middle = isShort ? null : leastOfBalls(pathsOf(clear, line.length - clear), tubeRadius, away, sway, below);
  let best: SweptGap | null = middle && {
    gap: middle.gap,
    at: middle.at,
    station: middle.station,
    stand: middle.stand,
    pose: poseOf(middle.stand),
  };
  const ends: readonly (readonly [number, number, WhichEnds])[] = isShort
    ? [[0, line.length, BOTH_ENDS]]
    : [
        [0, clear, [0]],
        [line.length - clear, line.length, [1]],
      ];
  for (const [from, to, flat] of ends) {
    const bound = best?.gap ?? below;
    // Balls come out of the flat end: they tell only where surely nothing is.
    if (!leastOfBalls(pathsOf(from, to), tubeRadius, away, sway, bound, true)) continue;
    const part = chain(line, tubeRadius, from, to);
    if (!part) continue;
    const about = { at: pointAt(line, (from + to) / 2).position, reach: (to - from) / 2 + tubeRadius };
    const gapAt = (stand: Stand, within: number) => {
      const found = gapOf(movedChain(part, sway, stand), shape, within, flat);
      return found && { gap: found.gap, found };
    };
    const least = leastOfMoments(gapAt, about, sway, bound);
    if (least) {
      const station = least.found.station / (1 + sway.growth * least.stand.heat);
      best = { ...least.found, station, stand: least.stand, pose: poseOf(least.stand) };
    }
  }
  if (!best || best.gap > -tubeRadius) return best;
  // The centerline itself is pierced: how deep a solid reaches in is told by its own field, at that moment.
  const deep = gapOf(movedChain(chain(line, tubeRadius)!, sway, best.stand), shape, best.gap);
  return deep
    ? { ...best, gap: deep.gap, at: deep.at, station: deep.station / (1 + sway.growth * best.stand.heat) }
    : best;
}

const gapOf = (tube: Chain, shape: Obstacle['shape'], below: number, flat = BOTH_ENDS): Gap | null =>
  isTree(shape) ? tubeToMesh(tube, shape, below, flat) : tubeToShape(tube, shape, below, flat);

export function sweptBody(
  { body, material }: ResolvedMerge,
  o: Obstacle,
  motion: Motion,
  below: number,
): SweptBody | null {
  const { shape } = o;
  const sway = swayOf(motion, o.surrounding, material);
  const { centre, reach } = frustumShape(body);
  const gapAt = (stand: Stand, within: number) => {
    const moved = movedBody(body, sway, stand);
    const found = isTree(shape) ? bodyToMesh(moved, shape, within) : bodyToShape(moved, shape, within);
    return found && { gap: found.value, found };
  };
  const least = leastOfMoments(gapAt, { at: centre, reach }, sway, below);
  return least && { ...least.found, stand: least.stand, pose: poseOf(least.stand) };
}
