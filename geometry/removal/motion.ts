/**
 * A body moved among what stands still, checked as one motion. From a place where the least gap exceeds what is asked by g the
 * body can travel g before it could come nearer than asked; so it is moved on by that and measured again. Where g is less than
 * `STEP` it is moved on by that much instead, so between two places that are both checked it comes nearer than asked by at most
 * half a step. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Body } from './body';
import { EXACT, type Fineness, leastGap } from './gap';
import { between, type Matrix, matrixOf, travelOf } from './pose';
import type { RemovalPose } from './report';
import type { Standing } from './space';

export const STEP = 0.25;
/** Farther off than this counts as this, mm: the most that one step can be. */
const FAR = 80;
/** What is told of a gap that is asked to stay as it is may stray by this, mm. */
const SLACK = 0.06;

/** What stands in the way, with the gap that is asked of it. */
export type Asked = Standing & { readonly room: number; readonly how: Fineness };

export type Moved = {
  /** Share of the motion that can be made: 1 is all. */
  readonly share: number;
  /** Who stops it, at the share told, and where. */
  readonly by: readonly string[];
  readonly at: Vec3;
};

/** Counts how often a body was measured, so that a search ends after the same work on every machine. */
export type Counter = { left: number };

/**
 * What each asks: `room`, or as much as there is at the pose where there is less already.
 * @param leastAsked no less than this is asked even then
 * @param how finely what is not near yet may be measured from then on; what is near is measured exactly
 */
export function askedAt(
  body: Body,
  pose: RemovalPose,
  all: readonly Standing[],
  room: number,
  leastAsked = Number.NEGATIVE_INFINITY,
  how = EXACT,
): Asked[] {
  const m = matrixOf(pose);
  const enough = room + how.whole + how.fine;
  return all.map((s) => {
    const { gap } = leastGap(body.cells, m, s.distance, enough, EXACT);
    return { ...s, how: gap >= enough ? how : EXACT, room: gap >= room ? room : Math.max(leastAsked, gap - SLACK) };
  });
}

/** @param told whether the place at which it stops is sought exactly */
export function moved(
  body: Body,
  from: RemovalPose,
  to: RemovalPose,
  all: readonly Asked[],
  counter: Counter,
  told = false,
): Moved {
  const travel = travelOf(from, to, body.middle, body.reach);
  const m: Matrix = new Float64Array(12);
  let share = 0;
  let last = 0;
  for (;;) {
    counter.left--;
    matrixOf(between(from, to, share), m);
    let free = FAR;
    for (const s of all) {
      const found = leastGap(body.cells, m, s.distance, s.room + free, s.how, s.room);
      if (found.gap < s.room) {
        const by = [s.id, ...stoppers(body, m, all).filter((id) => id !== s.id)];
        const safe = told ? lastSafe(last, share) : last;
        return { share: safe, by, at: found.at };
      }
      free = Math.min(free, found.gap - s.room);
    }
    last = share;
    if (share >= 1) return { share: 1, by: [], at: [m[9]!, m[10]!, m[11]!] };
    share = travel > 0 ? Math.min(1, share + Math.max(free, STEP) / travel) : 1;
  }

  function lastSafe(safe: number, blocked: number): number {
    let [low, high] = [safe, blocked];
    while ((high - low) * travel > TOLD) {
      counter.left--;
      const middle = (low + high) / 2;
      matrixOf(between(from, to, middle), m);
      const fits = all.every((s) => leastGap(body.cells, m, s.distance, s.room, s.how, s.room).gap >= s.room);
      if (fits) low = middle;
      else high = middle;
    }
    return low;
  }
}

/** How exactly it is told where a body stops, mm. */
const TOLD = 0.02;

/** All that stand nearer than asked there, the nearest first. */
function stoppers(body: Body, m: Matrix, all: readonly Asked[]): string[] {
  return all
    .map((s) => ({ id: s.id, over: leastGap(body.cells, m, s.distance, s.room, s.how).gap - s.room }))
    .filter(({ over }) => over < 0)
    .sort((a, b) => a.over - b.over)
    .map(({ id }) => id);
}

export type Room = { readonly gap: number; readonly by: string };

/** The room that is told is less than the true one by at most this share of it. */
const ROOM_SHARE = 0.02;

/** The least gap along a path, and beside what: exact but for half a step and that share. Null where nothing is within `FAR`. */
export function roomAlong(body: Body, path: readonly RemovalPose[], all: readonly Standing[]): Room | null {
  let best: Room | null = null;
  const m: Matrix = new Float64Array(12);
  for (const [i, to] of path.entries()) {
    const from = path[Math.max(0, i - 1)]!;
    const travel = travelOf(from, to, body.middle, body.reach);
    for (let share = 0; ; ) {
      matrixOf(between(from, to, share), m);
      let over = FAR;
      for (const s of all) {
        const limit: number = (best?.gap ?? FAR) + over;
        const { gap } = leastGap(body.cells, m, s.distance, limit, EXACT);
        if (gap < (best?.gap ?? FAR)) best = leastOf(body, m, s, best);
        over = Math.min(over, Math.max(0, gap - (best?.gap ?? FAR)));
      }
      if (share >= 1) break;
      share = travel > 0 ? Math.min(1, share + Math.max(over, STEP) / travel) : 1;
    }
  }
  return best;
}

function leastOf(body: Body, m: Matrix, s: Standing, best: Room | null): Room | null {
  const limit = best?.gap ?? FAR;
  const { gap } = leastGap(body.cells, m, s.distance, limit, { ...EXACT, share: ROOM_SHARE });
  return gap < limit ? { gap, by: s.id } : best;
}
