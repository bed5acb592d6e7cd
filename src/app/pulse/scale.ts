/** Round numbers for axes and colours: steps of 1, 2 or 5, and ranges that end on them. Of any unit. */

/** The least of 1, 2 and 5 times a power of ten that is no less. */
export function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const times = least / power;
  const step = [1, 2, 5, 10].find((s) => times <= s * (1 + 1e-9)) ?? 10;
  return step * power;
}

/** A little finer, for the end of a range. */
export function roundUp(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const times = least / power;
  const end = [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10].find((s) => times <= s * (1 + 1e-9)) ?? 10;
  return end * power;
}

export type Ticks = { readonly at: readonly number[]; readonly step: number; readonly decimals: number };

/** At most so many round numbers within the range, at least one step apart. */
export function ticksIn(from: number, to: number, most: number): Ticks {
  const step = roundStep(Math.max(to - from, Number.MIN_VALUE * 1e10) / Math.max(1, most));
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  const at: number[] = [];
  // Never −0.
  for (let k = first; k <= last; k++) at.push(k * step + 0);
  return { at, step, decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) };
}

/** As written at a tick, with a real minus sign. */
export function tickText(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

/** Widened to round ends; where both are one value, to the least width round it. */
export function roundRange(from: number, to: number, least: number): readonly [number, number] {
  const short = Math.max(0, least - (to - from)) / 2;
  const step = roundStep((to - from + 2 * short) / 8);
  return [Math.floor((from - short) / step + 1e-9) * step, Math.ceil((to + short) / step - 1e-9) * step];
}

/** Decimals that tell a thousandth of it. */
export const decimalsFor = (whole: number): number =>
  whole > 0 ? Math.max(0, Math.min(9, 3 - Math.floor(Math.log10(whole) + 1e-9))) : 2;
