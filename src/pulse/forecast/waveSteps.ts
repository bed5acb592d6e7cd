/**
 * Steps of pressure that come to a cylinder's exhaust valve along its pipe, whatever sent them: found in what runs toward the valve, not
 * foretold. Pressure that runs up to gas at rest steepens on its way, so the end of a suction that comes back, or another cylinder's
 * pulse, can arrive as a step far from the peak that `wavePath.ts` follows. Falls spread out and make no steps. SI units, degrees.
 */

import { firesAfter } from './gasExchange';
import { twoWaves } from './superposition';
import { burntSound, cellOf, fieldOf, reachOf, readField } from './waveField';
import type { PathRun } from './wavePath';
import { routeOf, type Turn } from './waveRoute';

export type WaveStep = {
  /** When it comes to the valve: that cylinder's crank degrees. */
  readonly angle: number;
  /** By how much what runs toward the valve rises, Pa: at a closed valve pressure rises by twice as much. */
  readonly rise: number;
  /** The far end of the pipe that it comes through. */
  readonly turn: Turn;
};

/** A step is over within so many degrees, and higher than so much, Pa: our own choice, of what is plain to see in a trace. */
const SPAN = 6;
const LEAST = 5000;
/** Halfway back along the pipe so much of it must have been on its way: a shock that stands in the port is none that comes. */
const RUNNING = 0.4;
/** Longest a way is followed back, crank degrees. */
const LONGEST = 360;

/** @returns in the order they come, −360 to 360; of the cylinder's first port; empty without a picture of the waves */
export function waveSteps({ engine, path, answer }: PathRun, cylinder: number): WaveStep[] {
  if (!answer.waves) return [];
  const field = fieldOf(answer.waves);
  const turn = routeOf(path, cylinder).turns[0]!;
  const pipe = field.pipes.get(turn.pipe);
  if (!pipe) return [];
  const fires = firesAfter(engine, cylinder);
  const [near, far] = reachOf(pipe);
  const middle = (near + far) / 2;
  const back = (angle: number, x: number): number => {
    const { pressure, velocity, temperature } = readField(field, pipe, angle + fires, x);
    return twoWaves(pressure, velocity, temperature, engine.air.pressure).back;
  };
  const riseAt = (angle: number, x: number) => back(angle + SPAN / 2, x) - back(angle - SPAN / 2, x);
  /** When it was halfway: back in time along u − c. Null where gas as fast as sound stood against it. */
  const halfwayAt = (angle: number): number | null => {
    const step = cellOf(pipe) / 2;
    let at = angle;
    for (let x = near; x < middle; x += step) {
      const { velocity, temperature } = readField(field, pipe, at + fires, x);
      const speed = burntSound(temperature) - velocity;
      if (speed <= 0) return null;
      at -= (Math.min(step, middle - x) / speed) * 6 * answer.rpm;
      if (angle - at > LONGEST) return null;
    }
    return at;
  };
  const isRunning = (angle: number, rise: number): boolean => {
    const passed = halfwayAt(angle);
    if (passed === null) return false;
    const around = Array.from({ length: 2 * SPAN + 1 }, (_, k) => riseAt(passed + k - SPAN, middle));
    return Math.max(...around) >= RUNNING * rise;
  };
  const rises = Float64Array.from({ length: 720 }, (_, k) => riseAt(k - 360, near));
  return [...rises].flatMap((rise, k): WaveStep[] => {
    const angle = k - 360;
    for (let by = -SPAN; by <= SPAN; by++) {
      const other = rises[(k + by + 720) % 720]!;
      if (other > rise || (other === rise && by < 0)) return [];
    }
    return rise >= LEAST && isRunning(angle, rise) ? [{ angle, rise, turn }] : [];
  });
}
