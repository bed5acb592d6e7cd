/**
 * The cone: sheet from the outline of the tubes to the round outlet, ruled straight from one to the other at every angle,
 * its wall measured square to the sheet along those lines. And the plate on which it stands where tubes do not meet.
 * mm; the collector's frame.
 */
import { type Loop, loopArea, type Point2, polygonLoop, sampleLoop } from '../plane/loop';
import { extrudedSolid, extrudedVolume, rimLines, rims } from '../solid/extruded';
import type { Mesh } from '../solid/mesh';
import { metOutline, type Outline, reachOf, sectionAt, stringRound } from './outline';
import type { Piece, PiecePlan } from './piece';
import type { CollectorPlan } from './plan';

/** The outline that the cone starts from; null where the tubes' own folds back on itself. */
export function coneOutline(plan: CollectorPlan): Outline | null {
  return plan.meets ? metOutline(plan) : reachOf(sampleLoop(plateOutline(plan), 0.01));
}

const plateOutline = ({ inlets, tubesEnd, tubeRadius, convergence }: CollectorPlan): Loop =>
  stringRound(inlets, tubesEnd, tubeRadius / Math.cos(convergence));

export const conePiece = (plan: CollectorPlan, outline: Outline): PiecePlan => ({
  kind: 'cone',
  name: 'cone',
  pose: plan.pose,
  make: () => cone(plan, outline),
});

/** Outer and inner edge at either end, all with as many points. */
type Rings = {
  readonly foot: Point2[];
  readonly footBore: Point2[];
  readonly head: Point2[];
  readonly headBore: Point2[];
};

export function coneRings(plan: CollectorPlan, { angles, reach }: Outline): Rings {
  const { outletRadius, wall } = plan;
  const height = plan.coneEnd - plan.plateEnd - plan.weldGap;
  const at = (r: number, a: number): Point2 => [r * Math.cos(a), r * Math.sin(a)];
  const foot = angles.map((a, i) => at(reach[i]!, a));
  // Sheet that leans is thicker across the axis than it is.
  const across = reach.map((r) => wall * Math.hypot(1, (r - outletRadius) / height));
  return {
    foot,
    footBore: inset(foot, across),
    head: angles.map((a) => at(outletRadius, a)),
    headBore: angles.map((a, i) => at(outletRadius - across[i]!, a)),
  };
}

/** Every corner moved inward, square to the way from the corner before to the one after. */
function inset(ring: readonly Point2[], by: readonly number[]): Point2[] {
  const n = ring.length;
  return ring.map(([x, y], i) => {
    const [p, q] = [ring[(i + n - 1) % n]!, ring[(i + 1) % n]!];
    const [ex, ey] = [q[0] - p[0], q[1] - p[1]];
    const length = Math.hypot(ex, ey);
    return [x - (by[i]! * ey) / length, y + (by[i]! * ex) / length];
  });
}

function cone(plan: CollectorPlan, outline: Outline): Piece {
  const rings = coneRings(plan, outline);
  const [low, high] = [plan.plateEnd + plan.weldGap, plan.coneEnd];
  const volume =
    ruledVolume(rings.foot, rings.head, high - low) - ruledVolume(rings.footBore, rings.headBore, high - low);
  return {
    mesh: ruledShell(rings, low, high),
    volume,
    edges: Float32Array.from([...rimLines(rings.foot, low), ...rimLines(rings.head, high)]),
  };
}

function ruledShell({ foot, footBore, head, headBore }: Rings, low: number, high: number): Mesh {
  const n = foot.length;
  const ring = (points: readonly Point2[], z: number) => points.flatMap(([x, y]) => [x, y, z]);
  const positions = [...ring(foot, low), ...ring(head, high), ...ring(headBore, high), ...ring(footBore, low)];
  const triangles: number[] = [];
  // Foot to head outside, over the rim, back down the bore, and across to the foot: one strip closed in a ring.
  for (let k = 0; k < 4; k++)
    for (let i = 0; i < n; i++) {
      const j = (i + 1) % n;
      const [a, b] = [k * n, ((k + 1) % 4) * n];
      triangles.push(a + i, a + j, b + j, a + i, b + j, b + i);
    }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Sections of a ruled body have areas quadratic in height, so Simpson's rule is exact. */
function ruledVolume(foot: readonly Point2[], head: readonly Point2[], height: number): number {
  const middle = foot.map(([x, y], i): Point2 => [(x + head[i]![0]) / 2, (y + head[i]![1]) / 2]);
  return (height / 6) * (polygonArea(foot) + 4 * polygonArea(middle) + polygonArea(head));
}

const polygonArea = (ring: readonly Point2[]): number => loopArea(polygonLoop(ring));

export function platePiece(plan: CollectorPlan): PiecePlan[] {
  if (plan.meets || plan.inlets.length === 1) return [];
  const outline = plateOutline(plan);
  const bores = plan.inlets.map((inlet) => {
    const { centre, along, radius, stretch } = sectionAt(inlet, plan.tubesEnd, plan.boreRadius);
    return ellipseLoop(centre, along, radius * stretch, radius);
  });
  const [low, high] = [plan.tubesEnd + plan.weldGap, plan.plateEnd];
  const make = (): Piece => ({
    mesh: extrudedSolid(outline, bores, low, high),
    volume: extrudedVolume(outline, bores, low, high),
    edges: rims([outline, ...bores], [low, high]),
    flat: { outline, ports: bores, holes: [], thickness: high - low },
  });
  return [{ kind: 'plate', name: 'plate', pose: plan.pose, make }];
}

/** As straights short enough that none strays a hundredth of a millimetre: an ellipse has no arcs. */
function ellipseLoop(centre: Point2, along: Point2, long: number, short: number): Loop {
  const count = 180;
  return Array.from({ length: count }, (_, i) => {
    const a = (2 * Math.PI * i) / count;
    const [u, v] = [long * Math.cos(a), short * Math.sin(a)];
    return [centre[0] + u * along[0] - v * along[1], centre[1] + u * along[1] + v * along[0], 0] as const;
  });
}
