/**
 * Rigid places and the motion between two of them. A place is turned about the design's origin, then moved; between two places
 * both the turn (axis times angle) and the move go evenly from one to the other. mm, radians, design frame.
 */
import type { Vec3 } from '../../shared/vec3';
import { add, addScaled, distance, lerp, norm, rotate, scale, sub } from '../vector';
import type { RemovalPose } from './report';

export const AT_REST: RemovalPose = { turn: [0, 0, 0], move: [0, 0, 0] };

/** The same place as rows of a rotation and a move: x' = R·x + m, twelve numbers. */
export type Matrix = Float64Array;

export function matrixOf({ turn, move }: RemovalPose, out: Matrix = new Float64Array(12)): Matrix {
  const angle = norm(turn);
  const [x, y, z] = angle > 0 ? scale(turn, 1 / angle) : [0, 0, 0];
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const k = 1 - c;
  out[0] = c + k * x * x;
  out[1] = k * x * y - s * z;
  out[2] = k * x * z + s * y;
  out[3] = k * x * y + s * z;
  out[4] = c + k * y * y;
  out[5] = k * y * z - s * x;
  out[6] = k * x * z - s * y;
  out[7] = k * y * z + s * x;
  out[8] = c + k * z * z;
  out[9] = move[0];
  out[10] = move[1];
  out[11] = move[2];
  return out;
}

export function placed({ turn, move }: RemovalPose, p: Vec3): Vec3 {
  const angle = norm(turn);
  return add(angle > 0 ? rotate(p, scale(turn, 1 / angle), angle) : p, move);
}

/** Turned so, with what rests at `middle` brought to `to`. */
export const poseAt = (turn: Vec3, middle: Vec3, to: Vec3): RemovalPose => ({
  turn,
  move: sub(to, placed({ turn, move: [0, 0, 0] }, middle)),
});

export const movedBy = ({ turn, move }: RemovalPose, d: Vec3, far = 1): RemovalPose => ({
  turn,
  move: addScaled(move, d, far),
});

export const between = (a: RemovalPose, b: RemovalPose, t: number): RemovalPose => ({
  turn: lerp(a.turn, b.turn, t),
  move: lerp(a.move, b.move, t),
});

/**
 * The farthest that any place within `reach` of `middle` travels from one place to the other, at least. A turn that goes evenly
 * turns no faster than its three numbers change (the left Jacobian of a rotation vector has norm at most 1); the middle itself
 * strays from its own straight way by less than twice the turn's square times its distance from the origin.
 */
export function travelOf(a: RemovalPose, b: RemovalPose, middle: Vec3, reach: number): number {
  const straight = distance(placed(a, middle), placed(b, middle));
  const turned = distance(a.turn, b.turn);
  return straight + turned * reach + 2 * turned * turned * norm(middle);
}
