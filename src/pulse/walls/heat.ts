/**
 * Heat from wall to gas by the analogy of Reynolds and Colburn: Stanton number × Pr^(2/3) = f / 2, so what drags also heats. SI units.
 */

/** Prandtl number of air and burnt gas, taken constant. */
const PRANDTL = 0.71;

/** Pr^(−2/3): how much of the friction is heat. */
export const COLBURN = PRANDTL ** (-2 / 3);
