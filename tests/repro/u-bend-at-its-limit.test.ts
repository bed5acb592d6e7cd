/**
 * A U-bend between opposed ends, where the tooling makes just 180°, into a collector that may move but not tilt. Balance
 * used to aim a hair inside the angle's limit, which such ends cannot give, and stayed where it was.
 */
import { expect, test } from 'vitest';
import { balance } from '../../geometry';
import type { Design } from '../../shared/design/types';

const design: Design = {
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
  tubes: { primary: { outsideDiameter: 42.4, wall: 1.5 } },
  tooling: {
    primary: {
      centerlineRadius: 63.6,
      firstStraight: 20,
      betweenStraight: 25,
      lastStraight: 20,
      maxBendAngle: 180,
      maxBends: 1,
    },
  },
  merges: [
    {
      id: 'm1',
      inlets: 1,
      position: [0, 0, -127.2],
      axis: [0, -1, 0],
      up: [0, 0, 1],
      outletDiameter: 42.4,
      length: 60,
      placement: {
        within: [
          [-50, -100, -300],
          [50, 100, 0],
        ],
        tilt: 0,
      },
    },
  ],
  runners: [
    {
      id: 'r1',
      tube: 'primary',
      group: 'one',
      from: { port: 'p1' },
      to: { merge: 'm1', inlet: 1 },
      points: [
        [0, 0, 0],
        [0, 200, 0],
        [0, 200, -127.2],
        [0, 0, -127.2],
      ],
    },
  ],
  groups: { one: { length: 500, tolerance: 1 } },
};

test('comes to its length as one bend of 180°', () => {
  const { report } = balance(design);
  expect(report.problems).toEqual([]);
  expect(report.groups[0]!.mean).toBeCloseTo(500, 4);
  expect(report.runners[0]!.angles).toHaveLength(1);
});
