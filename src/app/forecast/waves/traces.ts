/** A cylinder's traces as the face of the valves shows them: which curves there are, what they are at an angle, means, and ranges. */
import { valveTimes } from '../../../pulse/forecast/gasExchange';
import type { CylinderTrace } from '../../../pulse/forecast/types';
import { roundRange } from '../../pulse/scale';
import type { AngleView } from './angles';
import type { WaveRun } from './runs';

export const PRESSURES = ['exhaustPort', 'cylinder', 'intakePort'] as const;
export type PressureKey = (typeof PRESSURES)[number];
export const PRESSURE_NAMES: Readonly<Record<PressureKey, string>> = {
  exhaustPort: 'exhaust port',
  cylinder: 'cylinder',
  intakePort: 'intake port',
};

/** Screen units in one of SI. */
export const KPA = 1e-3;
export const GRAMS = 1e3;
export const MM = 1e3;

export const traceOf = ({ answer }: WaveRun, cylinder: number): CylinderTrace | null =>
  answer.traces?.find((trace) => trace.cylinder === cylinder) ?? null;

/** Of all runs, as the first one has them. */
export const cylindersOf = (runs: readonly WaveRun[]): readonly number[] => runs[0]?.engine.cylinders ?? [];

/** Pa */
export const pressuresOf = (trace: CylinderTrace, key: PressureKey): Float32Array =>
  key === 'cylinder' ? trace.pressure : trace[key];

/** Half way from the exhaust valve's opening to where the cylinder has emptied itself: before, its pressure would dwarf all else. */
const EMPTIED = -120;
const FILLED = 200;

/** kPa from the lowest to the highest of both ports, and of the cylinder once it has blown down. */
export function pressureRange(traces: readonly CylinderTrace[], view: AngleView): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  const take = (value: number) => {
    low = Math.min(low, value * KPA);
    high = Math.max(high, value * KPA);
  };
  for (const trace of traces)
    trace.angle.forEach((angle, k) => {
      if (angle < view.from || angle > view.to) return;
      take(trace.exhaustPort[k]!);
      take(trace.intakePort[k]!);
      if (angle >= EMPTIED && angle <= FILLED) take(trace.pressure[k]!);
    });
  return low <= high ? roundRange(low, high, 10) : [90, 110];
}

/** g/s, 0 among them. */
export function flowRange(traces: readonly CylinderTrace[], view: AngleView): readonly [number, number] {
  let [low, high] = [0, 1];
  for (const trace of traces)
    trace.angle.forEach((angle, k) => {
      if (angle < view.from || angle > view.to) return;
      for (const flow of [trace.exhaustFlow[k]! * GRAMS, trace.intakeFlow[k]! * GRAMS]) {
        low = Math.min(low, flow);
        high = Math.max(high, flow);
      }
    });
  return roundRange(low, high, 1);
}

export const highestLift = (traces: readonly CylinderTrace[]): number =>
  Math.max(1e-3, ...traces.flatMap(({ exhaustLift, intakeLift }) => [...exhaustLift, ...intakeLift])) * MM;

export const overlapOf = (run: WaveRun | undefined) => (run ? valveTimes(run.engine).overlap : null);
