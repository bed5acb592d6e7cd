/**
 * A flange's plates as convex prisms, for measuring what comes near them: each the hull of its outline, as thick as the plate.
 * Where an outline is waisted the hull is a little wider than the metal, never narrower. mm, the design's frame.
 */
import type { Field } from '../clearance/convexMinimum';
import type { ConvexShape } from '../clearance/shapes';
import type { Header } from '../header/resolve';
import { fromFrame, partFrame } from '../parts/place';
import { hullLoop } from '../plane/discs';
import { type Point2, sampleLoop } from '../plane/loop';
import { flangePlan } from './plan';

/** Chords of an outline stray so little that nobody could weigh it, mm. */
const CHORD = 0.05;

export type PlateHull = { readonly flange: string; readonly shape: ConvexShape };

/** Of all plates that can be made. */
export function plateHulls(header: Header): PlateHull[] {
  return (header.design.flanges ?? []).flatMap((flange) =>
    flangePlan(header, flange).plates.map((plate) => {
      const frame = partFrame(plate.pose);
      const corners = sampleLoop(plate.outline, CHORD).map(([x, y]) => ({ x, y, r: 0 }));
      const hull = sampleLoop(hullLoop(corners), CHORD);
      const middle = hull.reduce<Point2>((m, p) => [m[0] + p[0] / hull.length, m[1] + p[1] / hull.length], [0, 0]);
      const half = plate.thickness / 2;
      const reach = Math.max(...hull.map((p) => Math.hypot(p[0] - middle[0], p[1] - middle[1], half)));
      return {
        flange: flange.id,
        shape: {
          centre: fromFrame(frame, [...middle, -half]),
          reach,
          signedDistance: prismField(hull, frame, plate.thickness),
        },
      };
    }),
  );
}

/** Distance to a convex polygon drawn along the frame's z from −thickness to 0: convex, and true outside. */
function prismField(polygon: readonly Point2[], frame: ReturnType<typeof partFrame>, thickness: number): Field {
  const [ex, ey, ez, o] = frame;
  return (x, y, z) => {
    const [dx, dy, dz] = [x - o[0], y - o[1], z - o[2]];
    const flat = toPolygon(polygon, dx * ex[0] + dy * ex[1] + dz * ex[2], dx * ey[0] + dy * ey[1] + dz * ey[2]);
    const up = dx * ez[0] + dy * ez[1] + dz * ez[2];
    const off = Math.max(up, -thickness - up);
    if (flat <= 0 && off <= 0) return Math.max(flat, off);
    return Math.hypot(Math.max(0, flat), Math.max(0, off));
  };
}

/** Signed, of a counter-clockwise convex polygon. */
function toPolygon(polygon: readonly Point2[], x: number, y: number): number {
  let inside = Number.NEGATIVE_INFINITY;
  let squared = Number.POSITIVE_INFINITY;
  for (let i = 0; i < polygon.length; i++) {
    const [ax, ay] = polygon[i]!;
    const [bx, by] = polygon[i + 1 === polygon.length ? 0 : i + 1]!;
    const [ux, uy] = [bx - ax, by - ay];
    const [px, py] = [x - ax, y - ay];
    const length = ux * ux + uy * uy;
    if (!(length > 0)) continue;
    inside = Math.max(inside, (px * uy - py * ux) / Math.sqrt(length));
    const t = Math.min(1, Math.max(0, (px * ux + py * uy) / length));
    squared = Math.min(squared, (px - t * ux) ** 2 + (py - t * uy) ** 2);
  }
  return inside <= 0 ? inside : Math.sqrt(squared);
}
