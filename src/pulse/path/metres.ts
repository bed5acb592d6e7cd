/** From the design's millimetres to the solver's metres: the one step between. */

const MM = 1000;

export const metres = (mm: number): number => mm / MM;
export const millimetres = (m: number): number => m * MM;
