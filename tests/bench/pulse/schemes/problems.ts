/**
 * What the schemes are tried on, each answering an error of density: the accuracy tests' four shock tubes and their smooth wave, and
 * density alone carried once round a ring. Lengths and times without dimensions.
 */
import type { State } from '../../../pulse/riemann';
import { stretch, tubeAfter } from '../../../pulse/rigs';
import { WAVE_TIME, waveBegins, waveOff } from '../../../pulse/smoothWave';
import { densityOff, TUBES, type Tube } from '../../../pulse/tubes';
import { marched, type Scheme } from './march';

/** What answers the densities at the end, of a duct with free ends. */
type Free = (begins: readonly State[], duration: number) => ArrayLike<number>;

const densities = (states: readonly State[]) => states.map(([rho]) => rho);

export const bySchemeOf =
  (scheme: Scheme): Free =>
  (begins, duration) =>
    densities(marched(scheme, 'free', begins, duration));

export const bySolver: Free = (begins, duration) => {
  const cells = begins.length;
  const initial = begins.map((state, i) => stretch(i / cells, (i + 1) / cells, state));
  return tubeAfter(duration, initial, { cells }).density;
};

/** As a share of what is allowed. */
export function tubeShare(free: Free, tube: Tube, cells = 200): number {
  const begins = Array.from({ length: cells }, (_, i) => ((i + 0.5) / cells < tube.diaphragm ? tube.left : tube.right));
  return densityOff(tube, free(begins, tube.time)) / tube.most;
}

export const tubeShares = (free: Free): number[] => TUBES.map((tube) => tubeShare(free, tube));

export const waveError = (free: Free, cells: number): number => waveOff(free(waveBegins(cells), WAVE_TIME));

/** ρ = 1 + 0.2 sin 2πx, carried round a ring once, at one speed and one pressure. */
export function entropyError(scheme: Scheme, cells: number): number {
  const wave = (x: number) => (-0.2 * Math.cos(2 * Math.PI * x)) / (2 * Math.PI);
  const begins = Array.from({ length: cells }, (_, i): State => {
    const mean = 1 + (wave((i + 1) / cells) - wave(i / cells)) * cells;
    return [mean, 1, 1];
  });
  const ends = densities(marched(scheme, 'ring', begins, 1));
  return ends.reduce((sum, rho, i) => sum + Math.abs(rho - begins[i]![0]), 0) / cells;
}
