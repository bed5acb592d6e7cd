/**
 * A solid as cells that are halved where something comes near: each cell is a ball that holds its part of the solid, and knows
 * how deep its middle lies in the solid. A distance that changes no faster than one walks is then bounded from both sides:
 * least(cell) >= f(middle) − outer, least(solid) <= f(middle) − inner. Cells are made when first asked for, and kept. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import { frustumShape } from '../clearance/shapes';
import type { Centerline } from '../curve/centerline';
import { pointAt } from '../curve/pointAt';
import type { Frustum, Pose } from '../header/merge';
import { fromFrame, type PartFrame, partFrame } from '../parts/place';
import type { Point2 } from '../plane/loop';
import { anySquareTo, distance } from '../vector';

export type Cell = {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly outer: number;
  /** Depth of the middle in the solid, negative outside it. */
  readonly inner: number;
  /**
   * What of the solid each half holds, if anything; null for a cell that is not halved any more, whose middle then stands for
   * all of it: its ball is no larger than `SMALLEST`.
   */
  readonly parts: () => readonly Cell[] | null;
};

/**
 * The ball of the smallest cells of plates and collectors, mm: flat things lie along each other with many such cells. What comes
 * at an edge between two middles may be so much nearer than told; square to a face, and beside tubes, gaps are exact.
 */
export const SMALLEST = 0.5;
/** Tubes are halved along their centerline alone, so they can be as fine as any. */
const SHORTEST = 0.01;

function cell(middle: Vec3, outer: number, inner: number, make: () => readonly Cell[] | null): Cell {
  let made: readonly Cell[] | null | undefined;
  return {
    x: middle[0],
    y: middle[1],
    z: middle[2],
    outer,
    inner,
    parts: () => {
      if (made === undefined) made = make();
      return made;
    },
  };
}

/** A tube along its centerline from one station to another, with round ends: balls of its radius all along. */
export function tubeCell(line: Centerline, radius: number, from: number, to: number): Cell {
  const half = (to - from) / 2;
  const middle = from + half;
  return cell(pointAt(line, middle).position, radius + half, radius, () =>
    half > SHORTEST ? [tubeCell(line, radius, from, middle), tubeCell(line, radius, middle, to)] : null,
  );
}

type Block = readonly [x0: number, x1: number, y0: number, y1: number, z0: number, z1: number];

/** A block of a frame, of which only what lies in a solid counts. @param signed distance in the frame, negative inside */
function blockCell(frame: PartFrame, block: Block, signed: (x: number, y: number, z: number) => number): Cell | null {
  const [x0, x1, y0, y1, z0, z1] = block;
  const [x, y, z] = [(x0 + x1) / 2, (y0 + y1) / 2, (z0 + z1) / 2];
  const [a, b, c] = [x1 - x0, y1 - y0, z1 - z0];
  const outer = Math.hypot(a, b, c) / 2;
  const off = signed(x, y, z);
  if (off > outer) return null;
  const halves = (): Block[] =>
    a >= b && a >= c
      ? [
          [x0, x, y0, y1, z0, z1],
          [x, x1, y0, y1, z0, z1],
        ]
      : b >= c
        ? [
            [x0, x1, y0, y, z0, z1],
            [x0, x1, y, y1, z0, z1],
          ]
        : [
            [x0, x1, y0, y1, z0, z],
            [x0, x1, y0, y1, z, z1],
          ];
  return cell(fromFrame(frame, [x, y, z]), outer, -off, () =>
    outer > SMALLEST ? halves().flatMap((half) => blockCell(frame, half, signed) ?? []) : null,
  );
}

/** A truncated cone, or a bar with flat ends. */
export function frustumCell(body: Frustum): Cell {
  const up = anySquareTo(body.axis);
  const frame = partFrame({ position: body.position, direction: body.axis, up });
  const r = Math.max(body.startRadius, body.endRadius);
  const own = frustumShape({ ...body, position: [0, 0, 0], axis: [0, 0, 1] }).signedDistance;
  return blockCell(frame, [-r, r, -r, r, 0, body.length], own)!;
}

/** A plate from its outer face, at z = 0 of the pose, down by its thickness; holes are taken as filled. */
export function plateCell(pose: Pose, outline: readonly Point2[], thickness: number): Cell {
  const xs = outline.map((p) => p[0]);
  const ys = outline.map((p) => p[1]);
  const signed = toPlate(outline, thickness);
  const block: Block = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys), -thickness, 0];
  return blockCell(partFrame(pose), block, signed)!;
}

/** Signed distance in a plate's own frame, positive outside. */
export function toPlate(outline: readonly Point2[], thickness: number): (x: number, y: number, z: number) => number {
  return (x, y, z) => {
    const flat = toOutline(outline, x, y);
    const off = Math.max(z, -thickness - z);
    return flat <= 0 && off <= 0 ? Math.max(flat, off) : Math.hypot(Math.max(0, flat), Math.max(0, off));
  };
}

/** Signed distance to a closed polygon that need not be convex: even-odd within. */
function toOutline(polygon: readonly Point2[], x: number, y: number): number {
  let squared = Number.POSITIVE_INFINITY;
  let within = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const [ax, ay] = polygon[j]!;
    const [bx, by] = polygon[i]!;
    const [ux, uy, px, py] = [bx - ax, by - ay, x - ax, y - ay];
    const length = ux * ux + uy * uy;
    const t = length > 0 ? Math.min(1, Math.max(0, (px * ux + py * uy) / length)) : 0;
    squared = Math.min(squared, (px - t * ux) ** 2 + (py - t * uy) ** 2);
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * ux) within = !within;
  }
  return within ? -Math.sqrt(squared) : Math.sqrt(squared);
}

/** Many as one: halved by places, so that what is far away is passed by as a whole. */
export function joinedCells(cells: readonly Cell[]): Cell {
  if (cells.length === 1) return cells[0]!;
  const low = [0, 1, 2].map((k) => Math.min(...cells.map((c) => at(c, k) - c.outer)));
  const high = [0, 1, 2].map((k) => Math.max(...cells.map((c) => at(c, k) + c.outer)));
  const middle = low.map((x, k) => (x + high[k]!) / 2) as unknown as Vec3;
  const outer = Math.max(...cells.map((c) => distance(middle, [c.x, c.y, c.z]) + c.outer));
  const inner = Math.max(...cells.map((c) => c.inner - distance(middle, [c.x, c.y, c.z])));
  return cell(middle, outer, inner, () => {
    const axis = [0, 1, 2].reduce((a, k) => (high[k]! - low[k]! > high[a]! - low[a]! ? k : a), 0);
    const sorted = [...cells].sort((a, b) => at(a, axis) - at(b, axis));
    const half = cells.length >> 1;
    return [joinedCells(sorted.slice(0, half)), joinedCells(sorted.slice(half))];
  });
}

const at = (c: Cell, k: number): number => (k === 0 ? c.x : k === 1 ? c.y : c.z);
