/**
 * What a pipe's wall drags: Fanning's friction factor, wall shear = f · ½ρu². Either given, or by roughness: laminar flow in round
 * pipes, S. E. Haaland's explicit form of the Colebrook equation (J. Fluids Eng. 105, 1983) for turbulent flow, and our own
 * smooth blend between. Quasi-steady, as for flow that has settled. SI units; pure functions of scalars.
 */

/** Where laminar flow in a pipe ends and turbulent flow is sure: common textbook bounds. */
const LAMINAR = 2300;
const TURBULENT = 4000;

/** Below this Reynolds number the laminar factor no longer grows, so that gas at rest has one: what it drags there is nothing. */
const CREEPING = 1;

/** Pa s at K: Sutherland's formula for air, 1.716e-5 Pa s at 273.15 K (F. M. White, Viscous Fluid Flow) with the Standard Atmosphere's S = 110.4 K; both from memory. */
export function airViscosity(temperature: number): number {
  const ratio = temperature / 273.15;
  return (1.716e-5 * ratio * Math.sqrt(ratio) * (273.15 + 110.4)) / (temperature + 110.4);
}

/** Fanning's factor of settled laminar flow in a round pipe. */
export function laminarFactor(reynolds: number): number {
  // What is not a number counts as at rest.
  return reynolds > CREEPING ? 16 / reynolds : 16 / CREEPING;
}

/** What roughness adds in Haaland's formula: worked out once for each place. @param relative roughness height / diameter */
export const roughnessTerm = (relative: number): number => (relative / 3.7) ** 1.11;

/** −3.6 log₁₀, of a natural logarithm. */
const PER_LOG = -3.6 / Math.LN10;

/** Fanning's factor by Haaland. @param roughness a `roughnessTerm` */
export function haalandFactor(reynolds: number, roughness: number): number {
  const root = PER_LOG * Math.log(roughness + 6.9 / reynolds);
  return 1 / (root * root);
}

/** Fanning's factor at any Reynolds number from 0 on: from laminar to turbulent by a cubic that leaves and arrives level. */
export function fanningFactor(reynolds: number, roughness: number): number {
  if (!(reynolds > LAMINAR)) return laminarFactor(reynolds);
  if (reynolds >= TURBULENT) return haalandFactor(reynolds, roughness);
  const part = (reynolds - LAMINAR) / (TURBULENT - LAMINAR);
  const turbulent = part * part * (3 - 2 * part);
  return (1 - turbulent) * laminarFactor(reynolds) + turbulent * haalandFactor(reynolds, roughness);
}
