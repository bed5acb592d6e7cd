/** A pipe's first state into its cells: what is conserved is averaged by volume where a cell has two. SI units. */
import { carriedOf } from '../ends/ends';
import { bulkOf } from '../equations/bulk';
import { type CellState, CONSERVED, type Gas } from '../equations/gas';
import { centreOf, type Duct, type PipeGrid } from '../scheme/grid';
import type { InitialState } from './types';

type Region = {
  readonly from: number;
  readonly to: number;
  readonly pressure: number;
  /** Density, momentum, kinetic and internal energy, carried partial densities, per m³. */
  readonly density: number;
  readonly momentum: number;
  readonly kinetic: number;
  readonly internal: number;
  readonly partial: readonly number[];
};

function regionsOf(gas: Gas, initial: readonly InitialState[]): Region[] {
  return initial.map(({ from, to, pressure, temperature, velocity, fractions }, k) => {
    const carried = carriedOf(gas, fractions);
    const [density, internal] = bulkOf(gas, pressure, temperature, carried);
    return {
      // What an end correction adds is filled as the pipe beside it.
      from: k === 0 ? Number.NEGATIVE_INFINITY : from,
      to: k === initial.length - 1 ? Number.POSITIVE_INFINITY : to,
      pressure,
      density,
      momentum: density * velocity,
      kinetic: 0.5 * density * velocity * velocity,
      internal,
      partial: Array.from(carried, (y) => y * density),
    };
  });
}

export function fillPipe(
  gas: Gas,
  pipe: PipeGrid,
  duct: Duct,
  initial: readonly InitialState[],
  cells: CellState,
): void {
  const regions = regionsOf(gas, initial);
  // A hair of a cell in another region is rounding, not a region.
  const hair = 1e-9 * pipe.spacing;
  let first = 0;
  for (let i = pipe.first; i < pipe.end; i++) {
    const middle = centreOf(pipe, i);
    const [a, b] = [middle - 0.5 * pipe.spacing, middle + 0.5 * pipe.spacing];
    while (regions[first]!.to <= a + hair) first++;
    let last = first;
    while (regions[last]!.to < b - hair) last++;
    if (first === last) put(cells, i, regions[first]!, regions[first]!.internal);
    else {
      const whole = mixed(duct, regions.slice(first, last + 1), a, b);
      put(cells, i, whole, settled(gas, whole));
    }
  }
}

/** The mean of several regions by volume; `pressure` is NaN where they have not one. */
function mixed(duct: Duct, regions: readonly Region[], a: number, b: number): Region {
  const volume = duct.volumeBetween(a, b);
  const shares = regions.map(({ from, to }) => duct.volumeBetween(Math.max(a, from), Math.min(b, to)) / volume);
  const mean = (of: (region: Region) => number) => regions.reduce((sum, region, k) => sum + shares[k]! * of(region), 0);
  const { pressure, partial } = regions[0]!;
  return {
    from: a,
    to: b,
    pressure: regions.every((region) => region.pressure === pressure) ? pressure : Number.NaN,
    density: mean(({ density }) => density),
    momentum: mean(({ momentum }) => momentum),
    kinetic: mean(({ kinetic }) => kinetic),
    internal: mean(({ internal }) => internal),
    partial: partial.map((_, k) => mean((region) => region.partial[k]!)),
  };
}

/** J/m³ that keep the pressure where all had one: with heats that follow temperature, mean energy would not, and rest not be rest. */
function settled(gas: Gas, { pressure, density, internal, partial }: Region): number {
  if (Number.isNaN(pressure)) return internal;
  const fractions = Float64Array.from(partial, (part) => part / density);
  const temperature = pressure / (density * gas.gasConstant(fractions, 0, 1));
  return bulkOf(gas, pressure, temperature, fractions)[1];
}

function put(cells: CellState, i: number, region: Region, internal: number): void {
  cells.conserved.set([region.density, region.momentum, internal + region.kinetic], CONSERVED * i);
  for (const [k, part] of region.partial.entries()) cells.partial[k * cells.stride + i] = part;
}
