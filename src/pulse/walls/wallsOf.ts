/** The walls of a rig's pipes, cell by cell, and how their friction follows the flow. SI units. */
import { STATE, VELOCITY } from '../equations/gas';
import type { RigPipe } from '../rig/types';
import type { Grid } from '../scheme/grid';
import type { FactorLaw, Walls } from '../scheme/walls';
import { airViscosity, fanningFactor, roughnessTerm } from './friction';
import { COLBURN } from './heat';

export function wallsOf({ pipes }: { readonly pipes: readonly RigPipe[] }, grid: Grid): Walls {
  const column = () => new Float64Array(grid.cells);
  const walls = { factor: column(), perDiameter: column(), wallTemperature: column(), heatShare: column() };
  for (const [k, { friction, wallTemperature }] of pipes.entries()) {
    const { first, end } = grid.pipes[k]!;
    if (typeof friction === 'number') walls.factor.fill(friction, first, end);
    if (wallTemperature !== null) {
      walls.wallTemperature.fill(wallTemperature, first, end);
      walls.heatShare.fill(COLBURN, first, end);
    }
    for (let i = first; i < end; i++) walls.perDiameter[i] = 1 / grid.diameter[i]!;
  }
  return {
    ...walls,
    laws: pipes.map((pipe) => lawOf(pipe, grid)),
    drag: pipes.map(({ friction }) => typeof friction !== 'number' || friction > 0),
  };
}

function lawOf({ friction }: RigPipe, { diameter }: Grid): FactorLaw | null {
  if (typeof friction === 'number') return null;
  const terms = diameter.map((across) => roughnessTerm(friction.roughness / across));
  return ({ first, end }, { state, temperature }, factor) => {
    for (let i = first; i < end; i++) {
      const across = diameter[i]!;
      const reynolds =
        (state[STATE * i]! * Math.abs(state[STATE * i + VELOCITY]!) * across) / airViscosity(temperature[i]!);
      factor[i] = fanningFactor(reynolds, terms[i]!);
    }
  };
}
