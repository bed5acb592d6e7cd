/** Small rigs and runs for the tests of the page: no solver, so that what is expected is known exactly. SI units. */
import type { PipePicture, RigRun, Running, RunOptions } from '../../../src/pulse/report';
import type { Rig } from '../../../src/pulse/rig/types';
import { pipe, rig } from '../../pulse/rigs';

export const RIG: Rig = rig({
  pipes: [pipe('a', { length: 1, cells: 10 }), pipe('b', { length: 0.5, cells: 5 })],
  ends: [
    { kind: 'closed', at: ['a', 'start'] },
    {
      kind: 'junction',
      at: [
        ['a', 'finish'],
        ['b', 'start'],
      ],
      model: 'equal-pressure',
    },
    { kind: 'open', at: ['b', 'finish'] },
  ],
  duration: 0.01,
  probes: [{ pipe: 'a', x: 0.5 }],
  sample: 1e-3,
});

/** Linear in x and t, so that every value between is known: p = 1e5 + 1e4 x + 1e6 t, u = x, T = 300 + t. */
export const pressureAt = (x: number, time: number): number => 1e5 + 1e4 * x + 1e6 * time;

/** What a run of `rows` even rows over the duration has once it came to `time`. */
export function runUntil(time: number, of: Rig = RIG, rows = 11): RigRun {
  const times = Float64Array.from({ length: rows }, (_, k) => (k / (rows - 1)) * of.duration).filter(
    (at) => at <= time * (1 + 1e-12),
  );
  const pipes = of.pipes.map(({ id, length, cells }): PipePicture => {
    const x = Float64Array.from({ length: cells }, (_, j) => ((j + 0.5) / cells) * length);
    const filled = (value: (x: number, t: number) => number) =>
      Float32Array.from({ length: times.length * cells }, (_, k) =>
        value(x[k % cells]!, times[Math.floor(k / cells)]!),
      );
    const [pressure, velocity, temperature] = [filled(pressureAt), filled((at) => at), filled((_, t) => 300 + t)];
    return { pipe: id, x, pressure, velocity, temperature };
  });
  const column = (value: (t: number) => number) => Float64Array.from(times, value);
  const account = { initial: 1, final: 1, left: 0, fromWalls: 0, drift: 3.1e-16 };
  return {
    components: ['gas'],
    times,
    probes: of.probes.map(({ pipe: id, x }) => ({
      pipe: id,
      x,
      pressure: column((t) => pressureAt(x, t)),
      velocity: column(() => x),
      temperature: column((t) => 300 + t),
      density: column(() => 1.2),
      fractions: [],
    })),
    profile: [],
    picture: { times, pipes },
    mass: account,
    energy: { ...account, drift: -2e-15 },
    time,
    steps: Math.round((time / of.duration) * 100),
    cellUpdates: 15 * Math.round((time / of.duration) * 100),
    retries: 0,
  };
}

/** A run of a hundred even steps. @param stopsAt throws there instead of going on */
export function fakeRunning(rig: Rig, _options: RunOptions = {}, stopsAt?: { step: number; error: Error }): Running {
  let steps = 0;
  return {
    duration: rig.duration,
    get time() {
      return (steps / 100) * rig.duration;
    },
    get steps() {
      return steps;
    },
    advance(most) {
      for (let k = 0; k < most && steps < 100; k++) {
        if (stopsAt && steps >= stopsAt.step) throw stopsAt.error;
        steps++;
      }
      return steps >= 100;
    },
    result: () => runUntil((steps / 100) * rig.duration, rig),
  };
}
