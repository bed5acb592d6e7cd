/**
 * A way out by chance: two trees of places grow toward each other, one from where the piece is and one from places outside
 * (LaValle and Kuffner's RRT-Connect), at first without turning, then with; from what is reached it is also tried straight out.
 * Seeded. Each move is checked as a motion. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import { randomNumbers } from '../layout/random';
import { addScaled, distance, dot, norm, scale, sub } from '../vector';
import { type Body, extent } from './body';
import { AXES, farOut, MOST_TURN, TURNS } from './lattice';
import { type Asked, type Counter, moved } from './motion';
import { matrixOf, between as mixed, movedBy, placed, poseAt } from './pose';
import type { RemovalPose } from './report';

type Node = { readonly pose: RemovalPose; readonly middle: Vec3; readonly from: Node | null };

/** A turn is as far as it moves the body's outer half. */
const TURN_WEIGHT = 0.6;
const LONGEST = 150;
/** Nodes nearer than this to the one they come from are not worth keeping, mm. */
const WORTH = 2;
const SHARE_STRAIGHT = 0.25;

export function grownWay(
  body: Body,
  start: RemovalPose,
  goals: readonly RemovalPose[],
  all: readonly Asked[],
  box: Float64Array,
  counter: Counter,
  seed: number,
): RemovalPose[] | null {
  const next = randomNumbers(seed);
  const nodeOf = (pose: RemovalPose, from: Node | null): Node => ({ pose, middle: placed(pose, body.middle), from });
  const inside: Node[] = [nodeOf(start, null)];
  const outside: Node[] = goals.map((g) => nodeOf(g, null));
  const budget = counter.left;
  const { middle, reach } = body;
  const far = (a: Node, turn: Vec3, p: Vec3): number =>
    Math.hypot(distance(a.middle, p), TURN_WEIGHT * reach * distance(a.pose.turn, turn));

  /** Toward a place until something is met: the node reached, and whether it is the place itself. */
  const extend = (tree: Node[], turn: Vec3, p: Vec3): { node: Node; there: boolean } => {
    let node = tree.reduce((a, b) => (far(b, turn, p) < far(a, turn, p) ? b : a));
    for (const pose of between(node, turn, p)) {
      const { share } = moved(body, node.pose, pose, all, counter);
      if (share >= 1) {
        node = nodeOf(pose, node);
        tree.push(node);
        continue;
      }
      const last = nodeOf(mixed(node.pose, pose, share), node);
      if (far(node, last.pose.turn, last.middle) > WORTH) {
        node = last;
        tree.push(node);
      }
      return { node, there: false };
    }
    return { node, there: true };
  };
  function between(node: Node, turn: Vec3, p: Vec3): RemovalPose[] {
    const [turns, moves] = [distance(node.pose.turn, turn), distance(node.middle, p)];
    const steps = Math.max(1, Math.ceil(turns / MOST_TURN), Math.ceil(moves / LONGEST));
    return Array.from({ length: steps }, (_, k) => {
      const t = (k + 1) / steps;
      const at = addScaled(node.middle, sub(p, node.middle), t);
      return poseAt(addScaled(node.pose.turn, sub(turn, node.pose.turn), t), middle, at);
    });
  }

  const origin = inside[0]!.middle;
  const low = [0, 1, 2].map((k) => Math.min(box[k]!, origin[k]!) - reach);
  const high = [0, 1, 2].map((k) => Math.max(box[3 + k]!, origin[k]!) + reach);
  const anywhere = (): Vec3 => {
    const spread = next() < 0.4 ? 0.15 + 0.35 * next() : 0;
    return [0, 1, 2].map((k) =>
      spread > 0 ? origin[k]! + spread * reach * (4 * next() - 2) : low[k]! + next() * (high[k]! - low[k]!),
    ) as unknown as Vec3;
  };
  const one = <T>(of: readonly T[]): T => of[Math.floor(next() * of.length)]!;
  const turnTo = (): Vec3 => {
    const kind = next();
    if (kind < 0.4) return one(inside).pose.turn;
    if (kind < 0.75) return one(TURNS);
    return scale(direction(next), one(ANGLES) * next());
  };
  const finish = (a: Node, b: Node | null): RemovalPose[] => [...back(a).reverse(), ...(b ? back(b) : [])];

  /** Straight out from a place that was reached, along an axis. */
  const outFrom = (node: Node): Node | null => {
    const own = extent(body, matrixOf(node.pose));
    const way = one(AXES);
    const pose = movedBy(node.pose, way, farOut(own, box, way));
    return moved(body, node.pose, pose, all, counter).share >= 1 ? nodeOf(pose, node) : null;
  };

  for (let [tree, other] = [inside, outside]; counter.left > 0; [tree, other] = [other, tree]) {
    const turning = counter.left < (1 - SHARE_STRAIGHT) * budget;
    const { node } = extend(tree, turning ? turnTo() : start.turn, anywhere());
    if (tree === inside) {
      const out = outFrom(node);
      if (out) return finish(out, null);
    }
    const met = extend(other, node.pose.turn, node.middle);
    if (met.there) return tree === inside ? finish(node, met.node) : finish(met.node, node);
  }
  return null;
}

/** Turns other than those of the lattice, mostly small. */
const ANGLES = [0.35, 0.9, 2.2];

function direction(next: () => number): Vec3 {
  for (;;) {
    const v: Vec3 = [2 * next() - 1, 2 * next() - 1, 2 * next() - 1];
    if (dot(v, v) <= 1 && dot(v, v) > 0.01) return scale(v, 1 / norm(v));
  }
}

function back(node: Node): RemovalPose[] {
  const poses: RemovalPose[] = [];
  for (let n: Node | null = node; n; n = n.from) poses.push(n.pose);
  return poses;
}
