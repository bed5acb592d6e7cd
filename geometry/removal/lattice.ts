/**
 * A way out over a lattice of places: moves of one step along the axes, and turns of some degrees about them, best first by how
 * far it still is to outside (weighted A*). A place counts once the motion to it has been checked, which is when its turn
 * comes. No chance in it. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import { add, addScaled, distance, scale, sub } from '../vector';
import { type Body, extent } from './body';
import { type Asked, type Counter, moved } from './motion';
import { matrixOf, placed, poseAt } from './pose';
import type { RemovalPose } from './report';

/** What is still to go counts so much more than what has been gone. */
const GREED = 2;
/** Between two checked places nothing is turned by more, so that what lies between is what was meant. */
export const MOST_TURN = 10 * (Math.PI / 180);
/** The piece is out when it is so far from all that has an end, mm. */
export const CLEAR = 2;

export const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];
/** What is searched: steps along the axes, turns about one of them, each reached by way of the one before, and the ways out. */
export type Lattice = {
  /** mm. */
  readonly step: number;
  /** Growing, radians; 0 is meant too. */
  readonly angles: readonly number[];
  readonly ways: readonly Vec3[];
};
/** Turns that suit bays, which are mostly square. */
export const ANYWHERE: Lattice = { step: 40, angles: [Math.PI / 9, Math.PI / 4, Math.PI / 2], ways: AXES };
/** As most headers leave: down, with small turns and shifts on the way. */
export const DOWN: Lattice = { step: 40, angles: [Math.PI / 18, Math.PI / 9, Math.PI / 6], ways: [[0, 0, -1]] };

const turnsOf = ({ angles }: Lattice): Vec3[] => AXES.flatMap((axis) => angles.map((a) => scale(axis, a)));
export const TURNS: readonly Vec3[] = turnsOf(ANYWHERE);

export function isClear(own: ArrayLike<number>, box: ArrayLike<number>): boolean {
  return [0, 1, 2].some((k) => own[k]! > box[3 + k]! + CLEAR || own[3 + k]! < box[k]! - CLEAR);
}

/** How far along a way until a box is clear of the other. */
export function farOut(own: ArrayLike<number>, box: ArrayLike<number>, way: Vec3): number {
  const each = way.map((d, k) => {
    if (Math.abs(d) < 0.05) return Number.POSITIVE_INFINITY;
    return d > 0 ? (box[3 + k]! + CLEAR - own[k]!) / d : (box[k]! - CLEAR - own[3 + k]!) / d;
  });
  return Math.min(...each) + 0.01;
}

/** Between two places, turned about the body's middle, in parts small enough. */
export function steps(body: Body, from: RemovalPose, turn: Vec3, to: Vec3): RemovalPose[] {
  const middle = placed(from, body.middle);
  const count = Math.max(1, Math.ceil(distance(from.turn, turn) / MOST_TURN));
  return Array.from({ length: count }, (_, k) => {
    const t = (k + 1) / count;
    return poseAt(addScaled(from.turn, sub(turn, from.turn), t), body.middle, addScaled(middle, sub(to, middle), t));
  });
}

type Place = {
  readonly cell: Vec3;
  /** 0 as it was, else one past the number of its turn. */
  readonly turned: number;
  readonly gone: number;
  readonly rank: number;
  readonly from: Reached | null;
};
type Reached = { readonly path: readonly RemovalPose[]; readonly before: Reached | null };

export function latticeWay(
  body: Body,
  start: RemovalPose,
  all: readonly Asked[],
  box: Float64Array,
  counter: Counter,
  lattice: Lattice,
): RemovalPose[] | null {
  const { step, ways } = lattice;
  const origin = placed(start, body.middle);
  const turns = [start.turn, ...turnsOf(lattice).map((t) => add(start.turn, t))];
  const extents = turns.map((turn) => extent(body, matrixOf(poseAt(turn, body.middle, [0, 0, 0]))));
  const ownAt = (turned: number, p: Vec3): number[] => Array.from(extents[turned]!, (x, k) => x + p[k % 3]!);
  const queue = heap<Place>((p) => p.rank);
  const done = new Set<string>();
  const put = (cell: Vec3, turned: number, gone: number, from: Reached | null): void => {
    if (done.has(`${cell} ${turned}`)) return;
    const own = ownAt(turned, addScaled(origin, cell, step));
    const left = Math.max(0, Math.min(...ways.map((way) => farOut(own, box, way))));
    queue.put({ cell, turned, gone, rank: gone + GREED * left, from });
  };
  put([0, 0, 0], 0, 0, null);
  while (counter.left > 0) {
    const next = queue.take();
    if (!next) return null;
    const key = `${next.cell} ${next.turned}`;
    if (done.has(key)) continue;
    const at = addScaled(origin, next.cell, step);
    const path = next.from ? steps(body, next.from.path.at(-1)!, turns[next.turned]!, at) : [start];
    let before = next.from?.path.at(-1) ?? start;
    const holds = path.every((pose) => {
      const { share } = moved(body, before, pose, all, counter);
      before = pose;
      return share >= 1;
    });
    if (!holds) continue;
    done.add(key);
    const reached: Reached = { path, before: next.from };
    if (isClear(ownAt(next.turned, at), box)) return whole(reached);
    for (const way of AXES) put(add(next.cell, way), next.turned, next.gone + step, reached);
    for (const turned of besides(next.turned, lattice.angles.length)) {
      const angle = distance(turns[turned]!, turns[next.turned]!);
      put(next.cell, turned, next.gone + (angle * body.reach) / 4, reached);
    }
  }
  return null;
}

/** Turns one angle further or back about the same axis. */
function besides(turned: number, many: number): number[] {
  if (turned === 0) return AXES.map((_, k) => k * many + 1);
  const k = (turned - 1) % many;
  return [k === 0 ? 0 : turned - 1, ...(k < many - 1 ? [turned + 1] : [])];
}

function whole(last: Reached): RemovalPose[] {
  const parts: (readonly RemovalPose[])[] = [];
  for (let r: Reached | null = last; r; r = r.before) parts.push(r.path);
  return parts.reverse().flat();
}

/** Least first. */
function heap<T>(rank: (of: T) => number): { put(one: T): void; take(): T | undefined } {
  const all: T[] = [];
  const swap = (i: number, j: number): void => {
    const kept = all[i]!;
    all[i] = all[j]!;
    all[j] = kept;
  };
  return {
    put(one) {
      let i = all.push(one) - 1;
      while (i > 0 && rank(all[i]!) < rank(all[(i - 1) >> 1]!)) {
        swap(i, (i - 1) >> 1);
        i = (i - 1) >> 1;
      }
    },
    take() {
      const first = all[0];
      const last = all.pop();
      if (all.length === 0 || last === undefined) return first;
      all[0] = last;
      for (let i = 0; ; ) {
        const [l, r] = [2 * i + 1, 2 * i + 2];
        let least = i;
        if (l < all.length && rank(all[l]!) < rank(all[least]!)) least = l;
        if (r < all.length && rank(all[r]!) < rank(all[least]!)) least = r;
        if (least === i) return first;
        swap(i, least);
        i = least;
      }
    },
  };
}
