/** The cycle of four strokes in crank degrees. Apart from the gas, so that whoever only counts degrees does not load it. */

/** Crank degrees of a cycle of four strokes. */
export const CYCLE = 720;

/** The same angle of the cycle from −360 to below 360. */
export const withinCycle = (angle: number): number => {
  const turned = (((angle + CYCLE / 2) % CYCLE) + CYCLE) % CYCLE;
  return turned - CYCLE / 2;
};
