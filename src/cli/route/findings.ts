/**
 * What rounds found, gathered in the order of their numbers whatever the order in which threads end them, so that the same
 * rounds come to the same file.
 */
import { compareLayouts, gathered, type Harvest, type Layout, nothingYet, type Round } from '../../../geometry';

export class Findings {
  /** Rounds that ended by themselves. */
  ended = 0;
  /** When the first layout that holds was found, on the clock of `now`; null before. */
  firstValid: number | null = null;
  /** The best so far, for who watches. */
  best: Layout | null = null;
  #harvest = nothingYet;
  #next = 0;
  readonly #waiting = new Map<number, Round>();
  /** Layouts of rounds that have not ended. */
  readonly #seen = new Map<number, Layout[]>();

  found(round: number, at: number, layout: Layout): void {
    this.firstValid = Math.min(this.firstValid ?? at, at);
    this.#seen.set(round, [...(this.#seen.get(round) ?? []), layout]);
    this.#watch(layout);
  }

  end(round: number, result: Round, whole: boolean, at: number): void {
    if (whole) this.ended++;
    if (result.layouts.length > 0) this.firstValid ??= at;
    for (const layout of [...result.layouts, result.attempt]) if (layout) this.#watch(layout);
    this.#seen.delete(round);
    this.#waiting.set(round, result);
    for (let next = this.#waiting.get(this.#next); next; next = this.#waiting.get(this.#next)) {
      this.#harvest = gathered(this.#harvest, next);
      this.#waiting.delete(this.#next++);
    }
  }

  hasEnded(round: number): boolean {
    return round < this.#next || this.#waiting.has(round);
  }

  /** With what rounds told that were stopped before their end. */
  harvest(): Harvest {
    const rest = new Map(this.#waiting);
    for (const [round, layouts] of this.#seen) rest.set(round, { layouts: layouts.toReversed(), attempt: null });
    return [...rest].sort(([a], [b]) => a - b).reduce((sum, [, round]) => gathered(sum, round), this.#harvest);
  }

  #watch(layout: Layout): void {
    if (!this.best || compareLayouts(layout, this.best) < 0) this.best = layout;
  }
}
