/** A header with everything around it, and what was found about it, made up by hand: for what is printed, not for what is true. */
import { readFileSync } from 'node:fs';
import {
  type AccessEntry,
  type GapEntry,
  type Reach,
  type RoomReport,
  resolveHeader,
  type ToolTry,
} from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import type { Fitting } from '../../../src/shop/fitting/fittingSheets';

const example = parseDesign(
  readFileSync(new URL('../../../public/examples/v8-left-bank-4-1.evenrun.json', import.meta.url), 'utf8'),
);

export const DESIGN: Design = {
  ...example,
  display: 'mm',
  motion: {
    rock: { position: [0, -300, -100], axis: [1, 0, 0], angles: [-2, 3.5] },
    heat: { temperature: 650 },
  },
  wrap: { thickness: 1.6, layers: 2, roll: 20 },
  service: [
    { id: 'plug 1', kind: 'spark-plug', position: [0, -60, 90], direction: [0, 0.5, 1] },
    { id: 'starter bolt', kind: 'bolt', position: [200, 100, -300], direction: [0, 1, 0] },
  ],
  sensors: [
    { id: 'lambda', kind: 'oxygen', on: { merge: 'left collector' }, at: 90, clock: 30 },
    { id: 'egt 1', kind: 'temperature', on: { runner: 'r1' }, at: 60, clock: -45 },
  ],
};

const tool = (name: string, wrapped: boolean, by: readonly string[] = []): ToolTry => ({
  name,
  kind: 'socket',
  bare: true,
  wrapped,
  by,
  solids: [],
});

function fastener(number: number, reach: Reach, by: readonly string[] = []): AccessEntry {
  const best =
    reach === 'blocked'
      ? { ...tool('13 mm socket, 75 mm extension', false, by), bare: false }
      : tool(
          reach === 'one-tool' ? '13 mm ring spanner' : '13 mm socket, 75 mm extension',
          reach !== 'before-wrapping',
          by,
        );
  const id = `left flange stud ${number}`;
  const what = {
    reachable: 'is reachable.',
    'one-tool': 'is reachable with a 13 mm ring spanner only: turn the rose of r3 out for more room.',
    'before-wrapping': 'is reachable before wrapping only: end the wrap of r1 at 180 mm, or fit it first.',
    blocked: 'cannot be reached: the 13 mm socket meets r7; move bend 1 of r7 out.',
  }[reach];
  return {
    id,
    kind: 'fastener',
    where: `flanges/left flange/fasteners/${number - 1}`,
    at: [10 * number, 0, 0],
    reach,
    best,
    tries: [best],
    by,
    message: `${id} ${what}`,
  };
}

const gap = (between: readonly [string, string], value: number, more: Partial<GapEntry> = {}): GapEntry => ({
  kind: 'surroundings',
  gap: value,
  required: 12,
  margin: value - 12,
  between,
  at: [1, 2, 3],
  from: [1, 2, 3],
  to: [1, 2, 3 - value],
  station: 214.3,
  pose: { rock: 3.5, heat: 1 },
  ...more,
});

export const GAPS: readonly GapEntry[] = [
  gap(['r1', 'steering shaft'], 5.25),
  gap(['r3', 'r7'], 0.8, { kind: 'tube-to-tube', required: 4, margin: -3.2, station: 90, pose: { rock: 0, heat: 0 } }),
  gap(['left collector', 'frame rail'], 61.7, { kind: 'merge-body', required: 0, margin: 61.7, station: null }),
  ...Array.from({ length: 9 }, (_, i) => gap(['r5', `hose ${i + 1}`], 100 + i, { pose: { rock: -2, heat: 0.5 } })),
];

export const ROOM: Required<RoomReport> = {
  gaps: { gaps: GAPS, profiles: [] },
  access: {
    entries: [
      ...[1, 2, 4, 6, 7].map((n) => fastener(n, 'reachable')),
      fastener(3, 'before-wrapping', ['r1']),
      fastener(5, 'one-tool', ['r3']),
      fastener(8, 'blocked', ['r7']),
      {
        ...fastener(1, 'reachable'),
        id: 'plug 1',
        kind: 'service',
        where: 'service/plug 1',
        best: tool('16 mm plug socket', true),
        message: 'plug 1 is reachable.',
      },
      {
        ...fastener(3, 'before-wrapping', ['r5']),
        id: 'starter bolt',
        kind: 'service',
        where: 'service/starter bolt',
        message: 'starter bolt is reachable before wrapping only: end the wrap of r5 at 300 mm.',
      },
    ],
    wrap: [
      {
        runner: 'r1',
        wrapped: [[0, 700]],
        possible: [
          [40, 180],
          [260.5, 640],
        ],
        bare: [
          { from: 0, to: 40, why: 'sensor', of: 'egt 1' },
          { from: 180, to: 260.5, why: 'fastener', of: 'left flange stud 3' },
          { from: 640, to: 700, why: 'bundle', of: 'r3' },
        ],
      },
      {
        runner: 'r3',
        wrapped: [[100, 500]],
        possible: [[100, 460]],
        bare: [
          { from: 460, to: 500, why: 'narrow', of: 'frame rail' },
          { from: 0, to: 100, why: 'as-drawn', of: '' },
        ],
      },
    ],
  },
  removal: {
    pieces: [
      {
        runners: ['r1', 'r3', 'r5', 'r7'],
        merges: ['left collector'],
        flanges: ['left flange'],
        slides: true,
        leaves: true,
        path: [
          { turn: [0, 0, 0], move: [0, 0, 0] },
          { turn: [0, 0, 0], move: [0, 20, 0] },
          { turn: [0, 0, 0], move: [0, 40, 0] },
          { turn: [0, 0, 0], move: [0, 40, -150] },
          { turn: [0.2, 0, 0], move: [0, 40, -150] },
          { turn: [0.2, 0, 0], move: [0, 90, -600] },
        ],
        room: { gap: 3.4, by: 'frame rail' },
        stopped: null,
        message: 'It slides off its studs and leaves the bay downward, 3.4 mm from the frame rail at the closest.',
      },
    ],
    joints: [
      {
        where: 'merges/left collector/outletJoint',
        joint: 'slip',
        helps: true,
        message: 'Left as a slip joint, the left collector comes off by itself.',
      },
    ],
  },
  sensors: [
    {
      id: 'lambda',
      at: [0, 0, 0],
      axis: [0, 0, 1],
      lean: 31.25,
      toCollector: 90,
      room: { gap: 18.2, by: 'frame rail' },
      spanner: { fits: true, by: [] },
      solids: [],
      remarks: [],
    },
    {
      id: 'egt 1',
      at: [0, 0, 0],
      axis: [0, 0, 1],
      lean: -8,
      toCollector: -640,
      room: null,
      spanner: { fits: false, by: ['r3'] },
      solids: [],
      remarks: [
        {
          fails: false,
          message: 'egt 1 hangs 8.0° below level: turn its clock to 20° or more, so that water runs off it.',
        },
      ],
    },
  ],
};

/** Cold and at rest every gap is two millimetres wider. */
export const FITTING: Fitting = {
  header: resolveHeader(DESIGN),
  room: ROOM,
  still: {
    profiles: [],
    gaps: GAPS.map(({ pose: _, ...g }) => ({
      ...g,
      gap: g.gap + 2,
      margin: g.margin + 2,
      station: g.station && g.station - 5,
    })),
  },
};
