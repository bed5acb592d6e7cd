/**
 * The shortest a runner can be, held against the shortest planar paths of bounded curvature: L. E. Dubins, "On Curves of
 * Minimal Length with a Constraint on Average Curvature, and with Prescribed Initial and Terminal Positions and Tangents",
 * American Journal of Mathematics 79 (1957), 497–516: such a path is an arc, a straight, an arc, or three arcs, all arcs of
 * the least radius. Confidence: theorem as widely taught; the six lengths are worked out here from tangent circles alone.
 */
import { describe, expect, it } from 'vitest';
import { lengthWindows } from '../../geometry';
import type { Design, Tooling } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { random as seeded } from '../random';

type Planar = { readonly x: number; readonly y: number; readonly heading: number };
type Piece = { readonly turn: -1 | 0 | 1; readonly length: number };
type Path = { readonly word: string; readonly length: number; readonly pieces: readonly Piece[] };

const RADIUS = 60;
const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
/** Angles a rounding below a whole turn are none. */
const turned = (angle: number): number => (wrapped(angle) > 2 * Math.PI - 1e-9 ? 0 : wrapped(angle));

const centre = ({ x, y, heading }: Planar, side: number): [number, number] => [
  x - side * RADIUS * Math.sin(heading),
  y + side * RADIUS * Math.cos(heading),
];

/** LSL, RSR, LSR, RSL, LRL and RLR, where there are such paths; left is side 1. */
function words(from: Planar, to: Planar): Path[] {
  const found: Path[] = [];
  const letter = (side: number): string => (side > 0 ? 'L' : 'R');
  for (const first of [1, -1] as const)
    for (const last of [1, -1] as const) {
      const [a, b] = [centre(from, first), centre(to, last)];
      const apart = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const along = Math.atan2(b[1] - a[1], b[0] - a[0]);
      // The straight is tangent to both circles: outer tangents for the same side, crossed ones for opposite sides.
      const straight = first === last ? apart : Math.sqrt(apart * apart - 4 * RADIUS * RADIUS);
      if (Number.isFinite(straight)) {
        const heading = first === last ? along : along + first * Math.atan2(2 * RADIUS, straight);
        found.push(
          path(`${letter(first)}S${letter(last)}`, [
            { turn: first, length: RADIUS * turned(first * (heading - from.heading)) },
            { turn: 0, length: straight },
            { turn: last, length: RADIUS * turned(last * (to.heading - heading)) },
          ]),
        );
      }
      if (first !== last || apart > 4 * RADIUS) continue;
      // Three circles in a row, each touching the next: the middle one stands off the line between the outer two, on either side.
      for (const off of [1, -1]) {
        const lean = off * Math.acos(apart / (4 * RADIUS));
        const toMiddle = along + lean;
        const fromMiddle = along + Math.PI - lean;
        const meets = toMiddle + (first * Math.PI) / 2;
        const leaves = fromMiddle + (first * Math.PI) / 2;
        found.push(
          path(`${letter(first)}${letter(-first)}${letter(first)}`, [
            { turn: first, length: RADIUS * turned(first * (meets - from.heading)) },
            { turn: -first as 1 | -1, length: RADIUS * turned(-first * (leaves - meets)) },
            { turn: first, length: RADIUS * turned(first * (to.heading - leaves)) },
          ]),
        );
      }
    }
  return found.sort((p, q) => p.length - q.length);
}

const path = (word: string, pieces: readonly Piece[]): Path => ({
  word,
  pieces,
  length: pieces.reduce((sum, piece) => sum + piece.length, 0),
});

/** Points every few millimetres, and where it ends: a path that does not end where it should is no path. */
function walked(from: Planar, { pieces }: Path, step: number): { points: [number, number][]; end: Planar } {
  const points: [number, number][] = [[from.x, from.y]];
  let now = from;
  for (const { turn, length } of pieces) {
    const count = Math.max(1, Math.ceil(length / step));
    const start = now;
    for (let k = 1; k <= count; k++) {
      const s = (length * k) / count;
      const heading = start.heading + (turn * s) / RADIUS;
      const [cx, cy] = centre(start, turn || 1);
      now = turn
        ? { x: cx + turn * RADIUS * Math.sin(heading), y: cy - turn * RADIUS * Math.cos(heading), heading }
        : { x: start.x + s * Math.cos(heading), y: start.y + s * Math.sin(heading), heading };
      points.push([now.x, now.y]);
    }
  }
  return { points, end: now };
}

/** A tube cannot run through itself, a curve can: whether it comes back near to where it was. */
function meetsItself(from: Planar, one: Path): boolean {
  const step = 2;
  const { points } = walked(from, one, step);
  return points.some((p, i) => points.slice(i + 6).some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 2 * step));
}

const FREE: Tooling = {
  centerlineRadius: RADIUS,
  firstStraight: 0,
  betweenStraight: 0,
  lastStraight: 0,
  maxBendAngle: 359,
  maxBends: 3,
};

/** One thin runner between two ends in the plane z = 0. */
function designOf(from: Planar, to: Planar, tooling: Tooling, surroundings: Design['surroundings'] = []): Design {
  const facing = ({ heading }: Planar): Vec3 => [Math.cos(heading), Math.sin(heading), 0];
  const up: Vec3 = [0, 0, 1];
  return {
    format: 'evenrun-design',
    version: 1,
    title: 'Planar',
    display: 'mm',
    ports: [
      {
        id: 'p',
        cylinder: 1,
        position: [from.x, from.y, 0],
        direction: facing(from),
        up,
        opening: { shape: 'round', diameter: 0.8 },
      },
    ],
    flanges: [],
    tubes: { t: { outsideDiameter: 1, wall: 0.1, material: 'mild-steel' } },
    tooling: { t: tooling },
    merges: [
      {
        id: 'm',
        inlets: 1,
        pattern: 'ring',
        position: [to.x, to.y, 0],
        axis: facing(to),
        up,
        outletDiameter: 1,
        length: 5,
      },
    ],
    runners: [{ id: 'r', tube: 't', group: 'g', from: { port: 'p' }, to: { merge: 'm', inlet: 1 } }],
    groups: { g: { length: null, tolerance: 1 } },
    surroundings,
  };
}

/** Out of the plane a tube that turns far can be shorter: two plates leave it a tenth of a millimetre. */
const PLATES: Design['surroundings'] = [
  { id: 'above', shape: 'box', min: [-3000, -3000, 0.6], max: [3000, 3000, 50], clearance: 0 },
  { id: 'below', shape: 'box', min: [-3000, -3000, -50], max: [3000, 3000, -0.6], clearance: 0 },
];

const shortestOf = (design: Design): number | null =>
  lengthWindows(design, new Map(), { starts: 4 }).runners[0]!.shortest;

type Case = { readonly from: Planar; readonly to: Planar; readonly best: Path };

/** Ends up to `reach` radii apart whose shortest path is of one kind and does not run through itself. */
function casesOf(kind: RegExp, reach: number, many: number, seed: number): Case[] {
  const random = seeded(seed);
  const cases: Case[] = [];
  while (cases.length < many) {
    const from = { x: 0, y: 0, heading: 2 * Math.PI * random() };
    const away = 2 * Math.PI * random();
    const far = reach * RADIUS * Math.sqrt(random());
    const to = { x: far * Math.cos(away), y: far * Math.sin(away), heading: 2 * Math.PI * random() };
    const [best] = words(from, to);
    if (best && kind.test(best.word) && !meetsItself(from, best)) cases.push({ from, to, best });
  }
  return cases;
}

describe('shortest planar paths with a least radius', () => {
  it('the six words end where they should, with seed 1957', () => {
    const random = seeded(1957);
    for (let k = 0; k < 200; k++) {
      const from = { x: 0, y: 0, heading: 6 * random() };
      const to = { x: 300 * (random() - 0.5), y: 300 * (random() - 0.5), heading: 6 * random() };
      for (const one of words(from, to)) {
        const { end } = walked(from, one, 50);
        expect(Math.hypot(end.x - to.x, end.y - to.y), one.word).toBeLessThan(1e-6);
        expect(Math.abs(Math.sin((end.heading - to.heading) / 2)), one.word).toBeLessThan(1e-6);
      }
    }
  });

  it.each([/^LSL$/, /^RSR$/, /^LSR$/, /^RSL$/])('are reached where they are %s, with seed 41', (kind) => {
    for (const { from, to, best } of casesOf(kind, 12, 25, 41)) {
      const found = shortestOf(designOf(from, to, FREE, PLATES))!;
      expect(found, JSON.stringify({ from, to, best })).toBeGreaterThan(best.length - 0.01);
      expect(found, JSON.stringify({ from, to, best })).toBeLessThan(best.length + 0.01);
    }
  });

  it.each([/^LRL$/, /^RLR$/])('are reached where they are %s, with seed 43', (kind) => {
    for (const { from, to, best } of casesOf(kind, 3.5, 20, 43)) {
      const found = shortestOf(designOf(from, to, FREE, PLATES))!;
      expect(found, JSON.stringify({ from, to, best })).toBeGreaterThan(best.length - 0.01);
      expect(found, JSON.stringify({ from, to, best })).toBeLessThan(best.length + 0.01);
    }
  });

  it('are reached in free space, where a way out of the plane may be shorter still, with seed 53', () => {
    for (const { from, to, best } of casesOf(/./, 8, 60, 53)) {
      const found = shortestOf(designOf(from, to, FREE))!;
      expect(found, JSON.stringify({ from, to, best })).toBeLessThan(best.length + 0.01);
      const gentle = best.pieces.every(({ turn, length }) => turn === 0 || length < (Math.PI / 2) * RADIUS);
      if (gentle) expect(found, JSON.stringify({ from, to, best })).toBeGreaterThan(best.length - 0.01);
    }
  });

  it('are never undercut where straights are required and bends limited, with seed 47', () => {
    const tight: Tooling = {
      ...FREE,
      firstStraight: 20,
      betweenStraight: 25,
      lastStraight: 15,
      maxBendAngle: 170,
      maxBends: 4,
    };
    let found = 0;
    for (const { from, to, best } of casesOf(/./, 10, 24, 47)) {
      const shortest = shortestOf(designOf(from, to, tight, PLATES));
      if (shortest === null) continue;
      found++;
      expect(shortest, JSON.stringify({ from, to, best })).toBeGreaterThan(best.length - 0.01);
    }
    expect(found).toBeGreaterThan(12);
  });
});
