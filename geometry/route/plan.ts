/** What each round of a search tries: first the likely thing, then ever farther from it. */
import type { Plan } from './lay';
import { PLACES, type Stock } from './stock';
import type { Task } from './task';

const BEND_COST = 600;
/** The first round is given up soon where the next ones know more than it does. */
const FEW_REPAIRS = 8;
const SOME_REPAIRS = 20;
const REPAIRS = 120;

/** Rounds between which places change, where collectors may move. */
export function planOf(task: Task, stock: Stock, n: number, random: () => number, stopped: () => boolean): Plan {
  const open = [...task.header.groups.values()].some((g) => g.length === null);
  const isMovable = task.movable.length > 0;
  const place = n > 0 && (isMovable || open) ? 1 + (Math.floor((3 * (n - 1)) / 4) % PLACES) : 0;
  const stretch = open && n > 0 ? Math.floor(4 * random() ** 1.4) : 0;
  return {
    kind: kindOf(n, isMovable, open),
    shelf: stock.shelf(place, stretch, stopped),
    depth: Math.min(isMovable ? 1 : 4, Math.floor(n / 2)),
    bendCost: BEND_COST * (n === 0 ? 1 : 2 ** (1 - 3 * random())),
    heat: n === 0 ? 0 : 2 * random(),
    noise: n === 0 ? 0 : 2000 * random() ** 2,
    repairs: n > 0 ? REPAIRS : isMovable || open ? FEW_REPAIRS : SOME_REPAIRS,
  };
}

function kindOf(n: number, isMovable: boolean, isOpen: boolean): Plan['kind'] {
  if (n === 0) return 'guessed';
  if (isMovable) return n % 4 !== 0 ? 'drawn' : n % 8 === 0 ? 'combined' : 'grown';
  if (isOpen) return n % 2 === 1 ? 'drawn' : n % 4 === 2 ? 'combined' : 'guessed';
  return n % 2 === 1 ? 'combined' : n % 4 === 0 ? 'guessed' : 'grown';
}
