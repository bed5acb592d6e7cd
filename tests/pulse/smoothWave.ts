/**
 * A smooth finite wave that runs one way, before it has steepened to a shock, in a tube of length 1 without dimensions. Exact by
 * characteristics (Riemann 1860; Toro 2009, section 3.1): u and p stay what they are along x = x₀ + (u + a) t. Cell means, by quadrature.
 */
import type { State } from './riemann';
import { GAMMA } from './rigs';

const A0 = Math.sqrt(GAMMA);
export const WAVE_TIME = 0.25;
/** Smooth to the fourth derivative at its feet, so that its feet do not set the order. */
const velocityAt = (x: number): number => {
  const s = (x - 0.3) / 0.25;
  return Math.abs(s) < 1 ? 0.3 * (1 - s * s) ** 5 : 0;
};

type Conserved = readonly [number, number, number];

function conserved(u: number): Conserved {
  const ratio = 1 + (0.5 * (GAMMA - 1) * u) / A0;
  const rho = ratio ** (2 / (GAMMA - 1));
  return [rho, rho * u, ratio ** ((2 * GAMMA) / (GAMMA - 1)) / (GAMMA - 1) + 0.5 * rho * u * u];
}

/** By bisection: the foot of the characteristic that passes x at `time`. */
function velocityLater(x: number, time: number): number {
  let [low, high] = [x - 3 * time, x];
  for (let n = 0; n < 200 && high - low > 1e-16; n++) {
    const middle = 0.5 * (low + high);
    const u = velocityAt(middle);
    if (middle + (A0 + 0.5 * (GAMMA + 1) * u) * time > x) high = middle;
    else low = middle;
  }
  return velocityAt(0.5 * (low + high));
}

/** Gauss–Legendre with five points: exact far beyond what is measured here. */
const NODES = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664];
const WEIGHTS = [0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891];

function cellMean(at: (x: number) => Conserved, centre: number, width: number): Conserved {
  const sum = [0, 0, 0];
  for (const [n, node] of NODES.entries()) {
    const values = at(centre + 0.5 * width * node);
    for (let k = 0; k < 3; k++) sum[k]! += 0.5 * WEIGHTS[n]! * values[k]!;
  }
  return sum as unknown as Conserved;
}

/** What even cells hold when it begins. */
export const waveBegins = (cells: number): State[] =>
  Array.from({ length: cells }, (_, i) => {
    const [rho, momentum, energy] = cellMean((x) => conserved(velocityAt(x)), (i + 0.5) / cells, 1 / cells);
    const velocity = momentum / rho;
    return [rho, velocity, (GAMMA - 1) * (energy - 0.5 * momentum * velocity)];
  });

/** Mean |ρ − exact| at WAVE_TIME. */
export function waveOff(density: ArrayLike<number>): number {
  const cells = density.length;
  const errors = Array.from(density, (rho, i) =>
    Math.abs(rho - cellMean((x) => conserved(velocityLater(x, WAVE_TIME)), (i + 0.5) / cells, 1 / cells)[0]),
  );
  return errors.reduce((sum, error) => sum + error, 0) / cells;
}
