/** Engines, gas paths and answers whose waves are known because they are made up: for what reads them. SI units, crank degrees. */
import type { EngineSetup } from '../../../src/pulse/engine/types';
import type { CylinderTrace, SpeedAnswer, WavePicture } from '../../../src/pulse/forecast/types';
import type { GasPath, PathEnd, PathPipe, PipeRole } from '../../../src/pulse/path/types';

const lobe = (from: number, to: number, highest: number): [number, number][] =>
  Array.from({ length: 41 }, (_, k) => [from + ((to - from) * k) / 40, highest * Math.sin((Math.PI * k) / 40) ** 2]);

export const ENGINE: EngineSetup = {
  cylinders: [1, 2, 3, 4],
  fires: [0, 540, 180, 360],
  firingOrder: [1, 3, 4, 2],
  bore: 0.086,
  stroke: 0.086,
  rod: 0.14,
  compressionRatio: 10.5,
  intakeValve: { count: 2, diameter: 0.034, lifts: lobe(-18, 236, 0.0095), flow: [[0.05, 0.6]] },
  exhaustValve: { count: 2, diameter: 0.029, lifts: lobe(-232, 14, 0.009), flow: [[0.05, 0.6]] },
  burn: { middle: 8, duration: 45, efficiency: 0.97 },
  fuel: { heat: 44e6, airPerFuel: 14.7, lambda: 0.9 },
  walls: { temperature: 450, factor: 1 },
  friction: { constant: 4e4, perPeak: 0.005, perSpeed: 9e3, perSquare: 90 },
  flowFactor: 1,
  intake: {
    runnerLength: 0.3,
    runnerDiameter: 0.042,
    plenumVolume: 0.003,
    throttleArea: 2e-3,
    wallTemperature: 320,
    roughness: 1e-5,
  },
  air: { pressure: 101325, temperature: 293.15 },
  speeds: [1500, 7500],
};

export const pathPipe = (id: string, role: PipeRole, length: number, diameter: number): PathPipe => ({
  id,
  role,
  length,
  diameter: [
    [0, diameter],
    [length, diameter],
  ],
  roughness: 5e-6,
  wallTemperature: 600,
  inHead: 0,
  part: role === 'primary' ? { runner: id } : null,
});

/** Four into one, of these lengths, m. */
export function fourIntoOne(primary = 0.8, collector = 0.5): GasPath {
  const ids = ['p1', 'p2', 'p3', 'p4'];
  return {
    title: 'sketch',
    pipes: [...ids.map((id) => pathPipe(id, 'primary', primary, 0.04)), pathPipe('c', 'collector', collector, 0.06)],
    ends: [
      {
        kind: 'junction',
        at: [...ids.map((id) => [id, 'finish'] as const), ['c', 'start']],
        model: 'equal-pressure',
      },
      { kind: 'open', at: ['c', 'finish'] },
    ],
    valves: ids.map((pipe, k) => ({ cylinder: k + 1, pipe, share: 1 })),
  };
}

/** Four into two into one: 1 with 4, 2 with 3. */
export function fourTwoOne(primary = 0.4, secondary = 0.5, tailpipe = 0.6): GasPath {
  const joint = (from: readonly string[], to: string): PathEnd => ({
    kind: 'junction',
    at: [...from.map((id) => [id, 'finish'] as const), [to, 'start']],
    model: 'equal-pressure',
  });
  return {
    title: 'sketch',
    pipes: [
      ...['p1', 'p2', 'p3', 'p4'].map((id) => pathPipe(id, 'primary', primary, 0.038)),
      ...['s1', 's2'].map((id) => pathPipe(id, 'secondary', secondary, 0.044)),
      pathPipe('t', 'tailpipe', tailpipe, 0.055),
    ],
    ends: [
      joint(['p1', 'p4'], 's1'),
      joint(['p2', 'p3'], 's2'),
      joint(['s1', 's2'], 't'),
      { kind: 'open', at: ['t', 'finish'] },
    ],
    valves: [1, 2, 3, 4].map((cylinder) => ({ cylinder, pipe: `p${cylinder}`, share: 1 })),
  };
}

export type State = { readonly pressure: number; readonly velocity: number; readonly temperature: number };
export type StateAt = (pipe: string, x: number, angle: number) => Partial<State>;

/** Rows from −360 to 360, each so many degrees; cells of 10 mm at most. */
export function pictureOf(path: GasPath, at: StateAt, degrees = 2, cell = 0.01): WavePicture {
  const rows = 720 / degrees + 1;
  const angles = Float32Array.from({ length: rows }, (_, k) => -360 + k * degrees);
  const pipes = path.pipes.map(({ id, length }) => {
    const cells = Math.max(2, Math.ceil(length / cell));
    const x = Float64Array.from({ length: cells }, (_, i) => ((i + 0.5) * length) / cells);
    const columns = {
      pressure: new Float32Array(rows * cells),
      velocity: new Float32Array(rows * cells),
      temperature: new Float32Array(rows * cells),
    };
    angles.forEach((angle, r) => {
      x.forEach((place, i) => {
        const state = at(id, place, angle);
        columns.pressure[r * cells + i] = state.pressure ?? 101325;
        columns.velocity[r * cells + i] = state.velocity ?? 0;
        columns.temperature[r * cells + i] = state.temperature ?? 900;
      });
    });
    return { pipe: id, x, ...columns };
  });
  return { angles, pipes };
}

export function traceOf(cylinder: number, values: Partial<Record<keyof CylinderTrace, (angle: number) => number>>) {
  const of = (what: keyof CylinderTrace) => Float32Array.from({ length: 721 }, (_, k) => values[what]?.(k - 360) ?? 0);
  return {
    cylinder,
    angle: Float32Array.from({ length: 721 }, (_, k) => k - 360),
    pressure: of('pressure'),
    temperature: of('temperature'),
    volume: of('volume'),
    exhaustPort: of('exhaustPort'),
    intakePort: of('intakePort'),
    exhaustFlow: of('exhaustFlow'),
    intakeFlow: of('intakeFlow'),
    exhaustLift: of('exhaustLift'),
    intakeLift: of('intakeLift'),
  } satisfies CylinderTrace;
}

export const answerOf = (
  rpm: number,
  waves: WavePicture | null,
  traces: CylinderTrace[] | null = null,
): SpeedAnswer => ({
  rpm,
  torque: 180,
  power: (180 * rpm * Math.PI) / 30,
  bmep: 1.1e6,
  imep: 1.3e6,
  pmep: -4e4,
  fmep: 1.6e5,
  volumetricEfficiency: 0.95,
  residual: 0.05,
  lost: 0.01,
  reversion: 0.01,
  exhaustTemperature: 1100,
  peakPressure: 7e6,
  shares: { brake: 0.32, friction: 0.05, coolant: 0.17, port: 0.03, exhaust: 0.3, unburnt: 0.1, unaccounted: 0.03 },
  cylinders: [],
  cycles: 12,
  fineCycles: 4,
  settled: true,
  drift: 0.0005,
  cell: 0.01,
  cellUpdates: 0,
  doubts: [],
  traces,
  waves,
});
