/** A way that was found made shorter: stretches that can be gone straight are, and needless places dropped. mm, radians. */
import { distance } from '../vector';
import type { Body } from './body';
import { MOST_TURN, steps } from './lattice';
import { type Asked, type Counter, moved } from './motion';
import { placed } from './pose';
import type { RemovalPose } from './report';

/** Places measured for it. */
const SHORTENING = 1500;

/** What cannot be gone straight stays as it was found. @param next numbers by chance */
export function shortened(
  path: readonly RemovalPose[],
  body: Body,
  all: readonly Asked[],
  next: () => number,
): RemovalPose[] {
  const counter: Counter = { left: SHORTENING };
  let way = distinct(path);
  const joined = (i: number, j: number): boolean => {
    const to = way[j]!;
    const straight = steps(body, way[i]!, to.turn, placed(to, body.middle));
    if (straight.length > j - i) return false;
    let from = way[i]!;
    for (const pose of straight) {
      if (moved(body, from, pose, all, counter).share < 1) return false;
      from = pose;
    }
    way = [...way.slice(0, i + 1), ...straight.slice(0, -1), ...way.slice(j)];
    return true;
  };
  for (let i = 0; i < way.length - 2 && counter.left > 0; i++)
    for (let j = way.length - 1; j > i + 1 && counter.left > 0; j--) if (joined(i, j)) break;
  for (let k = 0; k < 40 && counter.left > 0 && way.length > 3; k++) {
    const i = Math.floor(next() * (way.length - 2));
    joined(i, Math.min(way.length - 1, i + 2 + Math.floor(next() * (way.length - i - 2))));
  }
  return withoutStops(way, body, all, counter);
}

/** A place is dropped where the two beside it can be gone as one motion. */
function withoutStops(way: readonly RemovalPose[], body: Body, all: readonly Asked[], counter: Counter): RemovalPose[] {
  const kept = [way[0]!];
  for (let i = 1; i < way.length - 1; i++) {
    const [from, to] = [kept.at(-1)!, way[i + 1]!];
    const turns = distance(from.turn, to.turn);
    if (turns > MOST_TURN || counter.left <= 0 || moved(body, from, to, all, counter).share < 1) kept.push(way[i]!);
  }
  return way.length > 1 ? [...kept, way.at(-1)!] : kept;
}

const distinct = (path: readonly RemovalPose[]): RemovalPose[] =>
  path.filter((p, i) => i === 0 || distance(p.move, path[i - 1]!.move) + distance(p.turn, path[i - 1]!.turn) > 1e-9);
