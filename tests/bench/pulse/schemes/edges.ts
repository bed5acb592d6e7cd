/**
 * The states at both edges of a cell, from itself and its neighbours, carried ahead by a share of a step. `share` is the length of
 * that step by a cell's width; 0 leaves the edges at the present instant.
 */
import type { State } from '../../../pulse/riemann';
import { GAMMA } from '../../../pulse/rigs';
import { type Limiter, minmod } from './limiters';
import { isGas, plus, soundOf, type Three, three } from './states';

export type Edges = (before: State, cell: State, after: State, share: number) => readonly [left: State, right: State];

/** A straight line, carried half a step ahead by the flow's own equations (van Leer 1984; Toro 2009, section 14.4). */
function hancock(cell: State, slope: Three, share: number): readonly [State, State] {
  // No edge loses more than nine tenths of what the cell has.
  const steepest = Math.max(Math.abs(slope[0]) / cell[0], Math.abs(slope[2]) / cell[2]);
  const kept = Math.min(1, 1.8 / Math.max(steepest, 1e-300));
  const [rho, u, p] = cell;
  const [dRho, du, dp] = three((k) => kept * slope[k]);
  const half = 0.5 * share;
  const ahead: State = [
    rho - half * (u * dRho + rho * du),
    u - half * (u * du + dp / rho),
    p - half * (u * dp + GAMMA * p * du),
  ];
  const left = plus(ahead, [dRho, du, dp], -0.5);
  const right = plus(ahead, [dRho, du, dp], 0.5);
  return isGas(left) && isGas(right) ? [left, right] : [cell, cell];
}

/** Limited in density, velocity and pressure. */
export const limited =
  (limiter: Limiter): Edges =>
  (before, cell, after, share) =>
    hancock(
      cell,
      three((k) => limiter(cell[k] - before[k], after[k] - cell[k])),
      share,
    );

/** Differences as strengths of the three waves of a cell's own state, to the left, with the flow and to the right; and back. */
function wavesOf(cell: State) {
  const rho = cell[0];
  const a = soundOf(cell);
  return {
    speeds: [cell[1] - a, cell[1], cell[1] + a] as const,
    split: ([dRho, du, dp]: Three): Three => [du - dp / (rho * a), dRho - dp / (a * a), du + dp / (rho * a)],
    join: ([left, along, right]: Three): Three => {
      const dp = 0.5 * rho * a * (right - left);
      return [along + dp / (a * a), 0.5 * (left + right), dp];
    },
  };
}

/** Limited wave by wave. */
export const byCharacteristics =
  (limiter: Limiter): Edges =>
  (before, cell, after, share) => {
    const { split, join } = wavesOf(cell);
    const back = split(plus(cell, before, -1));
    const ahead = split(plus(after, cell, -1));
    const slope = join(three((k) => limiter(back[k], ahead[k])));
    return hancock(cell, slope, share);
  };

/**
 * Each wave followed back from the edge that it runs to, with the third-order slope of its Courant number (Toro 2009, section 13.7.4
 * has the same bounds: an edge may not leave what reaches it in a step). Waves that run away from an edge get the limiter's slope.
 */
export const traced =
  (limiter: Limiter): Edges =>
  (before, cell, after, share) => {
    const { speeds, split, join } = wavesOf(cell);
    const back = split(plus(cell, before, -1));
    const ahead = split(plus(after, cell, -1));
    const slopes = three((k) => thirdOrder(back[k], ahead[k], speeds[k] * share));
    const plain = three((k) => limiter(back[k], ahead[k]));
    const toLeft = three((k) => -0.5 * (1 + speeds[k] * share) * (speeds[k] < 0 ? slopes : plain)[k]);
    const toRight = three((k) => 0.5 * (1 - speeds[k] * share) * (speeds[k] >= 0 ? slopes : plain)[k]);
    const left = plus(cell, join(toLeft));
    const right = plus(cell, join(toRight));
    const enough = (edge: State) => edge[0] > 0.1 * cell[0] && edge[2] > 0.1 * cell[2];
    return enough(left) && enough(right) ? [left, right] : byCharacteristics(minmod)(before, cell, after, share);
  };

/** @param courant the wave's own, with its sign */
function thirdOrder(back: number, ahead: number, courant: number): number {
  if (back * ahead <= 0) return 0;
  const c = Math.abs(courant);
  const [upwind, downwind] = courant >= 0 ? [back, ahead] : [ahead, back];
  const third = ((2 - c) * downwind + (1 + c) * upwind) / 3;
  const most = Math.min(
    (2 * Math.abs(downwind)) / (1 - Math.min(c, 0.95)),
    // Slow waves would be allowed far more; with more than this the blast comes to hold no gas.
    Math.min(4, Math.max(2, 2 / Math.max(c, 1e-3))) * Math.abs(upwind),
  );
  return Math.sign(back) * Math.min(Math.abs(third), most);
}
