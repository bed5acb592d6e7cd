/** How a way off is told: which way, how far, what is met. */

import type { Vec3 } from '../../shared/vec3';
import type { Say } from '../check/words';
import { norm, sub, unit } from '../vector';
import type { Taken } from './comeOff';
import type { RemovalPose } from './report';

const NAMES: readonly (readonly [string, string])[] = [
  ['toward +X', 'toward −X'],
  ['toward +Y', 'toward −Y'],
  ['up', 'down'],
];
/** What counts for less than this of a way is not named: a quarter of a right angle. */
const NAMED = 0.38;

/** "down", "up and toward +Y". */
export function directionWords(way: Vec3): string {
  const named = unit(way)
    .map((x, k) => ({ size: Math.abs(x), name: NAMES[k]![x > 0 ? 0 : 1] }))
    .filter(({ size }) => size >= NAMED)
    .sort((a, b) => b.size - a.size);
  return named.map(({ name }) => name).join(' and ');
}

/** How it leaves, from the second of its places to the last. */
export const wayWords = ({ path, raised }: Pick<Taken, 'path' | 'raised'>): string =>
  `${pathWords(path)}${raised ? ', with the vehicle raised' : ''}`;

function pathWords(path: readonly RemovalPose[]): string {
  const [from, to] = [path[Math.min(1, path.length - 1)]!, path.at(-1)!];
  const d = sub(to.move, from.move);
  if (norm(d) < 1 && norm(to.turn) < 0.01) return 'freely';
  const turned = norm(to.turn) > 0.01 || path.slice(1, -1).some((p) => norm(p.turn) > 0.01);
  const straight = path.length <= 3 && !turned;
  if (straight) return `straight ${directionWords(d)}`;
  // Not counted: places of the path that lie in one line are one move to hands, and to the list on paper.
  return `${directionWords(d)} in several moves${turned ? ', turned on the way' : ''}`;
}

/** What keeps it, as the end of a sentence about one piece or several parts of one. */
export function stoppedWords({ slide, left }: Pick<Taken, 'slide' | 'left'>, say: Say): string {
  if (!slide.ok) {
    if (slide.why) return `cannot be drawn off straight: ${slide.why}`;
    return `can be drawn off by ${say(slide.after)} of the ${say(slide.far)} it takes, where ${inTheWay(slide.by)}`;
  }
  if (left && !left.ok)
    return `can be drawn off, but no way out was found: the farthest straight way, ${say(left.after)}, is ${directionWords(left.way)}, where ${inTheWay(left.stop.by)}`;
  return 'can be drawn off and leaves';
}

const inTheWay = (by: readonly string[]): string =>
  by.length > 1 ? `${by.slice(0, -1).join(', ')} and ${by.at(-1)} are in the way` : `${by.join()} is in the way`;
