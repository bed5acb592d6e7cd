/**
 * Lengths of a primary, from the valve seat along the middle of the port and tube to the first place where it opens out.
 * Each returns mm; angles are crank degrees from top dead centre of the exhaust stroke.
 */
import { MM_PER_INCH } from '../../units';
import { crankTime, OPEN_END } from './gas';

/** Inches: 850 × ED / rpm − 3, where ED = 180 + degrees before the bottom at which the exhaust opens. */
export function openingPeriodLength(exhaustOpens: number, rpm: number): number {
  // From opening to the top of the exhaust stroke: the degrees before the bottom and the 180 after it.
  const period = -exhaustOpens;
  return ((850 * period) / rpm - 3) * MM_PER_INCH;
}

/** Half of what sound travels while the crank turns from the pulse to the wanted return. @param sound m/s */
export const outAndBackLength = (sound: number, returnAfter: number, rpm: number): number =>
  (1000 * sound * crankTime(returnAfter, rpm)) / 2;

/**
 * Closed at the valve, open at the collector, the pressure at the valve swings: up as the exhaust opens, down half a swing
 * later, up, and down again one swing and a half after opening. This length puts that second low at `wanted`.
 * @param bore mm, for the open end's correction
 */
export function quarterWaveLength(
  sound: number,
  exhaustOpens: number,
  wanted: number,
  rpm: number,
  bore: number,
): number {
  const swing = crankTime(wanted - exhaustOpens, rpm) / 1.5;
  return (1000 * sound * swing) / 4 - (OPEN_END * bore) / 2;
}

/**
 * Q = cθ / (12 k N l) = 1 at the main order, k = 1; θ is how long the exhaust is open and l takes in the open end's
 * correction, which is taken off here. @param bore mm
 */
export function matchedLength(sound: number, openFor: number, rpm: number, bore: number): number {
  return (1000 * sound * openFor) / (12 * rpm) - (OPEN_END * bore) / 2;
}
