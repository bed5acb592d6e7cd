/** The area of a port's opening, and the round hole as large. mm, mm². An oval is two half circles and the straights between. */
import type { Opening } from '../design/types';

export function openingArea(opening: Opening): number {
  if (opening.shape === 'round') return (Math.PI / 4) * opening.diameter ** 2;
  const { width, height } = opening;
  const half = Math.min(width, height) / 2;
  const corner = opening.shape === 'oval' ? half : Math.min(opening.corner, half);
  return width * height - (4 - Math.PI) * corner ** 2;
}

export const sameAreaDiameter = (opening: Opening): number => Math.sqrt((4 * openingArea(opening)) / Math.PI);
