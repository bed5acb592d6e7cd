/**
 * What passes between two states that meet: the approximate Riemann solver HLLC (Toro, Spruce & Speares, Shock Waves 4 (1994) 25),
 * which keeps contacts and resting gas exactly, with outer speeds after Einfeldt (SIAM J. Numer. Anal. 25 (1988) 294), but both
 * sides weighed alike: two square roots less, as robust, and within 4 % as sharp (NOTES.md of the scheme). It asks a state's
 * internal energy and ratio of heats, and of no gas in particular.
 */
import { type FaceState, SIDE } from '../equations/gas';
import { type Fluxes, PASSED } from './fluxes';

/** Faces `from` to before `to`. Answers the fastest wave found, m/s. Partial fluxes are left to `carry`. */
export function hllc({ state }: FaceState, { passed }: Fluxes, from: number, to: number): number {
  let fastest = 0;
  for (let f = from; f < to; f++) {
    const l = 2 * SIDE * f;
    const r = l + SIDE;
    const rl = state[l]!;
    const ul = state[l + 1]!;
    const pl = state[l + 2]!;
    const rr = state[r]!;
    const ur = state[r + 1]!;
    const pr = state[r + 2]!;
    const o = PASSED * f;
    const a2l = (state[l + 4]! * pl) / rl;
    const a2r = (state[r + 4]! * pr) / rr;
    const du = ur - ul;
    const um = 0.5 * (ul + ur);
    const am = Math.sqrt(0.5 * (a2l + a2r) + 0.125 * du * du);
    const sl = Math.min(ul - Math.sqrt(a2l), um - am);
    const sr = Math.max(ur + Math.sqrt(a2r), um + am);
    if (sr > fastest) fastest = sr;
    if (-sl > fastest) fastest = -sl;
    const ml = rl * (sl - ul);
    const mr = rr * (sr - ur);
    // The contact's speed, and the pressure on both sides of it.
    const s = (pr - pl + ml * ul - mr * ur) / (ml - mr);
    if (s >= 0) {
      const total = state[l + 3]! + 0.5 * rl * ul * ul;
      if (sl >= 0) {
        passed[o] = rl * ul;
        passed[o + 1] = rl * ul * ul + pl;
        passed[o + 2] = ul * (total + pl);
      } else {
        const p = pl + ml * (s - ul);
        const inside = 1 / (sl - s);
        const m = ml * inside * s;
        passed[o] = m;
        passed[o + 1] = m * s + p;
        passed[o + 2] = s * (((sl - ul) * total - pl * ul + p * s) * inside + p);
      }
    } else {
      const total = state[r + 3]! + 0.5 * rr * ur * ur;
      if (sr <= 0) {
        passed[o] = rr * ur;
        passed[o + 1] = rr * ur * ur + pr;
        passed[o + 2] = ur * (total + pr);
      } else {
        const p = pr + mr * (s - ur);
        const inside = 1 / (sr - s);
        const m = mr * inside * s;
        passed[o] = m;
        passed[o + 1] = m * s + p;
        passed[o + 2] = s * (((sr - ur) * total - pr * ur + p * s) * inside + p);
      }
    }
  }
  return fastest;
}

/** Carried components go with the mass, from the side that it comes from. */
export function carry(sides: FaceState, { passed, partial }: Fluxes, from: number, to: number, carried: number): void {
  const { fractions, stride } = sides;
  for (let k = 0; k < carried; k++) {
    for (let f = from; f < to; f++) {
      const mass = passed[PASSED * f]!;
      partial[(k * stride) / 2 + f] = mass * fractions[k * stride + 2 * f + (mass >= 0 ? 0 : 1)]!;
    }
  }
}
