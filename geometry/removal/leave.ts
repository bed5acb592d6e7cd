/**
 * Out of the bay, once a piece is off its studs: first straight every way, then by a search that grows two trees of places toward
 * each other, one from where the piece is and one from places outside (LaValle and Kuffner's RRT-Connect), at first without
 * turning, then with. Chance is seeded and the work is counted in measured places, so the same asks get the same answer. A way
 * found is checked as a motion; where none is found that proves nothing. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import { randomNumbers } from '../layout/random';
import { addScaled, distance, dot, norm, scale, sub, unit } from '../vector';
import { type Body, extent } from './body';
import { type Asked, type Counter, type Moved, moved } from './motion';
import { matrixOf, movedBy, placed, poseAt } from './pose';
import type { RemovalPose } from './report';
import { commonBox } from './space';

export type Left =
  | { readonly ok: true; readonly path: readonly RemovalPose[] }
  /** The straight way that led farthest, what ended it and where. */
  | { readonly ok: false; readonly way: Vec3; readonly after: number; readonly stop: Moved };

/** The piece is out when it is so far from all that has an end, mm. */
const CLEAR = 2;

/** @param first ways worth trying before others */
export function leaveBay(
  body: Body,
  start: RemovalPose,
  all: readonly Asked[],
  first: readonly Vec3[],
  counter: Counter,
  seed: number,
): Left {
  const box = commonBox(all);
  const own = extent(body, matrixOf(start));
  if (!box || isClear(own, box)) return { ok: true, path: [start] };
  const ways = [...first, ...everyWay()]
    .map((way) => ({ way, far: farOut(own, box, way) }))
    .filter(({ far }) => Number.isFinite(far))
    .sort((a, b) => a.far - b.far);
  let best: Extract<Left, { ok: false }> | null = null;
  for (const { way, far } of ways) {
    const stop = moved(body, start, movedBy(start, way, far), all, counter);
    if (stop.share >= 1) return { ok: true, path: [start, movedBy(start, way, far)] };
    const after = stop.share * far;
    if (!best || after > best.after) best = { ok: false, way, after, stop };
  }
  const goals = ways.map(({ way, far }) => movedBy(start, way, far)).filter((goal) => isFree(body, goal, all, counter));
  const path = goals.length > 0 ? grown(body, start, goals, all, box, counter, seed) : null;
  return path ? { ok: true, path } : best!;
}

function isClear(own: Float64Array, box: Float64Array): boolean {
  return [0, 1, 2].some((k) => own[k]! > box[3 + k]! + CLEAR || own[3 + k]! < box[k]! - CLEAR);
}

function farOut(own: Float64Array, box: Float64Array, way: Vec3): number {
  const each = way.map((d, k) => {
    if (Math.abs(d) < 0.05) return Number.POSITIVE_INFINITY;
    return d > 0 ? (box[3 + k]! + CLEAR - own[k]!) / d : (box[k]! - CLEAR - own[3 + k]!) / d;
  });
  return Math.min(...each) + 0.01;
}

/** Along the axes, and between two or three of them. */
function everyWay(): Vec3[] {
  const steps = [-1, 0, 1];
  return steps.flatMap((x) =>
    steps.flatMap((y) => steps.flatMap((z): Vec3[] => (x === 0 && y === 0 && z === 0 ? [] : [unit([x, y, z])]))),
  );
}

const isFree = (body: Body, pose: RemovalPose, all: readonly Asked[], counter: Counter): boolean =>
  moved(body, pose, pose, all, counter).share >= 1;

type Node = { readonly pose: RemovalPose; readonly middle: Vec3; readonly from: Node | null };

/** A turn is as far as it moves the body's outer half. */
const TURN_WEIGHT = 0.6;
/** Between two checked places nothing is turned by more, so that what lies between is what was meant. */
const MOST_TURN = 10 * (Math.PI / 180);
const LONGEST = 150;
/** Nodes nearer than this to the one they come from are not worth keeping, mm. */
const WORTH = 2;
const SHARE_STRAIGHT = 0.25;

function grown(
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
    if (kind < 0.75) return one(QUARTERS);
    return scale(direction(next), one(TURNS) * next());
  };
  const finish = (a: Node, b: Node | null): RemovalPose[] =>
    shortened([...back(a).reverse(), ...(b ? back(b) : [])], body, all, next, between, nodeOf);

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

const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];
/** Turns that suit bays, which are mostly square: by a quarter or less about one axis. */
const QUARTERS: readonly Vec3[] = AXES.flatMap((axis) => [
  scale(axis, Math.PI / 2),
  scale(axis, Math.PI / 4),
  scale(axis, Math.PI / 9),
]);
/** And any other, mostly small. */
const TURNS = [0.35, 0.9, 2.2];

const mixed = (a: RemovalPose, b: RemovalPose, t: number): RemovalPose => ({
  turn: addScaled(a.turn, sub(b.turn, a.turn), t),
  move: addScaled(a.move, sub(b.move, a.move), t),
});

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

/** Places measured to shorten a way that was found. */
const SHORTENING = 1500;

/** Stretches that can be gone straight are; what cannot stays as it was found. */
function shortened(
  path: readonly RemovalPose[],
  body: Body,
  all: readonly Asked[],
  next: () => number,
  between: (node: Node, turn: Vec3, p: Vec3) => RemovalPose[],
  nodeOf: (pose: RemovalPose, from: Node | null) => Node,
): RemovalPose[] {
  const counter = { left: SHORTENING };
  let way = dedupe(path);
  const joined = (i: number, j: number): boolean => {
    const to = way[j]!;
    const steps = between(nodeOf(way[i]!, null), to.turn, placed(to, body.middle));
    if (steps.length >= j - i && j - i > 1 && steps.length > 1 && next() < 0.5) return false;
    let from = way[i]!;
    for (const pose of steps) {
      if (moved(body, from, pose, all, counter).share < 1) return false;
      from = pose;
    }
    way = [...way.slice(0, i + 1), ...steps.slice(0, -1), ...way.slice(j)];
    return true;
  };
  for (let i = 0; i < way.length - 2 && counter.left > 0; i++)
    for (let j = way.length - 1; j > i + 1 && counter.left > 0; j--) if (joined(i, j)) break;
  for (let k = 0; k < 30 && counter.left > 0 && way.length > 3; k++) {
    const i = Math.floor(next() * (way.length - 2));
    joined(i, Math.min(way.length - 1, i + 2 + Math.floor(next() * (way.length - i - 2))));
  }
  return withoutStops(way, body, all, counter);
}

/** Places between which the motion is one and the same are dropped where the whole holds as one motion. */
function withoutStops(way: RemovalPose[], body: Body, all: readonly Asked[], counter: Counter): RemovalPose[] {
  const kept = [way[0]!];
  for (let i = 1; i < way.length - 1; i++) {
    const [from, to] = [kept.at(-1)!, way[i + 1]!];
    const turns = distance(from.turn, to.turn);
    if (turns > MOST_TURN || counter.left <= 0 || moved(body, from, to, all, counter).share < 1) kept.push(way[i]!);
  }
  return [...kept, way.at(-1)!];
}

const dedupe = (path: readonly RemovalPose[]): RemovalPose[] =>
  path.filter((p, i) => i === 0 || distance(p.move, path[i - 1]!.move) + distance(p.turn, path[i - 1]!.turn) > 1e-9);
