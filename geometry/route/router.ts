/**
 * Lays a header from nothing, round by round. A round depends on the design, the seed and its number alone, so rounds may
 * run anywhere, in any order, and still come to the same file.
 */
import type { Design } from '../../shared/design/types';
import type { Meshes } from '../check/meshes';
import { resolveHeader } from '../header/resolve';
import { randomNumbers } from '../layout/random';
import { FEASIBLE, type Settled } from './drawing';
import { lay } from './lay';
import { compareLayouts, type Layout, measuredLayout } from './layout';
import { lengthsIn, looselyLaid } from './loose';
import { planOf } from './plan';
import { simplified } from './simplify';
import { smoothed } from './smooth';
import { mixed, stockOf } from './stock';
import { taskOf } from './task';

/** How inlets that nobody pinned are given out: as it lies best, or so that cylinders fire one after the other round it. */
export type InletOrder = 'free' | 'firing';

export type RouterOptions = {
  /** Default 1. */
  readonly seed?: number;
  /** Default free. */
  readonly order?: InletOrder;
  /** Start from the points drawn and keep their way, where the design has them. Default false: they are laid anew. */
  readonly keepsShape?: boolean;
};

export type Round = {
  /** Layouts in which every rule holds, best first. */
  readonly layouts: readonly Layout[];
  /** The nearest miss, where none holds. */
  readonly attempt: Layout | null;
};

export type Router = {
  /**
   * @param n from 0
   * @param see called with every layout that holds as soon as it is found, better ones after worse
   * @param stopped asked often; true ends the round with what it has
   */
  round(n: number, see?: (layout: Layout) => void, stopped?: () => boolean): Round;
};

/** Locked runners stay as they are; inlets given are kept; everything else is laid. */
export function router(design: Design, meshes: Meshes, { seed = 1 }: RouterOptions = {}): Router {
  const task = taskOf(design, meshes);
  const loose = looselyLaid(task, seed);
  const hasPlay = task.movable.length > 0 || [...task.header.groups.values()].some((g) => g.length === null);
  const stock = stockOf(task, seed, (place, stopped) => {
    const found = place > 0 && hasPlay ? loose(place, stopped) : null;
    if (!found) return null;
    const stood = { ...task.design, merges: found.design.merges };
    const drawn = { ...stood, runners: found.design.runners };
    return { stage: { design: stood, header: resolveHeader(stood) }, lengths: lengthsIn(found.design), drawn };
  });
  return {
    round(n, see, stopped = () => false) {
      const random = randomNumbers(mixed(seed, n, 1));
      const laid = lay(task, planOf(task, stock, n, randomNumbers(mixed(seed, n)), stopped), random, stopped);
      if (!laid) return { layouts: [], attempt: null };
      const first = measuredLayout(laid.design, meshes);
      if (laid.miss > FEASIBLE || !first.report.ok) return { layouts: [], attempt: first };
      const layouts = [first];
      see?.(first);
      const better = ({ design: improved }: Settled): void => {
        const layout = measuredLayout(improved, meshes);
        if (!layout.report.ok || compareLayouts(layout, layouts[0]!) >= 0) return;
        layouts.unshift(layout);
        see?.(layout);
      };
      const simple = simplified(task, laid, random, stopped, better);
      better(smoothed(task, simple, stopped));
      return { layouts: layouts.slice(0, 1), attempt: null };
    },
  };
}
