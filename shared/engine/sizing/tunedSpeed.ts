/** The speed to tune for where only the range is known: three quarters of the way up, our own choice, to be changed. */
export const tunedSpeed = ([low, high]: readonly [number, number]): number =>
  Math.round((low + 0.75 * (high - low)) / ROUND) * ROUND;

/** rpm; a tuned speed is not known any closer. */
const ROUND = 50;
