/**
 * Tables of a pipe's bore. No two diameters ever stand at one place: every change takes a taper, since a step within the solver loses
 * what no taper does (docs/rig.md). m.
 */

export type BoreTable = readonly (readonly [x: number, diameter: number])[];

/** A shorter pipe or taper is no more than a cell. */
export const LEAST_LENGTH = 0.01;

/** As long as the diameters differ, half a right angle across both walls, and never shorter than a cell. */
export const taperLength = (from: number, to: number): number => Math.max(LEAST_LENGTH, Math.abs(to - from));

/** A tube that begins at another bore than its own: a taper, then itself. The taper never takes more than half of it. */
export function boreFrom(from: number, own: number, length: number, taper = taperLength(from, own)): BoreTable {
  return throughHead([[0, from]], own, length, taper);
}

/** What lies in the head first, its last line where it leaves the head; then a taper to the tube, then the tube. */
export function throughHead(head: BoreTable, own: number, length: number, taper?: number): BoreTable {
  const [leaves, from] = head.at(-1)!;
  if (from === own) return length > leaves ? [...head, [length, own]] : /* nothing but the port */ head;
  const end = leaves + Math.min(taper ?? taperLength(from, own), (length - leaves) / 2);
  return [...head, [end, own], [length, own]];
}

/** m, of a circle with the areas of all of these circles. */
export const sumDiameter = (diameters: readonly number[]): number =>
  Math.sqrt(diameters.reduce((sum, d) => sum + d * d, 0));
