/**
 * Lays a header from nothing, round by round. A round depends on the design, the seed and its number alone, so rounds may
 * run anywhere, in any order, and still come to the same file.
 */
import type { Design } from '../../shared/design/types';
import type { Meshes } from '../check/meshes';
import { resolveHeader } from '../header/resolve';
import { randomNumbers } from '../layout/random';
import { FEASIBLE, type Settled } from './drawing';
import { leastTurns, pinnedByOrder } from './inletOrder';
import { kept, type Leeway } from './keep';
import { lay } from './lay';
import { compareLayouts, type Layout, measuredLayout } from './layout';
import { lengthsIn, looselyLaid } from './loose';
import { planOf } from './plan';
import { simplified } from './simplify';
import { smoothed } from './smooth';
import type { Stage } from './stage';
import { allOf, type Steps } from './steps';
import { mixed, stockOf } from './stock';
import { type Task, taskOf } from './task';

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
  /** The same in steps of some hundredths of a second, now and then one of a second. */
  steps(n: number, see?: (layout: Layout) => void, stopped?: () => boolean): Steps<Round>;
};

/** Locked runners stay as they are; inlets given are kept; everything else is laid. */
export function router(
  design: Design,
  meshes: Meshes,
  { seed = 1, order = 'free', keepsShape = false }: RouterOptions = {},
): Router {
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
  const drawn = keepsShape ? taskOf(design, meshes, true) : null;
  return {
    round: (n, see, stopped) => allOf(roundOf(n, see, stopped)),
    steps: roundOf,
  };

  function* roundOf(n: number, see?: (layout: Layout) => void, stopped: () => boolean = () => false): Steps<Round> {
    const same = drawn && kept(drawn, randomNumbers(mixed(seed, n, 4)), stopped, leeway(n));
    if (same) {
      const layout = measuredLayout(same.design, meshes);
      if (same.miss > FEASIBLE || !layout.report.ok) return { layouts: [], attempt: layout };
      see?.(layout);
      return { layouts: [layout], attempt: null };
    }
    const random = randomNumbers(mixed(seed, n, 1));
    const plan = planOf(task, stock, n, randomNumbers(mixed(seed, n)), stopped);
    const own = order === 'firing' ? ordered(n, plan.shelf.stage) : task;
    // What was drawn beforehand takes inlets as it likes.
    const kind = order === 'firing' && plan.kind === 'drawn' ? 'guessed' : plan.kind;
    const laid = yield* lay(own, { ...plan, kind }, random, stopped);
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
    let now = laid;
    // Where tubes lie smoother, one more bend can often be left out.
    for (let before = Infinity; !stopped() && layouts[0]!.bends < before; ) {
      before = layouts[0]!.bends;
      now = smoothed(own, yield* simplified(own, now, random, stopped, better), stopped);
      better(now);
    }
    return { layouts: layouts.slice(0, 1), attempt: null };
  }

  /** Inlets in firing order for one round: the likeliest first, then others too. */
  function ordered(n: number, stage: Stage): Task {
    const random = n === 0 ? () => 0 : randomNumbers(mixed(seed, n, 3));
    return pinnedByOrder(task, leastTurns(task, stage), random);
  }
}

/** What is drawn is first kept as near as can be; then variants of it, every other with a bend more where it is needed. */
const leeway = (n: number): Leeway => (n === 0 ? {} : { size: 10 + 15 * (n % 6), spare: n % 2 });
