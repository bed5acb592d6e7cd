/**
 * From a line of sight to an amount of movement: in the plane of the picture, along a locked axis, or round an axis. Pure.
 * mm, radians.
 */
import {
  add,
  addScaled,
  anySquareTo,
  cross,
  dot,
  norm,
  RADIANS,
  reject,
  scale,
  signedAngle,
  sub,
  unit,
} from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import type { Amount, Grip } from './grip';

/** A line of sight through the pointer: `way` is a unit vector away from the eye. */
export type Sight = {
  readonly from: Vec3;
  readonly way: Vec3;
  /** Unit vectors of the picture; `back` points to the eye. */
  readonly right: Vec3;
  readonly up: Vec3;
  readonly back: Vec3;
  /** How many mm a pixel spans at the grip's depth. */
  readonly mmPerPx: number;
};

export type Axis = 'x' | 'y' | 'z';
export const AXIS_WAYS: Readonly<Record<Axis, Vec3>> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/** Looking along an axis (or edge-on at a plane) within this, its movement on screen says too little: another way is taken. */
const EDGE_ON = Math.sin(12 * RADIANS);

/** Where the pointer is on what the grip moves along; only differences of it mean something. */
export function rawAmount(grip: Grip, lock: Axis | null, sight: Sight): Amount {
  const { motion, at } = grip;
  if (motion.kind === 'turn') return { kind: 'turn', angle: turned(at, motion.axis, motion.centre, sight) };
  const line = lock ? AXIS_WAYS[lock] : motion.kind === 'line' ? motion.way : null;
  const place = line ? addScaled(at, line, alongLine(at, line, sight)) : onPlane(at, sight.back, sight);
  return { kind: 'move', by: sub(place, at) };
}

/** Where the line of sight meets the plane through `at` square to `normal`. */
function onPlane(at: Vec3, normal: Vec3, sight: Sight): Vec3 {
  const slope = dot(sight.way, normal);
  return addScaled(sight.from, sight.way, dot(sub(at, sight.from), normal) / slope);
}

/** The nearest approach of the line of sight to a line, measured along it; seen end-on, upward on the screen is along it. */
function alongLine(at: Vec3, way: Vec3, sight: Sight): number {
  const square = cross(way, sight.way);
  const size = norm(square);
  if (size < EDGE_ON) return dot(sub(onPlane(at, sight.back, sight), at), sight.up);
  // The plane that holds the line and faces the line of sight best.
  const normal = cross(way, unit(square));
  return dot(sub(onPlane(at, normal, sight), at), way);
}

function turned(at: Vec3, axis: Vec3, centre: Vec3, sight: Sight): number {
  const facing = Math.abs(dot(sight.way, axis));
  const arm = reject(sub(at, centre), axis);
  if (facing >= 0.35) {
    const hit = reject(sub(onPlane(centre, axis, sight), centre), axis);
    const zero = norm(arm) > 1 ? arm : anySquareTo(axis);
    return signedAngle(zero, hit, axis);
  }
  // Seen from the side, the near rim moves across the picture: dragging across the axis rolls it like a tube under a palm.
  const across = unit(cross(axis, sight.back));
  return dot(sub(onPlane(at, sight.back, sight), at), across) / Math.max(norm(arm), ROLL);
}

/** The radius at which a palm rolls a tube, mm. */
const ROLL = 60;

export const zeroOf = (grip: Grip): Amount =>
  grip.motion.kind === 'turn' ? { kind: 'turn', angle: 0 } : { kind: 'move', by: [0, 0, 0] };

/** anchor + k·(now − start); a turn takes the shorter way round. */
export function advance(anchor: Amount, start: Amount, now: Amount, k: number): Amount {
  if (anchor.kind === 'turn' && start.kind === 'turn' && now.kind === 'turn') {
    const step = now.angle - start.angle;
    return { kind: 'turn', angle: anchor.angle + k * Math.atan2(Math.sin(step), Math.cos(step)) };
  }
  if (anchor.kind === 'move' && start.kind === 'move' && now.kind === 'move')
    return { kind: 'move', by: add(anchor.by, scale(sub(now.by, start.by), k)) };
  return anchor;
}

/** The axis that runs most nearly rightward, upward or toward the eye, with its sign: what an arrow key moves along. */
export function screenAxis(toward: Vec3): Vec3 {
  const sizes = toward.map(Math.abs);
  const k = sizes.indexOf(Math.max(...sizes));
  return [0, 1, 2].map((i) => (i === k ? Math.sign(toward[i]!) : 0)) as unknown as Vec3;
}
