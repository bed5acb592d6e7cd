/**
 * A plausible answer about making a header, for tests of what is built on such answers: one piece a bend, parted in the middle
 * of straights, from U bends of 100 mm legs. Its numbers follow from the header; how good they are is tested elsewhere.
 */

import type { Header } from '../../../geometry';
import { pointAt, sampleCenterline } from '../../../geometry';
import type {
  BentTube,
  CheckHeights,
  Making,
  Piece,
  Way,
  WayTotals,
  WeldedTube,
} from '../../../src/shop/making/report';
import { type Part, partsOf } from '../../../src/shop/part';

const ROUNDED = { tape: 0.5, dial: 0.5, position: 0.4, angle: 0.2, length: 0.1 };

export function sampleMaking(header: Header): Making {
  const { parts } = partsOf(header);
  const welded = parts.map(weldedOf);
  const bent = parts.map(bentOf);
  const tubes = [...new Set(welded.map(({ tube }) => tube))];
  const chosenOf = (tube: string): Way => header.design.tooling[tube]?.making ?? 'welded';
  const bends = welded.filter(({ tube }) => chosenOf(tube) === 'welded').flatMap(({ pieces }) => pieces);
  const used = bends
    .filter(({ kind }) => kind === 'bend')
    .map((piece, i) => ({
      stock: 'U 64',
      kind: 'bend' as const,
      of: {
        id: 'U 64',
        outsideDiameter: 42.4,
        wall: 1.5,
        radius: piece.radius,
        angle: 180,
        legs: [100, 100] as const,
      },
      number: i + 1,
      source: i === 0 ? ('shelf' as const) : ('bought' as const),
      cuts: [
        { piece: piece.id, from: 0, to: piece.angle, legs: [piece.sawnIn, 0] as const },
        { piece: `${piece.id}x`, from: piece.angle + 1.4, to: Math.min(180, piece.angle + 40) },
      ],
      left: Math.max(0, 180 - piece.angle - 41.4),
    }));
  return {
    groups: tubes.map((tube) => ({
      tube,
      legs: [],
      runners: welded.filter((w) => w.tube === tube).map(({ runner }) => runner),
      chosen: chosenOf(tube),
      welded: totals('welded', welded.filter((w) => w.tube === tube).flatMap(({ pieces }) => pieces).length, true),
      bent: totals('bent', bent.filter((w) => w.tube === tube).length, false),
    })),
    welded,
    bent,
    heights: parts.map(heightsOf),
    plan: {
      parts: [
        {
          what: 'bends of 42.4 × 1.5, radius 63.6',
          kind: 'bend',
          used,
          least: 'bends bought',
          value: used.length - 1,
          bound: used.length - 1,
          proved: true,
        },
        {
          what: 'bars of 42.4 × 1.5',
          kind: 'bar',
          used: [
            {
              stock: 'bar 6 m',
              kind: 'bar',
              of: { id: 'bar 6 m', outsideDiameter: 42.4, wall: 1.5, length: 6000 },
              number: 1,
              source: 'bought',
              cuts: [
                { piece: 'm1 stub 1', from: 5, to: 200 },
                { piece: 'm1 stub 2', from: 201.5, to: 396.5 },
              ],
              left: 5596,
            },
          ],
          least: 'length bought',
          value: 6000,
          bound: 5800,
          proved: false,
        },
      ],
      buy: [
        {
          stock: 'U 64',
          what: 'U bend',
          count: used.length - 1,
          each: 14.5,
          cost: 14.5 * (used.length - 1),
          assumed: false,
        },
        { stock: 'bar 6 m', what: 'bar', count: 1, each: null, cost: null, assumed: true },
      ],
      cost: null,
      remarks: [],
    },
    materials: [
      { name: 'tube r1', what: 'tube, Mild steel', quantity: 1, ofStock: true, mass: 1.1, each: null, cost: null },
      { name: 'gasket f1', what: 'of flange f1', quantity: 1, ofStock: false, mass: null, each: 12, cost: 12 },
    ],
    mass: { total: 6.1, centre: [1, 2, 3], unknown: [] },
    cost: { known: 100, total: null, missing: ['price of bar 6 m'], currency: 'EUR' },
    remarks: [],
  };
}

const totals = (way: Way, pieces: number, possible: boolean): WayTotals => ({
  way,
  possible,
  mass: 4.2,
  stockMass: 6.3,
  pieces,
  cuts: pieces * 2,
  welds: Math.max(0, pieces - 1),
  bends: pieces,
  minutes: 100 + pieces,
  cost: { stock: null, welds: 12, work: 80 },
  missing: ['price of bar 6 m'],
  remarks: possible
    ? []
    : [{ where: 'tooling/primary', message: 'The clamp of 60 mm is longer than every straight of r1.', stops: true }],
});

function weldedOf({ id, resolved, line, table, startTrim }: Part): WeldedTube {
  const half = (i: number) => table.rows[i]!.length / 2;
  const last = table.rows.length - 1;
  const pieces: Piece[] = [];
  let at = 0;
  const joints: WeldedTube['joints'][number][] = [];
  for (let i = 0; i < last; i++) {
    const { length: straight, angle, radius } = table.rows[i]!;
    const before = i === 0 ? straight + startTrim : half(i);
    const behind = i === last - 1 ? table.rows[i + 1]!.length : half(i + 1);
    const kind = 'bend' as const;
    pieces.push({
      id: `${id}-${i + 1}`,
      kind,
      in: before,
      angle,
      radius,
      out: behind,
      sawnIn: before,
      sawnOut: behind,
      kerfAngle: 1.4,
    });
    at += (i === 0 ? straight : half(i)) + (angle * Math.PI * radius) / 180 + behind;
    if (i === last - 1) break;
    const { position, tangent } = pointAt(line, at);
    const turn = table.rows[i + 1]!.rotation;
    joints.push({
      after: i,
      station: at,
      position,
      direction: tangent,
      turn,
      around: (turn * Math.PI * resolved.tube.outsideDiameter) / 360,
      total: 10,
      totalAround: 3.7,
      before: behind,
      behind,
      torchFree: i === 0 ? 240 : 360,
      torchFreeInPlace: i === 0 ? 100 : 360,
      inTheWay: i === 0 ? ['this tube', 'r2'] : [],
    });
  }
  const start = { turn: table.clocking, around: (table.clocking * Math.PI * resolved.tube.outsideDiameter) / 360 };
  return { runner: id, tube: resolved.runner.tube, pieces, joints, start, rounded: ROUNDED, remarks: [] };
}

function bentOf({ id, resolved, line, table }: Part): BentTube {
  let mark = 0;
  const rows = table.rows.map((row) => {
    mark += row.length;
    const from = mark;
    mark += (row.angle * Math.PI * row.radius) / 180;
    return {
      length: row.length,
      rotation: row.rotation,
      angle: row.angle,
      radius: row.radius,
      feed: row.length,
      turn: row.rotation,
      dial: (row.rotation + 360) % 360,
      set: row.angle * 1.03,
      mark: from,
      markEnd: mark,
      grip: row.length,
      clamps: row.length > 30,
    };
  });
  return {
    id,
    runner: id,
    tube: resolved.runner.tube,
    from: 0,
    to: line.length,
    cutLength: line.length,
    trimStart: 0,
    trimEnd: 0,
    fromStart: rows,
    fromEnd: [...rows].reverse(),
    clampable: { fromStart: false, fromEnd: false },
    offered: [2],
    clocking: table.clocking,
    thinned: rows
      .filter(({ angle }) => angle > 0)
      .map(({ angle, radius }, i) => ({
        bend: i + 1,
        angle,
        radius,
        ratio: 1.5,
        percent: 25,
        wall: 1.1,
        outOfRound: 2,
      })),
    rounded: ROUNDED,
    remarks: [
      {
        where: 'workshop/bends',
        message: 'No die of radius 70 mm is on the shelf: allow 63.6 mm, or add it.',
        stops: false,
      },
    ],
  };
}

function heightsOf({ id, line }: Part): CheckHeights {
  const points = sampleCenterline(line, 0.5).map(({ position }) => position);
  const low = Math.min(...points.map((p) => p[2]));
  const lying = points.map(([x, y, z]) => [x, y, z - low + 21] as const);
  const [first, last] = [lying[0]!, lying.at(-1)!];
  return {
    runner: id,
    chord: Math.hypot(...first.map((x, i) => last[i]! - x)),
    heights: [
      { at: 'start', height: first[2] - 21 },
      { at: 1, height: 40 },
      { at: 'end', height: last[2] - 21 },
    ],
    span: Math.hypot(last[0] - first[0], last[1] - first[1]),
    points: lying,
  };
}
