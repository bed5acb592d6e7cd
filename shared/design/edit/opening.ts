/** The same opening in another shape: as wide and as high as it was. mm. */
import type { Opening } from '../types';

export function reshapeOpening(opening: Opening, shape: Opening['shape']): Opening {
  if (opening.shape === shape) return opening;
  const { width, height } = sizeOf(opening);
  if (shape === 'round') return { shape, diameter: Math.min(width, height) };
  if (shape === 'oval') return { shape, width, height };
  // A quarter of the shorter side: plainly rounded, plainly not an oval. Common practice for a first sketch.
  return { shape, width, height, corner: Math.min(width, height) / 4 };
}

/** Across and along `up`, mm. */
export const sizeOf = (opening: Opening): { width: number; height: number } =>
  opening.shape === 'round'
    ? { width: opening.diameter, height: opening.diameter }
    : { width: opening.width, height: opening.height };
