/** A pipe's first state into its cells: what is conserved is averaged by volume where a cell has two. SI units. */
import { carriedOf } from '../ends/ends';
import { type CellState, CONSERVED, type Gas } from '../equations/gas';
import type { Duct } from '../scheme/grid';
import { centreOf, type PipeGrid } from '../scheme/grid';
import type { InitialState } from './types';

/** kg/m³ and J/m³ (internal) at rest. */
export function bulkOf(
  gas: Gas,
  pressure: number,
  temperature: number,
  carried: Float64Array,
): [density: number, internal: number] {
  const perKelvin = gas.gasConstant(carried, 0, 1);
  const density = pressure / (perKelvin * temperature);
  return [density, density * (gas.enthalpy(temperature, carried, 0, 1) - perKelvin * temperature)];
}

export function fillPipe(
  gas: Gas,
  pipe: PipeGrid,
  duct: Duct,
  initial: readonly InitialState[],
  cells: CellState,
): void {
  const regions = [...initial]
    .sort((a, b) => a.from - b.from)
    .map((state, k, all) => {
      const carried = carriedOf(gas, state.fractions);
      const [density, internal] = bulkOf(gas, state.pressure, state.temperature, carried);
      const momentum = density * state.velocity;
      return {
        from: k === 0 ? Number.NEGATIVE_INFINITY : state.from,
        to: k === all.length - 1 ? Number.POSITIVE_INFINITY : state.to,
        values: [
          density,
          momentum,
          internal + 0.5 * momentum * state.velocity,
          ...Array.from(carried, (y) => y * density),
        ],
      };
    });
  for (let i = pipe.first; i < pipe.end; i++) {
    const middle = centreOf(pipe, i);
    const [a, b] = [middle - 0.5 * pipe.spacing, middle + 0.5 * pipe.spacing];
    // A hair of a cell in another region is rounding, not a region.
    const hair = 1e-9 * pipe.spacing;
    const inside = regions.filter(({ from, to }) => from < b - hair && to > a + hair);
    const volume = duct.volumeBetween(a, b);
    for (const { from, to, values } of inside) {
      const share = inside.length === 1 ? 1 : duct.volumeBetween(Math.max(a, from), Math.min(b, to)) / volume;
      for (let k = 0; k < CONSERVED; k++) cells.conserved[CONSERVED * i + k]! += share * values[k]!;
      for (let k = 0; k < gas.carried; k++) cells.partial[k * cells.stride + i]! += share * values[CONSERVED + k]!;
    }
  }
}
