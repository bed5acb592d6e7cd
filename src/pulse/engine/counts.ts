/** What a cylinder has done since its first step, added up: what a cycle did is the difference between two of its ends. SI units. */

export const COUNTS = [
  /** J of work on the piston, and of it what lies within half a turn of the overlap. */
  'work',
  'exchange',
  /** J to the walls; J released by burning, by the lower heating value. */
  'walled',
  'released',
  /** kg of fresh gas in through the intake valves, net; kg of burnt gas out through them, gross. */
  'fresh',
  'backed',
  /** Through the exhaust valves, net: kg of fresh gas, kg in all, J with them. */
  'lost',
  'left',
  'leftEnergy',
  /** What leaves through them alone, for its mean heat: kg, J without kinetic energy. */
  'blown',
  'blownEnthalpy',
] as const;

export type Count = (typeof COUNTS)[number];
export type Counts = Record<Count, number>;

export const noCounts = (): Counts => Object.fromEntries(COUNTS.map((count) => [count, 0])) as Counts;

/** What was added between two moments. */
export const between = (before: Counts, after: Counts): Counts =>
  Object.fromEntries(COUNTS.map((count) => [count, after[count] - before[count]])) as Counts;
