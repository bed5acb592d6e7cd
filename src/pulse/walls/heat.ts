/**
 * Heat from wall to gas by the analogy of Reynolds and Colburn: Stanton number × Pr^(2/3) = f / 2, so what drags also heats. SI units.
 */

/** Prandtl number of air and burnt gas, taken constant. */
export const PRANDTL = 0.71;

/** Pr^(−2/3): how much of the friction is heat. */
export const COLBURN = PRANDTL ** (-2 / 3);

/**
 * W/(m² K), for the difference between the wall's temperature and the gas's static one.
 * @param fanning friction factor @param massFlow ρ|u|, kg/(m² s) @param cp J/(kg K)
 */
export function heatTransferCoefficient(fanning: number, massFlow: number, cp: number): number {
  return 0.5 * fanning * massFlow * cp * COLBURN;
}
