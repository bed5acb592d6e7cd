/** What each round of a search tries: first the likely thing, then ever farther from it. */
import type { Plan } from './lay';
import { PLACES, STRETCHES, type Stock } from './stock';
import type { Task } from './task';

const BEND_COST = 600;
/**
 * Repairs of the shortest round. Most headers come soon or not at all, and a few only after many repairs. The first round does
 * without: the next ones know more shapes, which costs less than to mend what was a first guess.
 */
const REPAIRS = 25;
/** The same where collectors may move: what lies nearly right there is worth more. */
const MOVABLE_REPAIRS = 45;

export function planOf(task: Task, stock: Stock, n: number, random: () => number, stopped: () => boolean): Plan {
  const isOpen = [...task.header.groups.values()].some((g) => g.length === null);
  const isMovable = task.movable.length > 0;
  // Loosely laid first where collectors or lengths have play: one set of places serves a few rounds.
  const place = isMovable
    ? 1 + (Math.floor((3 * n) / 4) % PLACES)
    : isOpen && n > 0
      ? 1 + (Math.floor(n / 2) % PLACES)
      : 0;
  const stretch = isOpen && n > 0 ? Math.floor(STRETCHES.length * random() ** 1.4) : 0;
  return {
    kind: kindOf(n, isMovable, isOpen),
    shelf: stock.shelf(place, stretch, stopped),
    depth: Math.min(isMovable ? 1 : 4, n),
    bendCost: BEND_COST * (n === 0 ? 1 : 2 ** (1 - 3 * random())),
    heat: n === 0 ? 0 : 2 * random(),
    noise: n === 0 ? 0 : 2000 * random() ** 2,
    repairs: isMovable ? MOVABLE_REPAIRS * luby(n + 1) : n === 0 ? 0 : REPAIRS * luby(n),
  };
}

function kindOf(n: number, isMovable: boolean, isOpen: boolean): Plan['kind'] {
  if (isMovable) return n % 8 === 7 ? 'combined' : n % 8 === 3 ? 'grown' : 'drawn';
  if (n === 0) return 'guessed';
  if (isOpen) return n % 2 === 1 ? 'drawn' : n % 4 === 2 ? 'combined' : 'guessed';
  return n % 2 === 1 ? 'combined' : n % 4 === 0 ? 'guessed' : 'grown';
}

/**
 * 1 1 2 1 1 2 4 1 1 2 1 1 2 4 8 …: how long to go on before beginning anew, where nobody knows how long it takes (Luby,
 * Sinclair, Zuckerman, Optimal speedup of Las Vegas algorithms, 1993).
 */
function luby(i: number): number {
  let size = 1;
  while (size < i) size = 2 * size + 1;
  return size === i ? (size + 1) / 2 : luby(i - (size - 1) / 2);
}
