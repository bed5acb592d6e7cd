/** Gas and piston: sound speed, swept volume, mean piston speed. SI out, mm and °C in. */

/** Burnt gas, hot: common textbook values. */
const GAMMA = 1.33;
/** J/(kg K). */
const GAS_CONSTANT = 287;
const KELVIN_AT_0_C = 273.15;

/** m/s: √(γ R T). @param celsius of the gas */
export const soundSpeed = (celsius: number): number => Math.sqrt(GAMMA * GAS_CONSTANT * (celsius + KELVIN_AT_0_C));

/** mm³ of one cylinder. @param bore mm. @param stroke mm */
export const sweptVolume = (bore: number, stroke: number): number => (Math.PI / 4) * bore * bore * stroke;

/** m/s: twice the stroke a turn. @param stroke mm */
export const meanPistonSpeed = (stroke: number, rpm: number): number => (2 * (stroke / 1000) * rpm) / 60;

/** Seconds that the crank takes. */
export const crankTime = (degrees: number, rpm: number): number => degrees / (6 * rpm);

/**
 * How much longer a pipe sounds than it is at an open end without flange, as a part of its radius, at long waves.
 * H. Levine and J. Schwinger, Physical Review 73 (1948) 383–406; read in its abstract.
 */
export const OPEN_END = 0.6133;

/** mm³ in a cubic centimetre. */
export const CUBIC_CENTIMETRE = 1000;
