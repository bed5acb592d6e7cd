/** The paper that sheets are printed on, and the room that a sheet leaves for what it shows. mm, origin top left, y down. */
import type { Box } from '../../formats/drawing/drawing';

/** ISO 216; ANSI A, 8½ × 11 in. */
export const PAPERS = { a4: [210, 297], letter: [215.9, 279.4] } as const;
export type Paper = keyof typeof PAPERS;
export const DEFAULT_PAPER: Paper = 'a4';
export const PAPER_NAMES = Object.keys(PAPERS) as readonly Paper[];

export type Size = { readonly width: number; readonly height: number };

export const upright = (paper: Paper): Size => ({ width: PAPERS[paper][0], height: PAPERS[paper][1] });
export const lying = (paper: Paper): Size => ({ width: PAPERS[paper][1], height: PAPERS[paper][0] });

/** What home and office printers leave white, and a little. */
export const MARGIN = 10;
/** Of the heading over, and of the check bar and the strip under what a sheet shows. */
export const HEADING = 11;
export const FOOT = 25;

export const freeBox = ({ width, height }: Size): Box => ({
  left: MARGIN,
  top: MARGIN + HEADING,
  right: width - MARGIN,
  bottom: height - MARGIN - FOOT,
});

/** A sheet just as large as what it shows: for files that no printer has to fit. */
export const sizeFor = (width: number, height: number): Size => ({
  width: width + 2 * MARGIN,
  height: height + 2 * MARGIN + HEADING + FOOT,
});
