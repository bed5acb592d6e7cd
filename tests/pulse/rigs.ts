/** Small rigs for tests. SI units, or none where the gas constant is 1. */
import type { PipeProfile, RigRun, RunOptions } from '../../src/pulse/report';
import type { InitialState, Rig, RigEnd, RigPipe } from '../../src/pulse/rig/types';
import { startRig } from '../../src/pulse/startRig';
import type { Random } from '../random';
import type { State } from './riemann';

export const AIR = { gamma: 1.4, gasConstant: 287.05 };

export const pipe = (
  id: string,
  given: Partial<RigPipe> & { readonly state?: Partial<InitialState> } = {},
): RigPipe => {
  const { state, ...rest } = given;
  const length = rest.length ?? 1;
  return {
    id,
    length,
    cells: 100,
    diameter: [
      [0, 0.04],
      [length, 0.04],
    ],
    friction: 0,
    wallTemperature: null,
    initial: [{ from: 0, to: length, pressure: 101325, temperature: 293.15, velocity: 0, ...state }],
    ...rest,
  };
};

export const rig = (given: Partial<Rig> & Pick<Rig, 'pipes' | 'ends' | 'duration'>): Rig => ({
  format: 'evenrun-rig',
  version: 1,
  gas: AIR,
  ambient: { pressure: 101325, temperature: 293.15 },
  courant: 0.8,
  probes: [],
  sample: 0,
  profile: false,
  ...given,
});

export const bothEnds = (id: string, kind: 'closed' | 'open' | 'through'): RigEnd[] => [
  { kind, at: [id, 'start'] },
  { kind, at: [id, 'finish'] },
];

/** γ of the problems without dimensions, p = ρT. */
export const GAMMA = 1.4;

export const stretch = (from: number, to: number, [density, velocity, pressure]: State): InitialState => ({
  from,
  to,
  pressure,
  temperature: pressure / density,
  velocity,
});

/** A straight tube of length 1 without dimensions, free at both ends, as it is after a time. */
export function tubeAfter(
  duration: number,
  initial: readonly InitialState[],
  { cells, courant = 0.8 }: { readonly cells: number; readonly courant?: number },
): PipeProfile {
  const { profile } = ran(
    rig({
      gas: { gamma: GAMMA, gasConstant: 1 },
      ambient: { pressure: 1, temperature: 1 },
      pipes: [pipe('tube', { cells, initial })],
      ends: bothEnds('tube', 'through'),
      duration,
      courant,
    }),
  );
  return profile[0]!;
}

/** How far apart wild states may lie: powers of ten of pressure and temperature, and the fastest. */
export type Wildness = {
  readonly pressure: readonly [number, number];
  readonly temperature: readonly [number, number];
  readonly fastest: number;
};

/** Ten stretches of wild states in a duct of cones, 1 m long. */
export function wildPipe(draw: Random, { pressure, temperature, fastest }: Wildness): RigPipe {
  const initial = Array.from({ length: 10 }, (_, k) => ({
    from: k / 10,
    to: (k + 1) / 10,
    pressure: 10 ** draw.between(...pressure),
    temperature: 10 ** draw.between(...temperature),
    velocity: draw.between(-fastest, fastest),
  }));
  return pipe('p', {
    initial,
    diameter: [
      [0, 0.03],
      [0.3, 0.08],
      [0.6, 0.02],
      [1, 0.05],
    ],
  });
}

export function ran(of: Rig, options?: RunOptions): RigRun {
  const running = startRig(of, options);
  while (!running.advance(10_000));
  return running.result();
}
