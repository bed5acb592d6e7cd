/** What each round of a search tries: first the likely thing, then ever farther from it. */
import type { Plan } from './lay';
import { PLACES, STRETCHES, type Stock } from './stock';
import type { Task } from './task';

const BEND_COST = 600;

export function planOf(task: Task, stock: Stock, n: number, random: () => number): Plan {
  const open = [...task.header.groups.values()].some((g) => g.length === null);
  const place = task.movable.length === 0 || n === 0 ? 0 : n % PLACES;
  const stretch = open ? Math.floor(STRETCHES.length * random() ** 1.4 * Math.min(1, n / 2)) : 0;
  return {
    kind:
      n === 0
        ? 'guessed'
        : task.movable.length > 0
          ? n % 4 === 3
            ? 'guessed'
            : 'grown'
          : n % 2 === 1
            ? 'combined'
            : 'grown',
    shelf: stock.shelf(place, stretch),
    depth: task.movable.length > 0 ? 0 : Math.min(4, Math.floor(n / 2)),
    bendCost: BEND_COST * (n === 0 ? 1 : 2 ** (1 - 3 * random())),
    heat: n === 0 ? 0 : 2 * random(),
    noise: n === 0 ? 0 : 2000 * random() ** 2,
    repairs: 12,
  };
}
