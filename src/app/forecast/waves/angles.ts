/** Crank angles on screen: which part of the cycle is seen, round steps of it, and how an angle is written. Degrees. */

export type AngleView = { readonly from: number; readonly to: number };

export const VIEWS = {
  exchange: { name: 'Gas exchange', from: -250, to: 260 },
  cycle: { name: 'Whole cycle', from: -360, to: 360 },
} as const satisfies Record<string, AngleView & { name: string }>;

export type ViewKey = keyof typeof VIEWS;
export const VIEW_KEYS = Object.keys(VIEWS) as readonly ViewKey[];

const STEPS = [10, 15, 30, 45, 60, 90, 180];

/** At most so many, on the steps that a crank is divided by. */
export function angleTicks({ from, to }: AngleView, most: number): number[] {
  const step = STEPS.find((s) => (to - from) / s <= most) ?? STEPS.at(-1)!;
  const ticks: number[] = [];
  for (let at = Math.ceil(from / step) * step; at <= to; at += step) ticks.push(at + 0);
  return ticks;
}

/** With a real minus sign. */
export const angleText = (angle: number, decimals = 0): string => {
  const text = angle.toFixed(decimals);
  return `${Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−')}°`;
};

/** What the piston does there, at its dead centres: the trade's short words. */
export function deadCentre(angle: number): string | null {
  const at = ((angle % 720) + 720) % 720;
  if (at === 0) return 'TDC';
  if (at === 360) return 'fires';
  return at % 360 === 180 ? 'BDC' : null;
}
