/** A pipe's bore from its diameters: piecewise linear, so a row of cones. Exact areas and volumes. m, m², m³. */
import type { Duct } from '../scheme/grid';
import type { PipeSide } from './types';

type Bore = readonly (readonly [x: number, diameter: number])[];

/** m, where the pipe starts or finishes. */
export const endDiameter = (bore: Bore, side: PipeSide): number => bore.at(side === 'start' ? 0 : -1)![1];

/** Beyond its ends a bore goes on as it ends. */
function diameterAt(bore: Bore, x: number): number {
  if (x <= bore[0]![0]) return bore[0]![1];
  for (let k = 1; k < bore.length; k++) {
    const [x1, d1] = bore[k]!;
    if (x > x1) continue;
    const [x0, d0] = bore[k - 1]!;
    return x === x1 ? d1 : d0 + ((x - x0) / (x1 - x0)) * (d1 - d0);
  }
  return bore.at(-1)![1];
}

/** Of a cone cut off square, with its length: π h (d₀² + d₀d₁ + d₁²) / 12. */
const frustum = (d0: number, d1: number, length: number): number =>
  (Math.PI * length * (d0 * d0 + d0 * d1 + d1 * d1)) / 12;

function volumeBetween(bore: Bore, a: number, b: number): number {
  const cuts = [a, ...bore.map(([x]) => x).filter((x) => x > a && x < b), b];
  let volume = 0;
  for (let k = 1; k < cuts.length; k++) {
    const [from, to] = [cuts[k - 1]!, cuts[k]!];
    volume += frustum(diameterAt(bore, from), diameterAt(bore, to), to - from);
  }
  return volume;
}

/**
 * The duct that the grid is laid in: the pipe, and as much more at either side as the gas outside an open end adds. Cells keep
 * the length that the pipe gives them, as near as whole ones can.
 */
export function ductOf(bore: Bore, length: number, cells: number, before: number, after: number): Duct {
  const whole = length + before + after;
  return {
    from: -before,
    to: length + after,
    cells: before + after > 0 ? Math.max(cells, Math.round((cells * whole) / length)) : cells,
    areaAt: (x) => 0.25 * Math.PI * diameterAt(bore, x) ** 2,
    volumeBetween: (a, b) => volumeBetween(bore, a, b),
  };
}
