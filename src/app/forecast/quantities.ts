/** What a curve can show of each speed: its words, its unit on screen, and how it is read off an answer. SI in, screen units out. */

import type { Display } from '../../../shared/design/types';
import type { SpeedAnswer, SpeedFailure } from '../../pulse/forecast/types';

export type Quantity = 'torque' | 'power' | 'filling' | 'residual' | 'pumping' | 'heat';

export type Words = {
  readonly name: string;
  /** Short, for a switch and the head of a column. */
  readonly short: string;
  readonly unit: string;
  /** Screen units in one SI unit. */
  readonly factor: number;
  readonly decimals: number;
  /** What it is, in a few words. */
  readonly meaning: string;
};

/** lb ft in one N m, and hp in one W: both follow from the international foot, pound and standard gravity. */
export const LB_FT = 0.737562149;
export const HP = 1 / 745.69987158;
/** kgf m in one N m. */
export const KGF_M = 1 / 9.80665;

const OF: Readonly<Record<Quantity, (answer: SpeedAnswer) => number>> = {
  torque: (a) => a.torque,
  power: (a) => a.power,
  filling: (a) => a.volumetricEfficiency,
  residual: (a) => a.residual,
  pumping: (a) => a.pmep,
  heat: (a) => a.exhaustTemperature,
};

export const QUANTITIES = Object.keys(OF) as readonly Quantity[];

export const ICE_POINT = 273.15;

export function wordsFor(quantity: Quantity, display: Display): Words {
  const inch = display === 'in';
  switch (quantity) {
    case 'torque':
      return {
        name: 'Torque',
        short: 'Torque',
        unit: inch ? 'lb ft' : 'N m',
        factor: inch ? LB_FT : 1,
        decimals: 1,
        meaning: 'at the crank',
      };
    case 'power':
      return {
        name: 'Power',
        short: 'Power',
        unit: inch ? 'hp' : 'kW',
        factor: inch ? HP : 1e-3,
        decimals: 1,
        meaning: 'at the crank',
      };
    case 'filling':
      return {
        name: 'Volumetric efficiency',
        short: 'Filling',
        unit: '%',
        factor: 100,
        decimals: 1,
        meaning: 'fresh gas taken in, of what the swept volume would hold of outside air',
      };
    case 'residual':
      return {
        name: 'Residual gas',
        short: 'Residual',
        unit: '%',
        factor: 100,
        decimals: 2,
        meaning: 'burnt share of what is trapped',
      };
    case 'pumping':
      return {
        name: 'Pumping work',
        short: 'Pumping',
        unit: inch ? 'psi' : 'kPa',
        factor: inch ? 1.450377e-4 : 1e-3,
        decimals: inch ? 2 : 1,
        meaning: 'of the gas exchange, as a mean effective pressure; below 0 it costs',
      };
    case 'heat':
      return {
        name: 'Exhaust temperature',
        short: 'Exhaust',
        unit: inch ? '°F' : '°C',
        factor: inch ? 1.8 : 1,
        decimals: 0,
        meaning: 'mean of what leaves the cylinders',
      };
  }
}

/** In screen units. */
export function readOff(quantity: Quantity, answer: SpeedAnswer, display: Display): number {
  const value = OF[quantity](answer);
  if (quantity === 'heat') return display === 'in' ? (value - ICE_POINT) * 1.8 + 32 : value - ICE_POINT;
  return value * wordsFor(quantity, display).factor;
}

export const isAnswer = (answer: SpeedAnswer | SpeedFailure | null | undefined): answer is SpeedAnswer =>
  answer != null && !('failed' in answer);

/** With a real minus sign, never −0. */
export function numberText(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

/** As a difference: also plus is said. */
export function signedText(value: number, decimals: number): string {
  const text = numberText(value, decimals);
  return Number(text.replace('−', '-')) > 0 ? `+${text}` : text;
}
