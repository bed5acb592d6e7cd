/**
 * What the cone starts from: the outline of the tubes where they end, with the crotches between them rounded as far as
 * sheet can be formed; or the string drawn tight round them, where they end at a plate. Seen along the axis as a distance
 * from it at each angle. mm, radians; x and y of the collector's frame.
 */
import { hullLoop } from '../plane/discs';
import type { Loop, Point2 } from '../plane/loop';
import type { CollectorInlet } from './inlets';
import type { CollectorPlan } from './plan';

/** Within this share of the tube's radius of a crotch, the outline leaves the tubes. */
const ROUNDING = 0.22;
/** Angles per full turn. */
export const AROUND = 240;
/** Two neighbouring rays that reach farther apart than this share of the radius have a fold between them. */
const FOLD = 0.5;

type Ellipse = { readonly centre: Point2; readonly along: Point2; readonly radius: number; readonly stretch: number };

/** Section of a leaning tube at height z: an ellipse, longer by 1/cos the way it leans. */
export function sectionAt(inlet: CollectorInlet, z: number, radius: number): Ellipse {
  const { position: p, direction: d } = inlet;
  return {
    centre: [p[0] + (z * d[0]) / d[2], p[1] + (z * d[1]) / d[2]],
    along: [inlet.outward[0], inlet.outward[1]],
    radius,
    stretch: 1 / d[2],
  };
}

/** Distance to the ellipse's edge, near it: negative inside. */
function outside({ centre, along, radius, stretch }: Ellipse, x: number, y: number): number {
  const [u, v] = [x - centre[0], y - centre[1]];
  const a = (u * along[0] + v * along[1]) / stretch;
  const b = v * along[0] - u * along[1];
  return Math.hypot(a, b) - radius;
}

/** The lesser of two, rounded where they are within `blend` of each other (a cubic). */
function rounded(a: number, b: number, blend: number): number {
  const near = Math.max(0, blend - Math.abs(a - b)) / blend;
  return Math.min(a, b) - (near ** 3 * blend) / 6;
}

export type Outline = { readonly angles: readonly number[]; readonly reach: readonly number[] };

const evenAngles = (): number[] => Array.from({ length: AROUND }, (_, i) => (2 * Math.PI * i) / AROUND);

/** Null where the tubes' outline folds back on itself, seen from the axis. */
export function metOutline(plan: CollectorPlan): Outline | null {
  const { inlets, tubesEnd, tubeRadius } = plan;
  const sections = inlets.map((inlet) => sectionAt(inlet, tubesEnd, tubeRadius));
  const blend = ROUNDING * tubeRadius;
  const edge = (x: number, y: number): number =>
    sections.map((s) => outside(s, x, y)).reduce((least, d) => rounded(least, d, blend));
  const far = Math.max(...sections.map(({ centre, radius, stretch }) => Math.hypot(...centre) + radius * stretch));
  const angles = evenAngles();
  const reach = angles.map((angle) => firstFromOutside(angle, far + 1, edge));
  const folds = reach.some((r, i) => Math.abs(r - reach[(i + 1) % AROUND]!) > FOLD * tubeRadius);
  return folds ? null : { angles, reach };
}

/** March in until inside, then halve. */
function firstFromOutside(angle: number, far: number, edge: (x: number, y: number) => number): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  let out = far;
  while (out > 0) {
    const gap = edge(out * c, out * s);
    if (gap < LEAST_STEP) break;
    // The edge is at least so far: the ellipses' distances overstate by their stretch, a hundredth or two.
    out -= 0.9 * gap;
  }
  let [low, high] = [Math.max(0, out - 1), out + LEAST_STEP * 20];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (edge(middle * c, middle * s) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
const LEAST_STEP = 1e-3;
const HALVINGS = 50;

/** The string round all tubes where they end: straights and arcs. */
export const stringRound = (inlets: readonly CollectorInlet[], z: number, radius: number): Loop =>
  hullLoop(inlets.map((inlet) => sectionAt(inlet, z, radius).centre).map(([x, y]) => ({ x, y, r: radius })));

/** A convex loop round the axis as distances from it. */
export function reachOf(loop: readonly Point2[]): Outline {
  const angles = evenAngles();
  const reach = angles.map((angle) => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    for (let i = 0; i < loop.length; i++) {
      const [p, q] = [loop[i]!, loop[(i + 1) % loop.length]!];
      const [ex, ey] = [q[0] - p[0], q[1] - p[1]];
      const across = c * ey - s * ex;
      if (!(across > 0)) continue;
      const r = (p[0] * ey - p[1] * ex) / across;
      const t = (r * c - p[0]) * ex + (r * s - p[1]) * ey;
      if (r > 0 && t >= -1e-9 && t <= ex * ex + ey * ey + 1e-9) return r;
    }
    return Math.max(...loop.map((p) => Math.hypot(...p)));
  });
  return { angles, reach };
}
