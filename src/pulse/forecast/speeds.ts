/** At which speeds an engine is followed. rpm. */

/** Lowest and highest speed of what is looked at, rpm. */
export type Band = readonly [lowest: number, highest: number];

/** What may be asked for at all. */
export const SLOWEST = 200;
export const FASTEST = 20_000;

export const USUAL_SPEEDS = 12;
/** Of each size of a study. */
export const STUDY_SPEEDS = 6;
/** Fewer show no shape, more than these nobody waits for. */
export const FEWEST_SPEEDS = 3;
export const MOST_SPEEDS = 60;

/** Tachometers are read no closer. */
const ROUND = 50;

/**
 * Evenly from one end of the band to the other, both ends among them, each rounded to 50 rpm and kept within the band. Where the
 * band is so narrow that two would meet, they stand at whole rpm.
 */
export function speedsOf([lowest, highest]: Band, count = USUAL_SPEEDS): number[] {
  const step = (highest - lowest) / (count - 1);
  const round = step >= 2 * ROUND ? ROUND : 1;
  const within = (rpm: number): number => Math.min(highest, Math.max(lowest, Math.round(rpm / round) * round));
  return [...new Set(Array.from({ length: count }, (_, k) => within(lowest + k * step)))];
}
