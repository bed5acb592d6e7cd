/**
 * What the engine itself drags, as a mean effective pressure: the form of S. K. Chen and P. F. Flynn (SAE 650733, 1965) with a term
 * in the square of speed, as is common practice for spark ignition. SI units.
 */
import type { FrictionSetup } from './types';

/** Pa. @param peak Pa, mean of the cylinders' peak pressures @param speed mean piston speed, m/s */
export const frictionPressure = (
  { constant, perPeak, perSpeed, perSquare }: FrictionSetup,
  peak: number,
  speed: number,
): number => constant + perPeak * peak + perSpeed * speed + perSquare * speed * speed;
