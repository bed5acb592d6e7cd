/**
 * Flow coefficients of the curtain area where no bench has measured them, over lift/diameter. After Heywood, Internal Combustion Engine
 * Fundamentals (1988), figs. 6-14 and 6-21, and Annand and Roe (1974), from memory, within about ±0.07: intake 0.68 falling to 0.47,
 * exhaust 0.72 falling to 0.62. Beyond a quarter of the diameter the curtain outgrows the seat and the port limits, so the coefficient
 * falls as the curtain grows and the flow stays.
 */

export type Flow = readonly (readonly [liftOverDiameter: number, coefficient: number])[];

/** There the curtain is as large as the valve's head. */
const FULL = 0.25;

const MEASURED = {
  intake: [
    [0, 0.68],
    [0.05, 0.68],
    [0.1, 0.64],
    [0.15, 0.59],
    [0.2, 0.53],
    [FULL, 0.47],
  ],
  exhaust: [
    [0, 0.72],
    [0.05, 0.72],
    [0.1, 0.7],
    [0.15, 0.68],
    [0.2, 0.65],
    [FULL, 0.62],
  ],
} as const;

const BEYOND = [0.275, 0.3, 0.325, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7];

export function usualFlow(side: 'intake' | 'exhaust'): Flow {
  const rows = MEASURED[side];
  const last = rows[rows.length - 1]![1];
  return [...rows, ...BEYOND.map((ratio) => [ratio, (last * FULL) / ratio] as const)];
}
