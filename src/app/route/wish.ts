/** What is asked for when a header is laid, and what there is to lay. No React. */
import type { RouterOptions } from '../../../geometry';
import type { Design, Runner } from '../../../shared/design/types';

/** `given`: inlets stay with the runners that have one. Else all are given out anew, but for those of locked runners. */
export type Inlets = 'given' | 'free' | 'firing';

export type LayWish = {
  readonly inlets: Inlets;
  /** How long to search. */
  readonly seconds: number;
  /** Start from the way the runners go now. */
  readonly keepsShape: boolean;
  readonly seed: number;
  /** Null: as many as there is time for. */
  readonly rounds: number | null;
};

export const FIRST_WISH: LayWish = { inlets: 'free', seconds: 10, keepsShape: false, seed: 1, rounds: null };

export const SECONDS = [5, 10, 30, 60, 300] as const;

export type ToLay = {
  readonly runners: number;
  readonly locked: number;
  /** Of those not locked: how many have no way yet, and how many have an inlet given. */
  readonly unlaid: number;
  readonly given: number;
  /** Whether cylinders can be put in firing order. */
  readonly hasOrder: boolean;
};

export function toLay({ runners, engine }: Design): ToLay {
  const open = runners.filter((r) => !r.locked);
  return {
    runners: runners.length,
    locked: runners.length - open.length,
    unlaid: open.filter((r) => !r.points).length,
    given: open.filter((r) => r.to.inlet !== undefined).length,
    hasOrder: (engine?.firingOrder?.length ?? 0) > 0,
  };
}

/** Why nothing can be laid; null where something can. */
export function whyNotLaid({ runners, locked }: ToLay): string | null {
  if (runners === 0) return 'There are no runners yet: add ports, a collector and runners on the Edit leaf.';
  return locked === runners ? 'Every runner is locked: unlock those to be laid.' : null;
}

/**
 * The wish to begin with for a design; what was said last about time and seed stays. Inlets of runners that have no way
 * yet were given by someone; those of laid runners may as well be the last search's.
 */
export function wishFor(design: Design, last: LayWish, keepsShape: boolean): LayWish {
  const { runners, locked, unlaid, given } = toLay(design);
  const keeps = keepsShape && unlaid < runners - locked;
  return { ...last, keepsShape: keeps, inlets: given > 0 && (keeps || unlaid > 0) ? 'given' : 'free' };
}

/** The design as the router is to see it. */
export function designToLay(design: Design, { inlets }: LayWish): Design {
  if (inlets === 'given') return design;
  const open = ({ to: { inlet: _inlet, ...to }, ...runner }: Runner): Runner => ({ ...runner, to });
  return { ...design, runners: design.runners.map((r) => (r.locked ? r : open(r))) };
}

export const routerOptions = ({ inlets, keepsShape, seed }: LayWish): RouterOptions => ({
  seed,
  keepsShape,
  order: inlets === 'firing' ? 'firing' : 'free',
});

const LAID_FROM = ['engine', 'ports', 'tubes', 'tooling', 'merges', 'runners', 'groups', 'surroundings', 'clearance'];

/** Whether two states of a design are the same to the router: a title or a unit changes nothing for it. */
export const laysAlike = (a: Design, b: Design): boolean =>
  LAID_FROM.every((part) => a[part as keyof Design] === b[part as keyof Design]);
