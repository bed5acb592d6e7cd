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

/** Linear between rows; the outermost rows' own beyond them. */
export function valueAt(trace: CylinderTrace, values: Float32Array, angle: number): number {
  const { angle: at } = trace;
  const last = at.length - 1;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at[middle]! <= angle) low = middle;
    else high = middle;
  }
  const gap = at[high]! - at[low]!;
  const share = gap > 0 ? Math.min(1, Math.max(0, (angle - at[low]!) / gap)) : 0;
  return values[low]! + (values[high]! - values[low]!) * share;
}

/** Over crank angle, by trapezia between its rows and its ends. */
export function meanOver(trace: CylinderTrace, values: Float32Array, from: number, to: number): number {
  const inner = [...trace.angle].filter((angle) => angle > from && angle < to);
  const at = [from, ...inner, to];
  let sum = 0;
  for (let k = 1; k < at.length; k++)
    sum += ((at[k]! - at[k - 1]!) * (valueAt(trace, values, at[k]!) + valueAt(trace, values, at[k - 1]!))) / 2;
  return sum / (to - from);
}

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
