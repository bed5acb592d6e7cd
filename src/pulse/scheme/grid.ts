/**
 * The cells of a network, pipe after pipe, in flat arrays. A pipe with n cells has n + 1 faces, so face numbers run ahead of cell
 * numbers by one for each pipe before. SI units.
 */

export type PipeGrid = {
  /** Cells `first` to before `end`. */
  readonly first: number;
  readonly end: number;
  /** The face at the start of cell i is `i + ahead`, that at its finish `i + ahead + 1`. */
  readonly ahead: number;
  /** m */
  readonly spacing: number;
  /** Where the first face lies, m from the pipe's start: below 0 where an end correction lengthens it. */
  readonly from: number;
  /** True where the bore is the same all along. */
  readonly straight: boolean;
};

export type Grid = {
  readonly pipes: readonly PipeGrid[];
  readonly cells: number;
  readonly faces: number;
  /** m², by face. */
  readonly area: Float64Array;
  /** m³, by cell. */
  readonly volume: Float64Array;
  /** 1/m³, by cell. */
  readonly perVolume: Float64Array;
  /** m²: volume over length, by cell. */
  readonly middle: Float64Array;
  /** m, of a cylinder of the cell's length and volume. */
  readonly diameter: Float64Array;
};

/** What the grid needs of a pipe: m, m² and m³ as functions of m from its start. */
export type Duct = {
  readonly from: number;
  readonly to: number;
  readonly cells: number;
  readonly areaAt: (x: number) => number;
  readonly volumeBetween: (a: number, b: number) => number;
};

export function gridOf(ducts: readonly Duct[]): Grid {
  const cells = ducts.reduce((sum, duct) => sum + duct.cells, 0);
  const faces = cells + ducts.length;
  const area = new Float64Array(faces);
  const volume = new Float64Array(cells);
  const perVolume = new Float64Array(cells);
  const middle = new Float64Array(cells);
  const diameter = new Float64Array(cells);
  const pipes: PipeGrid[] = [];
  let first = 0;
  for (const [k, duct] of ducts.entries()) {
    const spacing = (duct.to - duct.from) / duct.cells;
    const faceAt = (j: number) => (j === duct.cells ? duct.to : duct.from + j * spacing);
    for (let j = 0; j <= duct.cells; j++) area[first + k + j] = duct.areaAt(faceAt(j));
    for (let j = 0; j < duct.cells; j++) {
      const i = first + j;
      volume[i] = duct.volumeBetween(faceAt(j), faceAt(j + 1));
      perVolume[i] = 1 / volume[i]!;
      middle[i] = volume[i]! / spacing;
      diameter[i] = Math.sqrt((4 * volume[i]!) / (Math.PI * spacing));
    }
    const own = area.subarray(first + k, first + k + duct.cells + 1);
    const straight = own.every((a) => a === own[0]);
    pipes.push({ first, end: first + duct.cells, ahead: k, spacing, from: duct.from, straight });
    first += duct.cells;
  }
  return { pipes, cells, faces, area, volume, perVolume, middle, diameter };
}

/** m from the pipe's start. */
export const centreOf = ({ from, spacing, first }: PipeGrid, cell: number): number =>
  from + (cell - first + 0.5) * spacing;
