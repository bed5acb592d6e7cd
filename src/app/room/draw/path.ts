/** Where a piece stands along its path: poses one after another, walked evenly. mm, radians. */
import { Matrix4, Quaternion, Vector3 } from 'three';
import type { RemovalPose } from '../../../../geometry';

/** A turn counts as so long a move for each radian: about what the far end of a header travels, mm. */
const REACH = 300;

const length = (v: RemovalPose['move']): number => Math.hypot(v[0], v[1], v[2]);
const step = (a: RemovalPose, b: RemovalPose): number =>
  length([b.move[0] - a.move[0], b.move[1] - a.move[1], b.move[2] - a.move[2]]) +
  REACH * length([b.turn[0] - a.turn[0], b.turn[1] - a.turn[1], b.turn[2] - a.turn[2]]);

function turned({ turn }: RemovalPose): Quaternion {
  const angle = length(turn);
  return angle > 0
    ? new Quaternion().setFromAxisAngle(new Vector3(...turn).divideScalar(angle), angle)
    : new Quaternion();
}

/** @param along 0 at the first pose, 1 at the last */
export function placeAlong(path: readonly RemovalPose[], along: number): Matrix4 {
  const steps = path.slice(1).map((pose, i) => step(path[i]!, pose));
  let left = along * steps.reduce((sum, s) => sum + s, 0);
  let i = 0;
  while (i < steps.length - 1 && left > steps[i]!) left -= steps[i++]!;
  const from = path[i];
  const to = path[i + 1] ?? from;
  if (!from || !to) return new Matrix4();
  const t = steps[i]! > 0 ? Math.min(1, left / steps[i]!) : 0;
  const turn = turned(from).slerp(turned(to), t);
  const move = new Vector3(...from.move).lerp(new Vector3(...to.move), t);
  return new Matrix4().compose(move, turn, new Vector3(1, 1, 1));
}
