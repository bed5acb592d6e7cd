/**
 * A header laid as if tubes could pass through each other: what stands around, the tooling and the lengths are heeded, so
 * this finds where collectors must stand and how long runners must be for each of them to get through at all. Far easier
 * than the whole, and the whole is found near it.
 */
import type { Design } from '../../shared/design/types';
import { resolveHeader } from '../header/resolve';
import { randomNumbers } from '../layout/random';
import type { Settled } from './drawing';
import { lay } from './lay';
import { allOf } from './steps';
import { mixed, type Stock, stockOf } from './stock';
import { type Task, taskOf } from './task';

/** Any gap will do. */
const NO_GAP = -1000;
const BEND_COST = 200;
const REPAIRS = 14;
/** Tries for one set of places, and what may be missed for it to be good enough, mm². */
const TRIES = 3;
const NEARLY = 40;
/** So many of the lengths to try, the first, are drawn from. */
const SHORT = 4;
/** Missed by no more than this, repairing ends, mm²: the whole header is settled from there in any case. */
const RIGHT = 4;

export type Loose = (place: number, stopped: () => boolean) => Settled | null;

/** Answers are kept: they depend on the seed and the number of the places alone. */
export function looselyLaid(task: Task, seed: number): Loose {
  const loose = taskOf({ ...task.design, clearance: { tubeToTube: NO_GAP } }, task.meshes);
  const pinned = { ...loose, runners: task.runners, movable: task.movable };
  const stock: Stock = stockOf(pinned, mixed(seed, 3));
  const known = new Map<number, Settled | null>();
  return (place, stopped) => {
    const kept = known.get(place);
    if (kept !== undefined) return kept;
    let best: Settled | null = null;
    for (let k = 0; k < TRIES && !stopped(); k++) {
      const random = randomNumbers(mixed(seed, place, k, 4));
      const shelf = stock.shelf(place * TRIES + k, Math.floor(SHORT * random()), stopped);
      const plan = {
        kind: 'guessed',
        shelf,
        depth: 0,
        bendCost: BEND_COST,
        heat: 1.5 * random(),
        noise: 500,
        repairs: REPAIRS,
        enough: RIGHT,
      } as const;
      const next = allOf(lay(pinned, plan, random, stopped));
      if (next && (!best || next.cost < best.cost)) best = next;
      if (best && best.cost < NEARLY) break;
    }
    if (!stopped()) known.set(place, best);
    return best;
  };
}

/** What each group's runners have come to, what lies in the head included. */
export function lengthsIn(design: Design): Map<string, number> {
  const sums = new Map<string, { total: number; count: number }>();
  for (const { runner, lengthInHead, centerline } of resolveHeader(design).runners) {
    if (!centerline || runner.group === undefined) continue;
    const sum = sums.get(runner.group) ?? { total: 0, count: 0 };
    sums.set(runner.group, { total: sum.total + lengthInHead + centerline.length, count: sum.count + 1 });
  }
  return new Map([...sums].map(([id, { total, count }]) => [id, total / count]));
}
