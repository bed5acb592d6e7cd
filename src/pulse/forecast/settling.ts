/**
 * Whether what a cycle comes to still changes. A change that shrinks by the same share from cycle to cycle has a known sum ahead of it;
 * that, not the last change alone, has to be small, lest a slow drift passes for rest.
 */

export type Settling = {
  /** Change of the last cycle, and what is likely still ahead, both as shares; Infinity until known. */
  readonly drift: number;
  readonly ahead: number;
  add(value: number): void;
};

/** Changes that do not shrink count as this many times themselves. */
const LASTING = 10;

export function settling(): Settling {
  let last = Number.NaN;
  let earlier = Infinity;
  let drift = Infinity;
  let ahead = Infinity;
  return {
    get drift() {
      return drift;
    },
    get ahead() {
      return ahead;
    },
    add(value) {
      const change = Math.abs(value - last) / Math.max(Math.abs(value), 1e-12);
      // One change can be small by chance: the larger of what the last and the last two tell.
      const ratio = Math.max(change / drift, Math.sqrt(change / earlier));
      ahead = Number.isFinite(change) && Number.isFinite(drift) ? sumAhead(change, ratio) : Infinity;
      earlier = drift;
      drift = Number.isFinite(change) ? change : Infinity;
      last = value;
    },
  };
}

function sumAhead(change: number, ratio: number): number {
  if (change === 0) return 0;
  return change * Math.min(LASTING, ratio < 1 ? ratio / (1 - ratio) : LASTING);
}
