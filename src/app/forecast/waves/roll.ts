/**
 * A picture of the waves turned into one cylinder's own degrees, over the part of the cycle that is seen, as the pixels of a rig's picture
 * are painted from: "times" are degrees from the view's start. And how far pressures stray from their mean. SI units.
 */
import { CYCLE } from '../../../pulse/forecast/cycle';
import type { WavePicture } from '../../../pulse/forecast/types';
import { fieldOf } from '../../../pulse/forecast/waveField';
import type { PipePicture } from '../../../pulse/report';
import type { Quantity } from '../../pulse/quantities';
import type { Picture } from '../../pulse/sample';
import type { AngleView } from './angles';

/** @param fires degrees that the cylinder fires after the first one @param ids which pipes, in this order */
export function rolled(waves: WavePicture, fires: number, ids: readonly string[], view: AngleView): Picture {
  const { angles, rows } = fieldOf(waves);
  const first = angles[0]!;
  const step = CYCLE / rows;
  const count = Math.floor((view.to - view.from) / step) + 1;
  const times = Float64Array.from({ length: count + 1 }, (_, k) => Math.min(k * step, view.to - view.from));
  const places = Array.from(times, (time) => {
    const row = ((((view.from + time + fires - first) / step) % rows) + rows) % rows;
    const low = Math.floor(row);
    return { low, high: (low + 1) % rows, share: row - low };
  });
  const pipes = ids.flatMap((id): PipePicture[] => {
    const pipe = waves.pipes.find((one) => one.pipe === id);
    if (!pipe) return [];
    const cells = pipe.x.length;
    const pressure = new Float32Array(places.length * cells);
    places.forEach(({ low, high, share }, r) => {
      for (let i = 0; i < cells; i++) {
        const [a, b] = [pipe.pressure[low * cells + i]!, pipe.pressure[high * cells + i]!];
        pressure[r * cells + i] = a + (b - a) * share;
      }
    });
    return [{ ...pipe, pressure }];
  });
  return { times, pipes };
}

export type Spread = { readonly mean: number; readonly half: number };

/** Share of all values that the colours tell apart; the few beyond have the last colour. */
const TOLD = 0.98;

/** The least half-width: noise of gas at rest stays pale. Pa, m/s, K. */
const LEAST: Readonly<Record<Quantity, number>> = { pressure: 500, velocity: 5, temperature: 5 };

/**
 * Mean of all cells over the cycle (of velocities: rest), and how far from it nearly all values lie. Null where none of the pipes is in the
 * picture.
 */
export function spreadOf(waves: WavePicture, ids: readonly string[], quantity: Quantity = 'pressure'): Spread | null {
  const values = waves.pipes.filter(({ pipe }) => ids.includes(pipe)).flatMap((pipe) => [...pipe[quantity]]);
  if (values.length === 0) return null;
  const mean = quantity === 'velocity' ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
  const off = Float64Array.from(values, (value) => Math.abs(value - mean)).sort();
  return { mean, half: Math.max(LEAST[quantity], off[Math.floor(TOLD * (off.length - 1))]!) };
}
