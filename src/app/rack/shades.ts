/** How much of a runner's colour lies on the sheet: little on straights, more on bends, so that both carry readable text. */
export const STRAIGHT_SHARE = 0.14;
export const BEND_SHARE = 0.36;
