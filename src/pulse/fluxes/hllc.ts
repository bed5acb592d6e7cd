/**
 * What passes between two states that meet: the approximate Riemann solver HLLC (Toro, Spruce & Speares, Shock Waves 4 (1994) 25),
 * which keeps contacts and resting gas exactly, with Einfeldt's outer speeds (SIAM J. Numer. Anal. 25 (1988) 294), which keep
 * density and pressure positive. It asks a state's internal energy and ratio of heats, and of no gas in particular.
 */
import type { FaceState } from '../equations/gas';
import type { Fluxes } from '../scheme/state';

/** Faces `from` to before `to`. Answers the fastest wave found, m/s. Partial fluxes are left to `carry`. */
export function hllc(left: FaceState, right: FaceState, out: Fluxes, from: number, to: number): number {
  const { density: rhoL, velocity: uL, pressure: pL, internal: eL, gamma: gL } = left;
  const { density: rhoR, velocity: uR, pressure: pR, internal: eR, gamma: gR } = right;
  const { mass, momentum, energy } = out;
  let fastest = 0;
  for (let f = from; f < to; f++) {
    const rl = rhoL[f]!;
    const rr = rhoR[f]!;
    const ul = uL[f]!;
    const ur = uR[f]!;
    const pl = pL[f]!;
    const pr = pR[f]!;
    const a2l = (gL[f]! * pl) / rl;
    const a2r = (gR[f]! * pr) / rr;
    const wl = Math.sqrt(rl);
    const wr = Math.sqrt(rr);
    const share = wl / (wl + wr);
    const du = ur - ul;
    const um = ur - share * du;
    const am = Math.sqrt(a2r + share * (a2l - a2r) + 0.5 * share * (1 - share) * du * du);
    const sl = Math.min(ul - Math.sqrt(a2l), um - am);
    const sr = Math.max(ur + Math.sqrt(a2r), um + am);
    if (sr > fastest) fastest = sr;
    if (-sl > fastest) fastest = -sl;
    const ml = rl * (sl - ul);
    const mr = rr * (sr - ur);
    // The contact's speed, and the pressure on both sides of it.
    const s = (pr - pl + ml * ul - mr * ur) / (ml - mr);
    if (s >= 0) {
      const total = eL[f]! + 0.5 * rl * ul * ul;
      if (sl >= 0) {
        mass[f] = rl * ul;
        momentum[f] = rl * ul * ul + pl;
        energy[f] = ul * (total + pl);
      } else {
        const p = pl + ml * (s - ul);
        const inside = 1 / (sl - s);
        const m = ml * inside * s;
        mass[f] = m;
        momentum[f] = m * s + p;
        energy[f] = s * (((sl - ul) * total - pl * ul + p * s) * inside + p);
      }
    } else {
      const total = eR[f]! + 0.5 * rr * ur * ur;
      if (sr <= 0) {
        mass[f] = rr * ur;
        momentum[f] = rr * ur * ur + pr;
        energy[f] = ur * (total + pr);
      } else {
        const p = pr + mr * (s - ur);
        const inside = 1 / (sr - s);
        const m = mr * inside * s;
        mass[f] = m;
        momentum[f] = m * s + p;
        energy[f] = s * (((sr - ur) * total - pr * ur + p * s) * inside + p);
      }
    }
  }
  return fastest;
}

/** Carried components go with the mass, from the side that it comes from. */
export function carry(left: FaceState, right: FaceState, out: Fluxes, from: number, to: number, carried: number): void {
  const { mass, partial } = out;
  for (let k = 0; k < carried; k++) {
    const shift = k * left.stride;
    for (let f = from; f < to; f++) {
      const m = mass[f]!;
      partial[shift + f] = m * (m >= 0 ? left.fractions[shift + f]! : right.fractions[shift + f]!);
    }
  }
}
