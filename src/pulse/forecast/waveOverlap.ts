/**
 * What the traces of one cylinder say of its overlap, in numbers and words: the pressure at its exhaust port and what flows. Measured, so it
 * is told before any wave is named. SI units, crank degrees.
 */
import { valveTimes } from './gasExchange';
import type { CylinderTrace } from './types';
import { lastAtMost } from './waveField';
import type { PathRun } from './wavePath';

/** Linear between rows; the outermost rows' own beyond them. */
export function valueAt(trace: CylinderTrace, values: Float32Array, angle: number): number {
  const { angle: at } = trace;
  const last = at.length - 1;
  const low = lastAtMost(at, angle, last);
  const high = Math.min(last, low + 1);
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

/** Means over the overlap. */
export type OverlapMeans = {
  /** Pa: at the exhaust port, how far that is from its mean over the cycle, and at the intake port. */
  readonly exhaustPort: number;
  readonly offMean: number;
  readonly intakePort: number;
  /** kg/s out through the exhaust valves; below 0 gas flows back. */
  readonly exhaustFlow: number;
  /** kg/s in through the intake valves; below 0 gas flows back into the intake. */
  readonly intakeFlow: number;
};

/** Null without an overlap or without traces. */
export function overlapMeans({ engine, answer }: Pick<PathRun, 'engine' | 'answer'>, cylinder: number) {
  const { overlap } = valveTimes(engine);
  const trace = answer.traces?.find((one) => one.cylinder === cylinder);
  if (!overlap || !trace) return null;
  const mean = (values: Float32Array) => meanOver(trace, values, ...overlap);
  const exhaustPort = mean(trace.exhaustPort);
  return {
    exhaustPort,
    offMean: exhaustPort - meanOver(trace, trace.exhaustPort, -360, 360),
    intakePort: mean(trace.intakePort),
    exhaustFlow: mean(trace.exhaustFlow),
    intakeFlow: mean(trace.intakeFlow),
  } satisfies OverlapMeans;
}

/** kg/s: less is called no flow. */
const STILL = 5e-5;

export type OverlapRun = Pick<PathRun, 'engine' | 'answer'> & { readonly name: string };

/**
 * "In the overlap “This header” holds 62 kPa at the exhaust port and draws: 9.0 g/s flow in through the intake valve, 8.8 g/s …". Empty where no run has both
 * traces and an overlap.
 */
export function overlapWords(runs: readonly OverlapRun[], cylinder: number): string {
  const told = runs.flatMap((run) => {
    const means = overlapMeans(run, cylinder);
    return means ? [`“${run.name}” holds ${holdWords(means)}.`] : [];
  });
  return told.length > 0 ? `In the overlap ${told.join(' ')}` : '';
}

function holdWords({ exhaustPort, intakePort, exhaustFlow, intakeFlow }: OverlapMeans): string {
  const grams = (flow: number) => `${Math.abs(flow * 1000).toFixed(1)} g/s`;
  const held = `${(exhaustPort / 1000).toFixed(0)} kPa at the exhaust port`;
  const out = `${grams(exhaustFlow)} flow ${exhaustFlow < 0 ? 'back in' : 'out'} through the exhaust valve`;
  const into = `${grams(intakeFlow)} flow ${intakeFlow < 0 ? 'back out' : 'in'} through the intake valve`;
  const isBack = intakeFlow < -STILL || (exhaustFlow < -STILL && intakeFlow <= STILL);
  const draws = intakeFlow > STILL && exhaustPort < intakePort;
  return `${held}${isBack ? ' and pushes back' : draws ? ' and draws' : ''}: ${into}, ${out}`;
}

/** Whether gas was measured to go the wrong way through the cylinder. */
export const flowsBack = ({ exhaustFlow, intakeFlow }: OverlapMeans): boolean =>
  intakeFlow < -STILL || exhaustFlow < -STILL;
