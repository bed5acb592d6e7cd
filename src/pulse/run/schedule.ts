/** When rows are written: at 0, sample, 2·sample … up to the duration. s. */

/** How many rows; a last one that misses the duration by rounding alone counts. */
export const rowsOf = (duration: number, sample: number): number =>
  sample > 0 ? Math.floor((duration / sample) * (1 + 1e-12)) + 1 : 0;
