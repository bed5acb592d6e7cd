/**
 * The pointed filler. Between three or more leaning tubes a well is left round the axis, wide at the inlets and closed where
 * they meet: the filler fits it from the inlets to its point. Where the well is still open at the tubes' ends, or behind
 * inlets that end at a plate, it goes on downstream to a point of its own, so that no blunt face stands in the flow.
 * mm, radians; the collector's frame.
 */
import type { Point2 } from '../plane/loop';
import { rimLines } from '../solid/extruded';
import { type Level, pointedSolid, reachArea } from '../solid/pointed';
import { type CollectorInlet, neighbours } from './inlets';
import { sectionAt } from './outline';
import type { Piece, PiecePlan } from './piece';
import type { CollectorPlan } from './plan';

/** Rays, and levels along it. */
const AROUND = 240;
const LEVELS = 24;
/** A point of its own is so many times as long as its foot is wide, at most so much of the cone: common practice. */
const SLENDER = 2.5;
const CONE_SHARE = 0.7;
/** Less than this across is left to the weld, mm. */
const LEAST = 2;
/** Its foot on a plate keeps so far from the bores, mm, and from the narrow places between them, as a share. */
const SHOULDER = 0.8;
const WAIST = 0.85;

export function fillerPiece(plan: CollectorPlan): PiecePlan[] {
  const filler = plan.meets ? inWell(plan) : onPlate(plan);
  if (!filler || 2 * Math.min(...filler.section(filler.from, AROUND)) < LEAST) return [];
  return [{ kind: 'filler', name: 'filler', pose: plan.pose, make: () => made(filler) }];
}

/** Sections from one height to another, each as reaches along so many rays; then straight to the tip. */
type Filler = {
  readonly from: number;
  readonly to: number;
  readonly tip: number;
  readonly section: (z: number, rays: number) => number[];
};

function made({ from, to, tip, section }: Filler): Piece {
  const heights =
    to === from ? [from] : Array.from({ length: LEVELS + 1 }, (_, i) => from + ((to - from) * i) / LEVELS);
  // Where the well closes at its own point there is no last section.
  if (tip === to) heights.pop();
  const list = heights.map((z): Level => ({ z, reach: section(z, AROUND) }));
  return { mesh: pointedSolid(list, tip), volume: volumeOf({ from, to, tip, section }), edges: rim(list[0]!) };
}

/** The well's own shape, less the weld gap; null where there is none. */
function inWell(plan: CollectorPlan): Filler | null {
  const { inlets, tubeRadius, convergence, weldGap, tubesEnd } = plan;
  if (!hasWell(inlets) || convergence === 0) return null;
  const radius = tubeRadius + weldGap / 2;
  const point = (inlets[0]!.offset - radius / Math.cos(convergence)) / Math.tan(convergence);
  const from = wellStart(plan, radius);
  if (point - from < LEAST) return null;
  const section = (z: number, rays: number) => well(inlets, z, radius, rays);
  if (point <= tubesEnd) return { from, to: point, tip: point, section };
  return { from, to: tubesEnd, tip: tubesEnd + pointLength(plan, section(tubesEnd, AROUND)), section };
}

const hasWell = (inlets: readonly CollectorInlet[]): boolean =>
  inlets.length > 2 && neighbours(inlets).length === inlets.length && inlets.every((i) => i.offset > 0);

/** Where neighbours first touch, so that the well is closed all round: at the inlets, or a little on where they stand apart. */
function wellStart({ inlets, tubesEnd, weldGap }: CollectorPlan, radius: number): number {
  const closed = (z: number) => well(inlets, z, radius, AROUND).every(Number.isFinite);
  let [low, high] = [weldGap, tubesEnd];
  if (closed(low)) return low;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (closed(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** From the axis to the nearest tube along each ray; infinite where the ray passes between two. */
function well(inlets: readonly CollectorInlet[], z: number, radius: number, rays: number): number[] {
  const sections = inlets.map((inlet) => sectionAt(inlet, z, radius));
  return Array.from({ length: rays }, (_, i) => {
    const angle = (2 * Math.PI * i) / rays;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return Math.min(
      ...sections.map(({ centre, along, stretch }) => {
        // In the ellipse's own axes, shrunk so that it is a circle.
        const own = (x: number, y: number) => [(x * along[0] + y * along[1]) / stretch, y * along[0] - x * along[1]];
        const [px, py] = own(-centre[0], -centre[1]) as [number, number];
        const [dx, dy] = own(c, s) as [number, number];
        const [a, b, k] = [dx * dx + dy * dy, px * dx + py * dy, px * px + py * py - radius * radius];
        const root = b * b - a * k;
        const t = root < 0 ? -1 : (-b - Math.sqrt(root)) / a;
        return t > 0 ? t : Number.POSITIVE_INFINITY;
      }),
    );
  });
}

/** On a plate: a foot between the bores, tapering to a point. */
function onPlate(plan: CollectorPlan): Filler | null {
  const { inlets, boreRadius, tubesEnd, plateEnd, weldGap } = plan;
  if (!hasWell(inlets)) return null;
  const narrow = WAIST * inlets[0]!.offset * Math.cos(Math.PI / inlets.length);
  const section = (_: number, rays: number) =>
    well(inlets, tubesEnd, boreRadius + SHOULDER, rays).map((r) => Math.min(r, narrow));
  const foot = plateEnd + weldGap;
  return { from: foot, to: foot, tip: foot + pointLength(plan, section(foot, AROUND)), section };
}

function pointLength({ coneEnd, plateEnd }: CollectorPlan, foot: readonly number[]): number {
  const wide = 2 * Math.sqrt(reachArea(foot) / Math.PI);
  return Math.min(SLENDER * wide, CONE_SHARE * (coneEnd - plateEnd));
}

/** Simpson's rule along the well, its sections closer than the mesh has them; a cone's third for the way to the tip. */
function volumeOf({ from, to, tip, section }: Filler): number {
  const area = (z: number) => reachArea(section(z, FINE_RAYS));
  const step = (to - from) / FINE_STEPS;
  const weights = Array.from({ length: FINE_STEPS + 1 }, (_, i) => (i === 0 || i === FINE_STEPS ? 1 : 2 + 2 * (i % 2)));
  const inWell =
    to === from
      ? 0
      : (step / 3) *
        weights.reduce((sum, w, i) => sum + w * (i === FINE_STEPS && tip === to ? 0 : area(from + i * step)), 0);
  return inWell + (tip === to ? 0 : ((tip - to) / 3) * area(to));
}
const FINE_RAYS = 720;
const FINE_STEPS = 32;

function rim({ z, reach }: Level): Float32Array {
  const ring = reach.map((r, i): Point2 => {
    const a = (2 * Math.PI * i) / reach.length;
    return [r * Math.cos(a), r * Math.sin(a)];
  });
  return Float32Array.from(rimLines(ring, z));
}
