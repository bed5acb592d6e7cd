/** Engines, gas paths and answers whose waves are known because they are made up: for what reads them. SI units, crank degrees. */
import type { EngineSetup } from '../../../src/pulse/engine/types';
import type { CylinderTrace, SpeedAnswer, WavePicture } from '../../../src/pulse/forecast/types';
import type { GasPath, PathEnd, PathPipe, PipeRole } from '../../../src/pulse/path/types';
import { four, lifts } from '../engines';
import { answerAt } from './fakes';

/** Whose exhaust valves open a little later, by a lobe that is known. */
export const ENGINE: EngineSetup = {
  ...four,
  exhaustValve: { ...four.exhaustValve, lifts: lifts(-232, 14, 0.009) },
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

export const answerOf = (rpm: number, waves: WavePicture | null, traces: CylinderTrace[] | null = null): SpeedAnswer =>
  answerAt(rpm, 180, { waves, traces });
