/** Numbers as a tape or a dial reads them: to the nearest of its least steps. mm, degrees. */

/** @param step 0: as it is. Nothing is −0. */
export function toStep(value: number, step: number): number {
  if (!(step > 0)) return value;
  // Steps such as 0.1 are no whole numbers of anything: the last digits of the product are noise.
  const rounded = Number((Math.round(value / step) * step).toFixed(9));
  return rounded === 0 ? 0 : rounded;
}
