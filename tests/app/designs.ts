/** Small designs to test the app on. */
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';

/** Nothing but a title. */
export const titled = (title: string): Design => ({
  format: 'evenrun-design',
  version: 1,
  title,
  ports: [],
  tubes: {},
  tooling: {},
  merges: [],
  runners: [],
  groups: {},
});

/** One port, one collector, one runner along the given points. */
export function designWith(points: readonly Vec3[] | undefined, lengthInHead = 85): Design {
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
        lengthInHead,
      },
    ],
    tubes: { primary: { outsideDiameter: 40, wall: 1.5 } },
    tooling: {
      primary: {
        centerlineRadius: 60,
        firstStraight: 25,
        betweenStraight: 150,
        lastStraight: 30,
        maxBendAngle: 180,
        maxBends: 4,
      },
    },
    merges: [
      {
        id: 'm1',
        inlets: 1,
        position: [100, 320, -300],
        axis: [-1, 0, 0],
        up: [0, 0, 1],
        outletDiameter: 50,
        length: 100,
      },
    ],
    runners: [
      {
        id: 'r1',
        tube: 'primary',
        group: 'primaries',
        from: { port: 'p1' },
        to: { merge: 'm1', inlet: 1 },
        ...(points && { points }),
      },
    ],
    groups: { primaries: { length: 800, tolerance: 1 } },
  };
}
