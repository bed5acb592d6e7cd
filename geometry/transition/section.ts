/**
 * The cross-sections of a port transition: rectangles with round corners, of which a round hole and an oval are the ends
 * of the range. Straights and quarter arcs at every station, as a sheet-metal transition is developed, so that area and an
 * even wall have closed forms. About the port's axis; x across, y along its up. mm, mm².
 */
import type { Opening } from '../../shared/design/types';

export type Section = { readonly width: number; readonly height: number; readonly corner: number };

export const circleSection = (diameter: number): Section => ({
  width: diameter,
  height: diameter,
  corner: diameter / 2,
});

export function openingSection(opening: Opening): Section {
  if (opening.shape === 'round') return circleSection(opening.diameter);
  const { width, height } = opening;
  const half = Math.min(width, height) / 2;
  return { width, height, corner: opening.shape === 'oval' ? half : Math.min(opening.corner, half) };
}

export const sectionArea = ({ width, height, corner }: Section): number => width * height - (4 - Math.PI) * corner ** 2;

/** Everywhere `by` farther out, square to the outline. */
export const offsetSection = ({ width, height, corner }: Section, by: number): Section => ({
  width: width + 2 * by,
  height: height + 2 * by,
  corner: corner + by,
});

/** From the axis: to the middle of the sides, of top and bottom, and to the farthest point of the corners. */
export const reaches = ({ width, height, corner }: Section): readonly [across: number, up: number, corner: number] => [
  width / 2,
  height / 2,
  Math.hypot(width / 2 - corner, height / 2 - corner) + corner,
];

/**
 * Part t of the way from one to the other: the shape evenly blended, then scaled so that the area is, too.
 * @param t 0 to 1
 */
export function between(a: Section, b: Section, t: number): Section {
  const mix = (x: number, y: number) => x + t * (y - x);
  const blend: Section = {
    width: mix(a.width, b.width),
    height: mix(a.height, b.height),
    corner: mix(a.corner, b.corner),
  };
  const scale = Math.sqrt(mix(sectionArea(a), sectionArea(b)) / sectionArea(blend));
  return { width: scale * blend.width, height: scale * blend.height, corner: scale * blend.corner };
}
