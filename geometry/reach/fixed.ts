/**
 * What stands in a tool's way and is no tube: surroundings, collectors, the nuts and studs beside. For each way how deep each of
 * them reaches into its bars, and for each stand of its arms how near the nearest comes. mm, in the design's frame.
 */
import type { Vec3 } from '../../shared/vec3';
import { isTree, type Obstacle } from '../check/obstacles';
import { bodyToMesh, bodyToShape } from '../clearance/bodies';
import { minimumOnInterval } from '../clearance/convexMinimum';
import { type ConvexShape, cylinderShape } from '../clearance/shapes';
import type { TriangleTree } from '../clearance/triangleTree';
import { addScaled, distance } from '../vector';
import { outOf, type Place } from './place';
import { type Arm, STAND, STANDS } from './swing';
import type { Bar, Way } from './ways';

export type Solid = { readonly id: string; readonly shape: Obstacle['shape'] };

/** What one solid leaves of one way, less the room that must stay: negative where it is in the way. */
export type Fixed = {
  readonly id: string;
  /** Of the bars together; Infinity where it is far off. */
  readonly bars: number;
  /** Of the arms together, and of the approach, stand by stand; null where it is far off. */
  readonly arms: Float64Array | null;
  readonly approach: Float64Array | null;
};

/** Nut, head and stud as its neighbours see them. */
export function solidsOf(place: Place): Solid[] {
  const { origin, z } = place.axes;
  return place.body
    .filter(({ height, radius }) => height > 0 && radius > 0)
    .map(({ radius, height }) => ({
      id: place.id,
      shape: cylinderShape({ a: origin, b: addScaled(origin, z, height), radius }),
    }));
}

/** A place that lies within what is drawn round it stands in a well or on a face that the drawing does not show. */
const OUT_OF_FACE = 0.5;

export function holds(solid: Solid, { axes: { origin, z } }: Place): boolean {
  if (isTree(solid.shape)) return false;
  return solid.shape.signedDistance(...addScaled(origin, z, OUT_OF_FACE)) < 0;
}

export function fixedOn(place: Place, way: Way, solid: Solid, room: number): Fixed | null {
  const { origin, z } = place.axes;
  const top = Math.max(...way.bars.map((b) => b.to));
  const out = Math.max(...way.bars.map((b) => b.radius), ...[...way.arms, ...way.approach].map(reachOf));
  const middle = addScaled(origin, z, top / 2);
  const far = Math.hypot(top / 2 + Math.max(0, ...way.arms.map(rise)), out) + room;
  if (isFar(solid.shape, middle, far)) return null;
  const bars = Math.min(...way.bars.map((bar) => barGap(place, bar, solid.shape, room)));
  const arms = profile(place, way.arms, solid.shape, room);
  const approach = profile(place, way.approach, solid.shape, room);
  return bars < DEEP || arms || approach ? { id: solid.id, bars, arms, approach } : null;
}

/** Nothing is asked of what is farther off than this from being in the way, mm. */
const DEEP = 40;

const reachOf = (arm: Arm): number => arm.length + arm.radius;
const rise = ({ rise: angle, length }: Arm): number => length * Math.sin(angle);

function isFar(shape: ConvexShape | TriangleTree, middle: Vec3, far: number): boolean {
  if (isTree(shape)) return shape.nearest(...middle, far) === Number.POSITIVE_INFINITY;
  return distance(shape.centre, middle) - shape.reach >= far || shape.signedDistance(...middle) >= far;
}

function barGap({ axes: { origin, z } }: Place, bar: Bar, shape: ConvexShape | TriangleTree, room: number): number {
  const body = {
    position: addScaled(origin, z, bar.from),
    axis: z,
    length: bar.to - bar.from,
    startRadius: bar.radius,
    endRadius: bar.radius,
  };
  const found = isTree(shape) ? bodyToMesh(body, shape, room) : bodyToShape(body, shape, room);
  return found ? found.value - room : Number.POSITIVE_INFINITY;
}

/** Null where no arm ever comes near. */
function profile(
  place: Place,
  arms: readonly Arm[],
  shape: ConvexShape | TriangleTree,
  room: number,
): Float64Array | null {
  let all: Float64Array | null = null;
  for (const arm of arms) {
    const found = armProfile(place, arm, shape, room);
    if (!found) continue;
    if (!all) all = found;
    else for (let k = 0; k < STANDS; k++) all[k] = Math.min(all[k]!, found[k]!);
  }
  return all;
}

/**
 * An arm's tip moves the most, so from one look the gap is known within that on either side: where there is much room, and where
 * it is deep in, stands are passed over.
 */
function armProfile(place: Place, arm: Arm, shape: ConvexShape | TriangleTree, room: number): Float64Array | null {
  const { origin, z } = place.axes;
  const foot = addScaled(origin, z, arm.height);
  if (isFar(shape, foot, reachOf(arm) + room + (arm.flat ?? 0))) return null;
  const perStand = STAND * arm.length;
  const gaps = new Float64Array(STANDS);
  let any = false;
  for (let k = 0; k < STANDS; ) {
    const gap = armGap(place, arm, k, shape) - room;
    if (gap < DEEP) any = true;
    const known = Math.max(1, Math.min(STANDS - k, Math.floor(Math.abs(gap) / perStand)));
    for (let i = 0; i < known; i++) gaps[k + i] = gap - Math.sign(gap) * i * perStand;
    k += known;
  }
  return any ? gaps : null;
}

function armGap(place: Place, arm: Arm, stand: number, shape: ConvexShape | TriangleTree): number {
  const phi = stand * STAND;
  const [c, s] = [Math.cos(phi), Math.sin(phi)];
  const level = arm.length * Math.cos(arm.rise);
  const up = arm.length * Math.sin(arm.rise);
  const thin = arm.flat ?? arm.radius;
  // A flat arm is as many round ones side by side as its width takes.
  const beside = arm.flat === undefined ? [0] : [-1, 0, 1].map((side) => side * (arm.radius - thin));
  let least = Number.POSITIVE_INFINITY;
  for (const b of beside) {
    const from = outOf(place.axes, [-s * b, c * b, arm.height]);
    const to = outOf(place.axes, [-s * b + c * level, c * b + s * level, arm.height + up]);
    least = Math.min(least, segmentGap(from, to, shape) - thin);
  }
  return least;
}

/** As a part of an arm's length: at 200 mm, 0.1 mm. */
const FINE = 5e-4;
/** Steps along an arm past a scan, whose distance is no convex one, mm. */
const LEAST_STEP = 1;
const MOST_SEEN = 60;

function segmentGap(a: Vec3, b: Vec3, shape: ConvexShape | TriangleTree): number {
  const [dx, dy, dz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  if (!isTree(shape)) {
    const { signedDistance } = shape;
    return minimumOnInterval((t) => signedDistance(a[0] + t * dx, a[1] + t * dy, a[2] + t * dz), 0, 1, FINE).value;
  }
  const length = Math.hypot(dx, dy, dz);
  let least = MOST_SEEN;
  for (let along = 0; ; ) {
    const t = length > 0 ? along / length : 0;
    const here = Math.min(MOST_SEEN, shape.nearest(a[0] + t * dx, a[1] + t * dy, a[2] + t * dz, MOST_SEEN));
    least = Math.min(least, here);
    if (along >= length) return least;
    // Nothing nearer than what was seen already can lie before this.
    along = Math.min(length, along + Math.max(LEAST_STEP, here - least));
  }
}
