/**
 * Whether what a cycle comes to still changes. A change that shrinks by the same share from cycle to cycle has a known sum ahead of it;
 * that, not the last change alone, has to be small, lest a slow drift passes for rest. And two changes, lest one is small by chance.
 */

export type Settling = {
  /** The larger of the last two changes, and what is likely still ahead, both as shares; Infinity until known. */
  readonly drift: number;
  readonly ahead: number;
  add(value: number): void;
};

/** Torque counts as settled when a cycle moves it by no more than this share. */
export const SETTLED = 1e-3;

/** Changes that do not shrink count as this many times themselves. */
const LASTING = 10;

export function settling(): Settling {
  let last = Number.NaN;
  /** Changes: of the last cycle, and of those before it. */
  let changes: readonly number[] = [];
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
      last = value;
      if (!Number.isFinite(change)) return;
      changes = [change, ...changes.slice(0, 2)];
      const [now, before = Infinity, earlier = Infinity] = changes as [number, ...number[]];
      drift = Math.max(now, before);
      // One change can be small by chance: the larger of what the last and the last two tell.
      const ratio = Math.max(now / before, Math.sqrt(now / earlier));
      ahead = before < Infinity ? sumAhead(now, ratio) : Infinity;
    },
  };
}

function sumAhead(change: number, ratio: number): number {
  if (change === 0) return 0;
  return change * Math.min(LASTING, ratio < 1 ? ratio / (1 - ratio) : LASTING);
}
