/** How many steps to take at once, so that whoever watches is heard in between: by what the last ones took. */

/** A turn's wished length, ms. */
const WISHED = 25;
const MOST_STEPS = 20_000;

/** For the first turn. */
export const FIRST_TURN = 8;

/** Never more than four times as many at once: the first turns run code that is not compiled well yet. @param took ms */
export const nextTurn = (steps: number, took: number): number =>
  Math.max(1, Math.min(MOST_STEPS, Math.round(steps * Math.min(4, WISHED / Math.max(took, 0.1)))));
