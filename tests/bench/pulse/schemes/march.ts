/**
 * A uniform duct of length 1 from one instant to a later one, by a scheme put together of edges, a flux and one stage or two. Plain
 * and slow: it is there to compare schemes, not to be used.
 */
import type { State } from '../../../pulse/riemann';
import type { Edges } from './edges';
import type { Flux } from './fluxes';
import { type Conserved, conserved, isGas, plus, soundOf, stateOf, three } from './states';

export type Scheme = {
  readonly name: string;
  readonly edges: Edges;
  readonly flux: Flux;
  readonly courant: number;
  /** Two: the second-order Runge–Kutta method that keeps what one step of Euler keeps (Shu & Osher 1988). */
  readonly stages: 1 | 2;
};

/** A free end lets everything out; or the duct is a ring. */
export type Duct = 'free' | 'ring';

/** Conserved values a step of Euler later, with edges `share` ahead. `ratio`: the step by a cell's width. */
function stepOf(scheme: Scheme, duct: Duct, now: readonly Conserved[], ratio: number, share: number): Conserved[] {
  const { length } = now;
  const states = now.map(stateOf);
  const at = (i: number) => states[duct === 'ring' ? (i + length) % length : Math.min(Math.max(i, 0), length - 1)]!;
  const edges = states.map((cell, i) => scheme.edges(at(i - 1), cell, at(i + 1), share));
  const [first, last] = [edges[0]!, edges[length - 1]!];
  const passed = Array.from({ length: length + 1 }, (_, f) => {
    const left = f > 0 ? edges[f - 1]![1] : duct === 'ring' ? last[1] : first[0];
    const right = f < length ? edges[f]![0] : duct === 'ring' ? first[0] : last[1];
    return scheme.flux(left, right);
  });
  return now.map((cell, i) => plus(cell, plus(passed[i + 1]!, passed[i]!, -1), -ratio));
}

/** @throws where a cell comes to hold no gas */
export function marched(scheme: Scheme, duct: Duct, begins: readonly State[], duration: number): State[] {
  const { length } = begins;
  let now = begins.map(conserved);
  for (let time = 0; time < duration * (1 - 1e-12); ) {
    const states = now.map(stateOf);
    if (!states.every(isGas)) throw new Error(`${scheme.name}: no gas at ${time}`);
    const fastest = states.reduce((most, state) => Math.max(most, Math.abs(state[1]) + soundOf(state)), 0);
    const dt = Math.min(scheme.courant / length / fastest, duration - time);
    const ratio = dt * length;
    if (scheme.stages === 1) now = stepOf(scheme, duct, now, ratio, ratio);
    else {
      const twice = stepOf(scheme, duct, stepOf(scheme, duct, now, ratio, 0), ratio, 0);
      now = now.map((cell, i) => three((k) => 0.5 * (cell[k] + twice[i]![k])));
    }
    time += dt;
  }
  return now.map(stateOf);
}
