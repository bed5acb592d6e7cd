/** An invented engine on invented pipes, and answers that nobody followed: for tests of what is shown, not of what is worked out. */

import type { RunKind, Subject } from '../../../src/app/forecast/runs';
import type { EngineSetup } from '../../../src/pulse/engine/types';
import type { SpeedAnswer } from '../../../src/pulse/forecast/types';
import type { GasPath } from '../../../src/pulse/path/types';

const VALVE = {
  count: 2,
  diameter: 0.03,
  lifts: [
    [-12, 0],
    [108, 0.009],
    [228, 0],
  ],
  flow: [
    [0, 0],
    [0.25, 0.6],
  ],
} as const;

export const ENGINE: EngineSetup = {
  cylinders: [1, 2],
  fires: [0, 360],
  firingOrder: [1, 2],
  bore: 0.08,
  stroke: 0.08,
  rod: 0.14,
  compressionRatio: 10,
  intakeValve: VALVE,
  exhaustValve: VALVE,
  burn: { middle: 8, duration: 60, efficiency: 0.96 },
  fuel: { heat: 44e6, airPerFuel: 14.6, lambda: 0.88 },
  walls: { temperature: 450, factor: 1 },
  friction: { constant: 4e4, perPeak: 0.005, perSpeed: 900, perSquare: 100 },
  flowFactor: 1,
  intake: {
    runnerLength: 0.3,
    runnerDiameter: 0.036,
    plenumVolume: 0.003,
    throttleArea: 0.002,
    wallTemperature: 320,
    roughness: 1e-5,
  },
  air: { pressure: 101325, temperature: 288.15 },
  speeds: [2000, 6000],
};

export const pathOf = (length: number): GasPath => ({
  title: 'sketch',
  pipes: [
    {
      id: 'a',
      role: 'primary',
      length,
      diameter: [
        [0, 0.036],
        [length, 0.036],
      ],
      roughness: 1e-5,
      wallTemperature: 700,
      inHead: 0.08,
      part: { runner: 'r1' },
    },
  ],
  ends: [{ kind: 'open', at: ['a', 'finish'] }],
  valves: [{ cylinder: 1, pipe: 'a', share: 1 }],
});

export const subject = (kind: RunKind, length = 0.8): Subject => ({
  kind,
  title: { header: 'This header', cast: 'Cast manifold' }[kind as string] ?? kind,
  engine: ENGINE,
  path: pathOf(length),
  assumed: [{ path: 'engine/rod', name: 'Rod', taken: '140 mm', why: '1.75 strokes, as is common' }],
  notes: [],
});

/** A hump of torque over the speed, so that curves have a shape. */
export const torqueAt = (rpm: number, top = 100): number => top - ((rpm - 4000) / 400) ** 2;

export function answerOf(rpm: number, over: Partial<SpeedAnswer> = {}): SpeedAnswer {
  const torque = over.torque ?? torqueAt(rpm);
  return {
    rpm,
    torque,
    power: (torque * rpm * Math.PI) / 30,
    bmep: 1e6,
    imep: 1.2e6,
    pmep: -3e4,
    fmep: 1.5e5,
    volumetricEfficiency: 0.92,
    residual: 0.04,
    lost: 0.01,
    reversion: 0.002,
    exhaustTemperature: 1100,
    peakPressure: 7e6,
    shares: { brake: 0.32, friction: 0.05, coolant: 0.22, port: 0.03, exhaust: 0.33, unburnt: 0.04, unaccounted: 0.01 },
    cylinders: [],
    cycles: 12,
    fineCycles: 4,
    settled: true,
    drift: 0.0003,
    cell: 0.01,
    cellUpdates: 1e6,
    doubts: [],
    traces: null,
    waves: null,
    ...over,
  };
}
