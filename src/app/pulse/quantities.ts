/** What can be looked at: its words, its unit on screen, and round which value its colours turn. SI in, screen units out. */
import { REAL_GAS_CONSTANT } from '../../pulse/rig/limits';
import type { Rig } from '../../pulse/rig/types';

export type Quantity = 'pressure' | 'velocity' | 'temperature';

export type QuantityWords = {
  readonly name: string;
  readonly unit: string;
  /** Screen units in one SI unit. */
  readonly factor: number;
  /** What stands at the middle of the colours. */
  readonly middle: string;
  /** What its sign or its zero means, where that must be said. */
  readonly note: string;
};

export const QUANTITIES: Readonly<Record<Quantity, QuantityWords>> = {
  pressure: { name: 'Pressure', unit: 'kPa', factor: 1e-3, middle: 'ambient', note: 'absolute' },
  velocity: { name: 'Velocity', unit: 'm/s', factor: 1, middle: 'at rest', note: 'plus is from start to finish' },
  temperature: { name: 'Temperature', unit: 'K', factor: 1, middle: 'ambient', note: '' },
};

export const QUANTITY_KEYS = Object.keys(QUANTITIES) as readonly Quantity[];

/** A rig without dimensions is shown in its own numbers: to them, kPa, ms and m say nothing. */
export const isBare = ({ gas }: Pick<Rig, 'gas'>): boolean =>
  'gasConstant' in gas && gas.gasConstant < REAL_GAS_CONSTANT;

export const wordsFor = (quantity: Quantity, rig: Pick<Rig, 'gas'>): QuantityWords =>
  isBare(rig) ? { ...QUANTITIES[quantity], unit: '', factor: 1 } : QUANTITIES[quantity];

/** Of times and lengths on screen; `factor` in one of SI. */
export type Unit = { readonly unit: string; readonly factor: number };
const BARE: Unit = { unit: '', factor: 1 };
const MS: Unit = { unit: 'ms', factor: 1e3 };
const SECONDS: Unit = { unit: 's', factor: 1 };
/** From here on thousands of ms read worse than s. */
const LONG = 10;
const METRES: Unit = { unit: 'm', factor: 1 };
export const timeUnit = (rig: Pick<Rig, 'gas' | 'duration'>): Unit =>
  isBare(rig) ? BARE : rig.duration < LONG ? MS : SECONDS;
export const lengthUnit = (rig: Pick<Rig, 'gas'>): Unit => (isBare(rig) ? BARE : METRES);

/** "Pressure, kPa", or the name alone. */
export const withUnit = (name: string, unit: string): string => (unit ? `${name}, ${unit}` : name);

/** What a rig's numbers are measured by, screen units: rigs without dimensions are as welcome as those in SI. */
export type Gauge = {
  /** Of the colours. */
  readonly middle: number;
  /** The least half-width of the colours: noise of a rig at rest stays pale. */
  readonly least: number;
  /** Of one value read off: a ten-thousandth of what is usual. */
  readonly decimals: number;
};

/** J/(kg K), where a mixture has no single one; only the size counts. */
const OF_AIR = 287;

export function gaugeOf(quantity: Quantity, { ambient, gas }: Pick<Rig, 'ambient' | 'gas'>): Gauge {
  const { pressure, temperature } = ambient;
  const constant = 'gasConstant' in gas ? gas.gasConstant : OF_AIR;
  const usual = {
    pressure: pressure * wordsFor('pressure', { gas }).factor,
    velocity: Math.sqrt(constant * temperature),
    temperature,
  }[quantity];
  return {
    middle: quantity === 'velocity' ? 0 : usual,
    least: 0.005 * usual,
    decimals: Math.max(0, Math.min(12, 4 - Math.floor(Math.log10(usual)))),
  };
}

/** With a real minus sign; velocities say which way, also plus. */
export function valueText(quantity: Quantity, screen: number, decimals: number): string {
  const text = screen.toFixed(decimals);
  if (Number(text) === 0) return text.replace('-', '');
  return quantity === 'velocity' && screen > 0 ? `+${text}` : text.replace('-', '−');
}
