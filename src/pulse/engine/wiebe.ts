/**
 * Wiebe's law of heat release, xb = 1 − exp(−a x^(m+1)) over the share x of the burn's duration, with a = 5 and m = 2 as usual for
 * spark ignition (J. B. Heywood, Internal Combustion Engine Fundamentals, eq. 9.30). Crank degrees.
 */
const A = 5;
const POWER = 3;

/** Burnt share at the share `x` of the duration, from 0 on: 0.9933 at its end. */
export const wiebe = (x: number): number => (x > 0 ? 1 - Math.exp(-A * x ** POWER) : 0);

/** Where Wiebe's law has burnt this share: of the duration. */
export const wiebeInverse = (burnt: number): number => (-Math.log(1 - burnt) / A) ** (1 / POWER);

/** What the law leaves at the end of its duration is burnt along with the rest. */
export const burntShare = (x: number): number => (x < 1 ? wiebe(x) / wiebe(1) : 1);

/** Where half of it is burnt. */
export const HALF_BURNT = wiebeInverse(0.5 * wiebe(1));
