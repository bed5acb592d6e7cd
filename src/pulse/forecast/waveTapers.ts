/**
 * What a pipe that widens or narrows does to a wave: of small waves f with the flow and g against it, d(f √A)/dx = g d√A/dx and
 * d(g √A)/dx = f d√A/dx (linear acoustics of a horn; textbook, from memory). So √A scales what goes through, and each piece of the
 * taper sends an echo, taken as from its middle. SI units.
 */
import type { GasPath } from '../path/types';
import { pipeOf } from './waveRoute';

export type Taper = { readonly middle: number; readonly from: number; readonly to: number };

export type Bore = {
  /** √A, m */
  root(x: number): number;
  readonly tapers: readonly Taper[];
};

export function boreOf(path: GasPath, id: string): Bore {
  const { diameter } = pipeOf(path, id);
  const half = Math.sqrt(Math.PI) / 2;
  const root = (x: number): number => {
    const k = diameter.findIndex(([at]) => at >= x);
    if (k < 0) return half * diameter.at(-1)![1];
    if (k === 0) return half * diameter[0]![1];
    const [[a, from], [b, to]] = [diameter[k - 1]!, diameter[k]!];
    return half * (from + ((to - from) * (x - a)) / Math.max(b - a, 1e-12));
  };
  const tapers = diameter.slice(1).flatMap(([to, wide], k): Taper[] => {
    const [from, was] = diameter[k]!;
    return to > from && wide !== was ? [{ middle: (from + to) / 2, from, to }] : [];
  });
  return { root, tapers };
}
