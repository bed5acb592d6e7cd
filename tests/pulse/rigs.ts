/** Small rigs for tests. SI units, or none where the gas constant is 1. */
import type { RigRun, RunOptions } from '../../src/pulse/report';
import type { InitialState, Rig, RigEnd, RigPipe } from '../../src/pulse/rig/types';
import { startRig } from '../../src/pulse/startRig';

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

export function ran(of: Rig, options?: RunOptions): RigRun {
  const running = startRig(of, options);
  while (!running.advance(10_000));
  return running.result();
}
