/** Inside diameters of a primary, mm. */
import { MM_PER_INCH } from '../../units';
import { CUBIC_CENTIMETRE, meanPistonSpeed, sweptVolume } from './gas';

/** Diameter of a circle. */
const across = (area: number): number => Math.sqrt((4 * area) / Math.PI);

/** Inches: 2.1 × √(cc / (25 × (P + 3))), with the handbook's own length P. @param length mm */
export function lengthMatchedBore(cylinder: number, length: number): number {
  const inches = length / MM_PER_INCH;
  return 2.1 * Math.sqrt(cylinder / CUBIC_CENTIMETRE / (25 * (inches + 3))) * MM_PER_INCH;
}

/** Square inches: rpm of the torque's peak × cubic inches of one cylinder / 88,200. @param cylinder mm³ */
export function torqueSpeedBore(cylinder: number, rpm: number): number {
  const cubicInches = cylinder / MM_PER_INCH ** 3;
  return across((rpm * cubicInches) / 88_200) * MM_PER_INCH;
}

/** Middle of the textbook's 90 to 100 m/s. */
export const MEAN_GAS_SPEED = 95;

/** Piston area × mean piston speed = bore area × mean gas speed. */
export function gasSpeedBore(bore: number, stroke: number, rpm: number, gasSpeed = MEAN_GAS_SPEED): number {
  return across((sweptVolume(bore, 1) * meanPistonSpeed(stroke, rpm)) / gasSpeed);
}

/** An eighth of an inch wider than the port. @param port diameter, mm */
export const portStepBore = (port: number): number => port + MM_PER_INCH / 8;
