/**
 * Slopes of a cell from the differences to both neighbours, per cell; 0 at an extremum. Toro 2009, section 13.7 and 14.3, and the
 * monotonized central one of van Leer (J. Comput. Phys. 23 (1977) 276).
 */
export type Limiter = (before: number, after: number) => number;

/** @param slope of two positive differences */
const limiter =
  (slope: (before: number, after: number) => number): Limiter =>
  (before, after) =>
    before * after > 0 ? Math.sign(before) * slope(Math.abs(before), Math.abs(after)) : 0;

export const none: Limiter = () => 0;
export const minmod = limiter(Math.min);
export const vanAlbada = limiter((a, b) => (a * b * (a + b)) / (a * a + b * b));
export const vanLeer = limiter((a, b) => (2 * a * b) / (a + b));
export const monotonizedCentral = limiter((a, b) => Math.min(2 * a, 2 * b, 0.5 * (a + b)));
export const superbee = limiter((a, b) => Math.max(Math.min(2 * a, b), Math.min(a, 2 * b)));
