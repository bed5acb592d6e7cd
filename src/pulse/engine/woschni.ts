/**
 * Heat from gas to a cylinder's walls after G. Woschni (SAE 670931, 1967), in the form and with the constants of J. B. Heywood,
 * Internal Combustion Engine Fundamentals, eqs. 12.38 and 12.39 (from memory): h = 3.26 B^−0.2 p^0.8 T^−0.55 w^0.8 with p in kPa.
 * Good to about 30 %.
 */

/** W/(m² K). @param bore m @param pressure Pa @param temperature K @param speed mean speed of the gas, m/s */
export const woschni = (bore: number, pressure: number, temperature: number, speed: number): number =>
  3.26 * bore ** -0.2 * (0.001 * pressure) ** 0.8 * temperature ** -0.55 * speed ** 0.8;

/** How many mean piston speeds the gas runs at while valves are open, and while they are shut. */
export const EXCHANGING = 6.18;
export const SHUT = 2.28;

/** What combustion adds, m/s, for each K m³/m³: of swept volume × T/(p V) at a reference × the pressure above that without fire. */
const BY_FIRE = 3.24e-3;

/**
 * Gas speed that combustion adds, m/s.
 *
 * @param above Pa over the pressure without fire @param reference state when the valves shut: Pa, m³, K
 */
export const speedByFire = (
  swept: number,
  reference: { readonly pressure: number; readonly volume: number; readonly temperature: number },
  above: number,
): number => (BY_FIRE * swept * reference.temperature * above) / (reference.pressure * reference.volume);
