/**
 * A closed plane curve of straights and arcs, as flanges are cut by: corners, each with the bulge of the edge to the next.
 * bulge = tan(turn / 4), positive where the edge turns left, ±1 half a circle. Outlines and holes alike run counter-clockwise.
 * mm. Source of the bulge: the DXF reference, LWPOLYLINE.
 */
import type { OutlineVertex } from '../../shared/design/types';
import { chordCount } from '../curve/pointAt';

export type Point2 = readonly [x: number, y: number];
export type Loop = readonly OutlineVertex[];

export type Bounds2 = { readonly min: Point2; readonly max: Point2 };

/** Counter-clockwise, as two half circles. */
export const circleLoop = ([x, y]: Point2, radius: number): Loop => [
  [x + radius, y, 1],
  [x - radius, y, 1],
];

export const polygonLoop = (corners: readonly Point2[]): Loop => corners.map(([x, y]) => [x, y, 0]);

/** Edge k runs from corner k to the next, the last back to the first. */
export type Edge = {
  readonly from: Point2;
  readonly to: Point2;
  /** Null where the edge is straight. */
  readonly arc: {
    readonly centre: Point2;
    readonly radius: number;
    readonly start: number;
    readonly turn: number;
  } | null;
};

export function edges(loop: Loop): Edge[] {
  return loop.map(([x, y, bulge], k) => {
    const [u, v] = loop[(k + 1) % loop.length]!;
    return { from: [x, y], to: [u, v], arc: bulge === 0 ? null : arcOf([x, y], [u, v], bulge) };
  });
}

/** Half the chord c = r·sin(turn/2); the centre lies off its middle by r·cos(turn/2), to the left of a left turn. */
function arcOf(from: Point2, to: Point2, bulge: number): Edge['arc'] {
  const turn = 4 * Math.atan(bulge);
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const off = (1 - bulge * bulge) / (4 * bulge);
  const centre: Point2 = [(from[0] + to[0]) / 2 - off * dy, (from[1] + to[1]) / 2 + off * dx];
  const radius = (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return { centre, radius, start: Math.atan2(from[1] - centre[1], from[0] - centre[0]), turn };
}

/** Positive where the loop runs counter-clockwise, mm²: the polygon of its corners, and a segment r²(turn − sin turn)/2 an arc. */
export function loopArea(loop: Loop): number {
  return edges(loop).reduce((sum, { from, to, arc }) => {
    const chord = (from[0] * to[1] - to[0] * from[1]) / 2;
    return sum + chord + (arc ? (arc.radius ** 2 * (arc.turn - Math.sin(arc.turn))) / 2 : 0);
  }, 0);
}

export const loopLength = (loop: Loop): number =>
  edges(loop).reduce(
    (sum, { from, to, arc }) =>
      sum + (arc ? arc.radius * Math.abs(arc.turn) : Math.hypot(to[0] - from[0], to[1] - from[1])),
    0,
  );

/** The same curve run the other way. */
export function reversedLoop(loop: Loop): Loop {
  const n = loop.length;
  return loop.map((_, k) => {
    const [x, y] = loop[(n - k) % n]!;
    const bulge = loop[(2 * n - k - 1) % n]![2];
    return [x, y, bulge === 0 ? 0 : -bulge];
  });
}

/** Points along the loop, from its first corner, so that chords stray at most `sagitta` from it; corners are among them. */
export function sampleLoop(loop: Loop, sagitta: number): Point2[] {
  return edges(loop).flatMap(({ from, arc }) => {
    if (!arc) return [from];
    const count = chordCount(arc.radius, Math.abs(arc.turn), sagitta);
    return Array.from({ length: count }, (_, i): Point2 => {
      if (i === 0) return from;
      const a = arc.start + (arc.turn * i) / count;
      return [arc.centre[0] + arc.radius * Math.cos(a), arc.centre[1] + arc.radius * Math.sin(a)];
    });
  });
}

/** Exact: arcs reach as far as their circle does where they pass its top, bottom or sides. */
export function loopBounds(loop: Loop): Bounds2 {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const { from, arc } of edges(loop)) {
    xs.push(from[0]);
    ys.push(from[1]);
    if (!arc) continue;
    for (let quarter = -8; quarter <= 8; quarter++) {
      const angle = (quarter * Math.PI) / 2;
      const share = (angle - arc.start) / arc.turn;
      if (share < 0 || share > 1) continue;
      xs.push(arc.centre[0] + arc.radius * Math.cos(angle));
      ys.push(arc.centre[1] + arc.radius * Math.sin(angle));
    }
  }
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] };
}

export const movedLoop = (loop: Loop, [dx, dy]: Point2): Loop => loop.map(([x, y, bulge]) => [x + dx, y + dy, bulge]);
