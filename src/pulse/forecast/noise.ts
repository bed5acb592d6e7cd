/** What settling leaves open: how far two settled means may differ for no other reason than where they stopped. N m. */

import { SETTLED } from './settling';

/** @param mean torque, N m */
export const settlingNoise = (mean: number): number => 2 * SETTLED * Math.abs(mean);
