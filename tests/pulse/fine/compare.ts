/**
 * A rig run by our solver beside the pressures of the fine-grid solver, at the same probes and instants. How far they differ is told as rms
 * over the peak of |p − ambient| at that probe: a peak of absolute pressure would flatter a weak wave on one bar.
 */
import type { Rig } from '../../../src/pulse/rig/types';
import { startRig } from '../../../src/pulse/startRig';

export type Compared = {
  readonly probe: string;
  /** rms of the difference of pressures, Pa. */
  readonly rms: number;
  /** Over the peak of |p − ambient|, and of p, in the fine solution. */
  readonly ofPeak: number;
  readonly ofPressure: number;
};

const STEPS_AT_ONCE = 1000;

/** The fixture's text → row after row: time, then each probe's pressure. */
export function rowsOfCsv(rig: Rig, text: string): number[][] {
  const [header, ...lines] = text.trim().split('\n');
  const names = rig.probes.map(({ pipe, x }) => `${pipe}@${x}.pressure`);
  if (header !== ['time', ...names].join(','))
    throw new Error('The fixture is not of that rig: node tests/pulse/fine/make.mjs makes it anew.');
  return lines.map((line) => line.split(',').map(Number));
}

/** Our own solver's pressures in the same form. `finer` multiplies the cells. */
export function ourRows(rig: Rig, finer = 1): number[][] {
  const run = startRig({ ...rig, pipes: rig.pipes.map((pipe) => ({ ...pipe, cells: finer * pipe.cells })) });
  while (!run.advance(STEPS_AT_ONCE));
  const { times, probes } = run.result();
  return [...times].map((time, row) => [time, ...probes.map(({ pressure }) => pressure[row]!)]);
}

export function compare(rig: Rig, ours: readonly number[][], fine: readonly number[][]): Compared[] {
  if (ours.length !== fine.length) throw new Error(`ours has ${ours.length} rows and the fine one ${fine.length}`);
  // The fixture's instants have seven digits.
  const off = ours.findIndex(([time], row) => !(Math.abs(time! - fine[row]![0]!) <= 1e-6 * rig.duration));
  if (off >= 0) throw new Error(`row ${off} is at ${ours[off]![0]} s and the fine one at ${fine[off]![0]} s`);
  return rig.probes.map(({ pipe, x }, k) => {
    const pressures = fine.map((row) => row[1 + k]!);
    const rms = Math.sqrt(pressures.reduce((sum, p, row) => sum + (ours[row]![1 + k]! - p) ** 2, 0) / fine.length);
    const peak = Math.max(...pressures.map((p) => Math.abs(p - rig.ambient.pressure)));
    return { probe: `${pipe}@${x}`, rms, ofPeak: rms / peak, ofPressure: rms / Math.max(...pressures) };
  });
}

export const inWords = (compared: readonly Compared[]): string =>
  compared.map(({ probe, ofPeak }) => `${probe} ${(100 * ofPeak).toFixed(2)} %`).join(', ');
