/** One runner that can be anything, for the shop's tests. */
import type { Design, Runner, Tooling, Tube } from '../../shared/design/types';

/** One port at the origin, one merge, one runner between, with what the test is about. */
export function oneRunner(
  runner: Partial<Runner>,
  more: { tube?: Partial<Tube>; tooling?: Partial<Tooling> } = {},
): Design {
  return {
    format: 'evenrun-design',
    version: 1,
    ports: [
      {
        id: 'p1',
        cylinder: 1,
        position: [0, 0, 0],
        direction: [0, 1, 0],
        up: [0, 0, 1],
        opening: { shape: 'round', diameter: 36 },
      },
    ],
    tubes: { primary: { outsideDiameter: 42.4, wall: 1.5, material: 'stainless-304', ...more.tube } },
    tooling: {
      primary: {
        centerlineRadius: 60,
        firstStraight: 0,
        betweenStraight: 0,
        lastStraight: 0,
        maxBendAngle: 180,
        maxBends: 9,
        ...more.tooling,
      },
    },
    merges: [
      {
        id: 'm1',
        inlets: 1,
        position: [0, 900, -300],
        axis: [0, 0, -1],
        up: [1, 0, 0],
        outletDiameter: 50,
        length: 100,
      },
    ],
    runners: [{ id: 'r1', tube: 'primary', from: { port: 'p1' }, to: { merge: 'm1', inlet: 1 }, ...runner }],
    groups: {},
  };
}

/** Along +Y, then a quarter turn down, ending at the merge above. */
export const ONE_BEND = {
  points: [
    [0, 0, 0],
    [0, 900, 0],
    [0, 900, -300],
  ],
} as const;
