/** A small header's flange and a drawing of it, made here: ports of three kinds of opening, holes that tell up from down. mm. */
import { circleLoop, type Loop } from '../../../geometry';
import { openingAt } from '../../../geometry/flange/fittedOpening';
import type { Design, Port } from '../../../shared/design/types';

const port = (id: string, cylinder: number, x: number, z: number, opening: Port['opening']): Port => ({
  id,
  cylinder,
  position: [500 + x, 80, 30 + z],
  direction: [0, 1, 0],
  up: [0, 0, 1],
  opening,
});

export const PORTS: readonly Port[] = [
  port('p1', 1, 0, 0, { shape: 'round', diameter: 36 }),
  port('p2', 2, 90, 3, { shape: 'rounded-rectangle', width: 40, height: 34, corner: 8 }),
  port('p3', 3, 185, 0, { shape: 'oval', width: 44, height: 32 }),
];

/** x across is +x here turned over: up × direction = (0,0,1) × (0,1,0) = (−1, 0, 0). */
export const ACROSS = -1;

export const DESIGN: Design = {
  format: 'evenrun-design',
  version: 1,
  ports: PORTS,
  flanges: [
    {
      id: 'f1',
      ports: ['p1', 'p2', 'p3'],
      thickness: 10,
      fasteners: [
        { position: [460, 80, 52], kind: 'stud', thread: 'M8', length: 35, hole: 9 },
        { position: [712, 80, 5], kind: 'bolt', thread: 'M10', hole: 11 },
      ],
    },
  ],
  tubes: {},
  tooling: {},
  merges: [],
  runners: [],
  groups: {},
};

const Q = Math.tan(Math.PI / 8);
/** In the flange's frame: about p1, x across (the design's −x), y up. */
export const OUTLINE: Loop = [
  [-230, -35, 0],
  [50, -35, Q],
  [60, -25, 0],
  [60, 25, Q],
  [50, 35, 0],
  [-230, 35, Q],
  [-240, 25, 0],
  [-240, -25, Q],
];
export const HOLES = [
  [40, 21.5, 9],
  [-215, -24.5, 11],
  [-45, 28, 9],
] as const;
export const OPENINGS: readonly Loop[] = [
  openingAt(PORTS[0]!.opening, [0, 0]),
  openingAt(PORTS[1]!.opening, [-90, 3]),
  openingAt(PORTS[2]!.opening, [-185, 0]),
];
export const LOOPS: readonly Loop[] = [...HOLES.map(([x, y, d]) => circleLoop([x, y], d / 2)), OUTLINE, ...OPENINGS];
