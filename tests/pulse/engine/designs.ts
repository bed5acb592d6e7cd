/** Designs that are nothing but an engine, for the engine's reader. */
import { validateDesign } from '../../../shared/design/parse';
import type { Design, Engine } from '../../../shared/design/types';

/** @throws DesignError where a document of it would not load */
export const designOf = (engine: Engine, cylindersOfPorts: readonly number[] = []): Design =>
  validateDesign({
    format: 'evenrun-design',
    version: 1,
    engine,
    ports: cylindersOfPorts.map((cylinder, i) => ({
      id: `p${i + 1}`,
      cylinder,
      position: [90 * i, 0, 0],
      direction: [0, 1, 0],
      up: [0, 0, 1],
      opening: { shape: 'round', diameter: 36 },
    })),
    tubes: {},
    tooling: {},
    merges: [],
    runners: [],
    groups: {},
  });

/** The least that a builder must give: a two-litre four. */
export const FOUR = { cylinders: 4, bore: 86, stroke: 86 } as const;

/** Everything given. */
export const WHOLE: Engine = {
  ...FOUR,
  banks: [[1, 2, 3, 4]],
  firingOrder: [1, 3, 4, 2],
  firingAngles: [0, 180, 360, 540],
  rod: 143,
  compressionRatio: 10.8,
  rpm: [2000, 7600],
  intakeValve: {
    count: 2,
    diameter: 33,
    lift: 9.8,
    opens: -18,
    closes: 236,
    lifts: [
      [-90, 0],
      [-20, 0],
      [109, 9.8],
      [238, 0],
      [300, 0],
    ],
    flow: [
      [0.05, 0.66],
      [0.25, 0.5],
    ],
  },
  exhaustValve: {
    count: 2,
    diameter: 28,
    lift: 9.2,
    opens: -240,
    closes: 16,
    lifts: [
      [-242, 0],
      [-112, 9.2],
      [18, 0],
    ],
    flow: [[0.1, 0.7]],
  },
  intake: { runnerLength: 310, runnerDiameter: 43, plenumVolume: 3200, throttleDiameter: 62 },
  combustion: { lambda: 0.9, burnMiddle: 9, burnDuration: 52, efficiency: 0.93 },
  air: { pressure: 990, temperature: 25 },
  fitted: { flow: 0.95, friction: 1.2, heat: 1.5 },
};
