/**
 * Lift over crank angle where nobody measured it: lift · (1 − |s|^2.5)², s from −1 where the valve opens to 1 where it shuts. Our own
 * form: smooth, still at both ends, its mean 25/42 of the lift. Degrees, any length.
 */

/** Steps no longer than this: straight lines between the rows are off by 0.05 % of the lift at most where it is open for 240°. */
const STEP = 2;
const POWER = 2.5;

export type Lifts = readonly (readonly [angle: number, lift: number])[];

export function smoothLifts(opens: number, closes: number, lift: number): Lifts {
  const steps = 2 * Math.ceil((closes - opens) / (2 * STEP));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const s = (2 * i) / steps - 1;
    return [opens + ((closes - opens) * i) / steps, lift * (1 - Math.abs(s) ** POWER) ** 2 + 0] as const;
  });
}

/** From the last row shut before it opens to the first one after it has shut for good. */
export function trimmedLifts(lifts: Lifts): Lifts {
  const first = lifts.findIndex(([, lift]) => lift > 0);
  const last = lifts.findLastIndex(([, lift]) => lift > 0);
  return lifts.slice(Math.max(first - 1, 0), last + 2);
}
