/** Engines and gas paths of our own invention, small enough to be followed in tests. SI units. */
import type { EngineSetup, ValveSetup } from '../../src/pulse/engine/types';
import type { GasPath, PathPipe } from '../../src/pulse/path/types';

/** A smooth lift curve between two angles. */
export function lifts(opens: number, closes: number, lift: number): ValveSetup['lifts'] {
  return Array.from({ length: 61 }, (_, i) => {
    const s = (2 * i) / 60 - 1;
    return [opens + ((closes - opens) * i) / 60, lift * (1 - Math.abs(s) ** 2.5) ** 2] as const;
  });
}

export const four: EngineSetup = {
  cylinders: [1, 2, 3, 4],
  fires: [0, 540, 180, 360],
  firingOrder: [1, 3, 4, 2],
  bore: 0.083,
  stroke: 0.0855,
  rod: 0.142,
  compressionRatio: 11,
  intakeValve: {
    count: 2,
    diameter: 0.0325,
    lifts: lifts(-18, 236, 0.0098),
    flow: [
      [0, 0.68],
      [0.1, 0.65],
      [0.25, 0.47],
      [0.35, 0.34],
    ],
  },
  exhaustValve: {
    count: 2,
    diameter: 0.028,
    lifts: lifts(-240, 14, 0.0092),
    flow: [
      [0, 0.72],
      [0.1, 0.7],
      [0.25, 0.62],
      [0.35, 0.45],
    ],
  },
  burn: { middle: 8, duration: 60, efficiency: 0.95 },
  fuel: { heat: 44e6, airPerFuel: 14.6, lambda: 0.88 },
  walls: { temperature: 450, factor: 1.4 },
  friction: { constant: 0.4e5, perPeak: 0.005, perSpeed: 0.09e5, perSquare: 0.0009e5 },
  flowFactor: 1,
  intake: {
    runnerLength: 0.35,
    runnerDiameter: 0.042,
    plenumVolume: 0.0028,
    throttleArea: 0.0022,
    wallTemperature: 320,
    roughness: 3e-5,
  },
  air: { pressure: 101325, temperature: 288.15 },
  speeds: [2000, 7600],
};

/** One cylinder of it, drawing through a short pipe of its own. */
export const single: EngineSetup = {
  ...four,
  cylinders: [1],
  fires: [0],
  firingOrder: [1],
  intake: { ...four.intake, runnerLength: 0.12, plenumVolume: null },
};

/** A straight pipe from the valve to the open air. */
export const stack = (length: number, bore: number): GasPath => ({
  title: 'stack',
  pipes: [
    pipe(
      'stack',
      'primary',
      [
        [0, bore],
        [length, bore],
      ],
      800,
    ),
  ],
  ends: [{ kind: 'open', at: ['stack', 'finish'], endCorrection: 'unflanged' }],
  valves: [{ cylinder: 1, pipe: 'stack', share: 1 }],
});

/** Four primaries into one collector and a tailpipe. */
export function fourIntoOne(length: number, bore: number, tail = 2, outlet = 0.057): GasPath {
  const numbers = [1, 2, 3, 4];
  const primaries = numbers.map((n) =>
    pipe(
      `r${n}`,
      'primary',
      [
        [0, 0.034],
        [0.09, 0.037],
        [0.1, bore],
        [length, bore],
      ],
      900,
      0.09,
    ),
  );
  return {
    title: 'four into one',
    pipes: [
      ...primaries,
      pipe(
        'collector',
        'collector',
        [
          [0, 2 * bore],
          [0.15, outlet],
        ],
        850,
      ),
      pipe(
        'tail',
        'tailpipe',
        [
          [0, outlet],
          [tail, outlet],
        ],
        650,
      ),
    ],
    ends: [
      {
        kind: 'junction',
        model: 'pressure-loss',
        directions: [...numbers.map(() => [0, 0, -1] as const), [0, 0, 1]],
        at: [...numbers.map((n) => [`r${n}`, 'finish'] as const), ['collector', 'start']],
      },
      {
        kind: 'junction',
        model: 'equal-pressure',
        at: [
          ['collector', 'finish'],
          ['tail', 'start'],
        ],
      },
      { kind: 'open', at: ['tail', 'finish'], endCorrection: 'unflanged' },
    ],
    valves: numbers.map((n) => ({ cylinder: n, pipe: `r${n}`, share: 1 })),
  };
}

function pipe(
  id: string,
  role: PathPipe['role'],
  diameter: PathPipe['diameter'],
  wallTemperature: number,
  inHead = 0,
): PathPipe {
  return { id, role, length: diameter.at(-1)![0], diameter, roughness: 2e-5, wallTemperature, inHead, part: null };
}
