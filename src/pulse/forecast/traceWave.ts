/**
 * Where a small wave goes that starts at one end of a row of pipes: along a characteristic, dx/dt = u + c with the pipe's direction and
 * u − c against it, through the gas that a picture of the waves holds. Fourth-order Runge–Kutta; the last step of each pipe
 * is shortened until it ends at the pipe's end. SI units, crank degrees.
 */
import type { PipePicture } from '../report';
import { CYCLE } from './cycle';
import { burntSound, cellOf, pipeIn, type Reading, reachOf, readField, slopeIn, type WaveField } from './waveField';

/** One pipe that a wave runs through whole: 1 from start to finish, −1 back. */
export type Leg = { readonly pipe: string; readonly direction: 1 | -1 };

/** Where it was when. `angles` rise; `x` runs to the pipe's other end, end correction included. */
export type TracedLeg = Leg & { readonly angles: Float64Array; readonly x: Float64Array };

export type Trace = {
  readonly legs: readonly TracedLeg[];
  /** m, of the legs that were run through. */
  readonly length: number;
  /** Mean over its time, m/s. */
  readonly sound: number;
  /** Null where gas as fast as sound carries it along: it never comes to the end of its way. */
  readonly arrival: number | null;
};

/** Crank degrees of one step at most; and at most the share of a cell that sound at 1000 m/s crosses. */
const STEP = 0.5;
const SHARE = 0.5;
const FAST = 1000;

/** @param rpm of the crank @param start crank degrees of the cylinder that fires first @throws where a pipe is not in the picture */
export function traceWave(field: WaveField, rpm: number, legs: readonly Leg[], start: number): Trace {
  const traced: TracedLeg[] = [];
  let [angle, length, path] = [start, 0, 0];
  for (const leg of legs) {
    const pipe = pipeIn(field, leg.pipe);
    const run = traceLeg(field, rpm, pipe, leg.direction, angle, start + CYCLE);
    const { angles, x } = run;
    traced.push({ ...leg, angles: Float64Array.from(angles), x: Float64Array.from(x) });
    path += run.sound;
    angle = angles.at(-1)!;
    if (!run.through) return { legs: traced, length, sound: path / Math.max(angle - start, 1e-9), arrival: null };
    const [from, to] = reachOf(pipe);
    length += to - from;
  }
  return { legs: traced, length, sound: path / Math.max(angle - start, 1e-9), arrival: angle };
}

type Run = {
  readonly angles: number[];
  readonly x: number[];
  /** Of the speed of sound over crank degrees, m/s °. */
  readonly sound: number;
  readonly through: boolean;
};

function traceLeg(
  field: WaveField,
  rpm: number,
  pipe: PipePicture,
  direction: 1 | -1,
  start: number,
  until: number,
): Run {
  const reading: Reading = { pressure: 0, velocity: 0, temperature: 0 };
  const slope = slopeIn(field, pipe, direction, rpm);
  const soundAt = (angle: number, x: number) => burntSound(readField(field, pipe, angle, x, reading).temperature);
  const step = (angle: number, x: number, h: number): number => {
    const a = slope(angle, x);
    const b = slope(angle + h / 2, x + (h / 2) * a);
    const c = slope(angle + h / 2, x + (h / 2) * b);
    const d = slope(angle + h, x + h * c);
    return x + (h / 6) * (a + 2 * b + 2 * c + d);
  };
  const [from, to] = reachOf(pipe);
  const [begin, end] = direction > 0 ? [from, to] : [to, from];
  const longest = Math.min(STEP, ((SHARE * cellOf(pipe)) / FAST) * (6 * rpm));
  const angles = [start];
  const xs = [begin];
  let [angle, x, sum] = [start, begin, 0];
  let last = soundAt(angle, x);
  for (;;) {
    let h = longest;
    let next = step(angle, x, h);
    const arrives = direction * (next - end) >= 0;
    if (arrives) {
      h = landing((part) => direction * (step(angle, x, part) - end), longest);
      next = end;
    }
    angle += h;
    // Swept back beyond where it began, it waits there.
    x = direction * (next - begin) < 0 ? begin : next;
    const now = soundAt(angle, x);
    sum += (h * (last + now)) / 2;
    last = now;
    angles.push(angle);
    xs.push(x);
    if (arrives) return { angles, x: xs, sound: sum, through: true };
    if (angle > until) return { angles, x: xs, sound: sum, through: false };
  }
}

/** Where a function that rises through 0 does, between 0 and `most`: false position kept honest by halving. */
function landing(beyond: (h: number) => number, most: number): number {
  let [low, high] = [0, most];
  let [under, over] = [beyond(0), beyond(most)];
  for (let k = 0; k < 60 && high - low > 1e-12 * most; k++) {
    const guess = k % 3 === 2 ? (low + high) / 2 : low - (under * (high - low)) / (over - under);
    const found = beyond(guess);
    if (Math.abs(found) < 1e-12) return guess;
    if (found < 0) [low, under] = [guess, found];
    else [high, over] = [guess, found];
  }
  return (low + high) / 2;
}
