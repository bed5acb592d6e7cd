/** What can be looked at: its words, its unit on screen, and round which value its colours turn. SI in, screen units out. */
import type { Rig } from '../../pulse/rig/types';

export type Quantity = 'pressure' | 'velocity' | 'temperature';

export type QuantityWords = {
  readonly name: string;
  readonly unit: string;
  /** Screen units in one SI unit. */
  readonly factor: number;
  /** Of the screen's unit, for one value read off. */
  readonly decimals: number;
  /** What stands at the middle of the colours. */
  readonly middle: string;
  /** What its sign or its zero means, where that must be said. */
  readonly note: string;
  /** The least half-width of the colours, screen units: noise of a rig at rest stays pale. */
  readonly least: number;
};

export const QUANTITIES: Readonly<Record<Quantity, QuantityWords>> = {
  pressure: {
    name: 'Pressure',
    unit: 'kPa',
    factor: 1e-3,
    decimals: 2,
    middle: 'ambient',
    note: 'absolute',
    least: 0.5,
  },
  velocity: {
    name: 'Velocity',
    unit: 'm/s',
    factor: 1,
    decimals: 2,
    middle: 'at rest',
    note: 'plus is from start to finish',
    least: 1,
  },
  temperature: { name: 'Temperature', unit: 'K', factor: 1, decimals: 1, middle: 'ambient', note: '', least: 1 },
};

export const QUANTITY_KEYS = Object.keys(QUANTITIES) as readonly Quantity[];

/** In screen units. */
export function middleOf(quantity: Quantity, ambient: Rig['ambient']): number {
  if (quantity === 'velocity') return 0;
  return ambient[quantity] * QUANTITIES[quantity].factor;
}

/** With a real minus sign; velocities say which way, also plus. */
export function valueText(quantity: Quantity, screen: number, decimals = QUANTITIES[quantity].decimals): string {
  const text = screen.toFixed(decimals);
  if (Number(text) === 0) return text.replace('-', '');
  return quantity === 'velocity' && screen > 0 ? `+${text}` : text.replace('-', '−');
}
