/** What the searches along links share: how fine they go, and how far a curve strays from its chords. mm. */
import type { SolverLink } from './links';

/** How far from square a joint's least distance may stand before the neighbouring link holds the true one. */
export const SQUARE = 0.06;
/** Chords are halved until they stray less than this, mm. */
export const resolution = { stray: 0.02 };
/** Where a chord's bracket is narrow enough, as a part of it: 0.02 mm on a metre. */
export const NARROW = 2e-5;
/** What a bound may be off by, mm. */
export const ROUNDING = 1e-9;
/** Half the width over which a chord's middle is probed, as a part of it. */
export const LOOK = 1 / 64;
export const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The least value of a shape's field so far, and where on the link: in chords, −1 for nowhere. */
export const best = { distance: 0.5, p: 0.5 };

/** Sagitta of `n` of a link's chords joined. */
export const strayOf = (link: SolverLink, n: number): number =>
  link.isArc ? link.radius * (1 - Math.cos((link.angle * n) / (2 * link.count))) : 0;

/** Does something with places found only as fine as `stray`, mm; what is measured there stays exact. */
export function searchedTo<T>(stray: number, act: () => T): T {
  const before = resolution.stray;
  resolution.stray = stray;
  try {
    return act();
  } finally {
    resolution.stray = before;
  }
}
