/** What settling leaves open: how far two settled means may differ for no other reason than where they stopped. N m. */

/** Torque counts as settled when a cycle moves it by no more than this share. */
const SETTLED = 0.001;

/** @param mean torque, N m */
export const settlingNoise = (mean: number): number => 2 * SETTLED * Math.abs(mean);
