/**
 * The cuts of a collector's tubes, unrolled: each along the planes it shares with its neighbours and across its end. The
 * seam lies on the line farthest from the collector's axis, where a tube stays longest. mm, radians.
 */
import { type CollectorPlan, collectorPlan } from '../collector/plan';
import { type Stub, stubs } from '../collector/stubs';
import type { Header } from '../header/resolve';
import type { Line2 } from '../solid/clip2';
import { crossings, cutHeight, heightLines } from '../solid/cutTube';
import { LENGTH_TOLERANCE } from '../tolerance';
import { extremes } from './extremes';
import type { WrapCut } from './wrapCut';

/** Where a collector cannot be built, none. */
export function collectorCuts(header: Header): WrapCut[] {
  return [...header.merges.values()].flatMap((merge) => {
    const plan = collectorPlan(header, merge);
    return plan.problems.length > 0 ? [] : stubs(plan).map((stub) => cutOf(plan, stub));
  });
}

/** An id that says that it is a collector is not told so twice. */
const titled = (id: string): string =>
  /collector/i.test(id) ? `${id[0]!.toUpperCase()}${id.slice(1)}` : `Collector ${id}`;

/** From the seam (along y) to an angle of the tube's own frame (from x). */
const SEAM = Math.PI / 2;

function cutOf(plan: CollectorPlan, { number, shape }: Stub): WrapCut {
  const { outsideDiameter, wall, start, planes } = shape;
  const radius = outsideDiameter / 2;
  const lines = heightLines(planes);
  const height = (angle: number): number => {
    const a = angle + SEAM;
    return Math.max(0, cutHeight(lines, [radius * Math.cos(a), radius * Math.sin(a)]) - start);
  };
  const corners = cornersOf(lines, start, radius);
  const { highest, lowest } = extremes(height, corners);
  const gap = plan.weldGap > 0 ? [`Cut back by half the weld gap of ${plan.weldGap} mm on every shared face.`] : [];
  return {
    id: `${plan.id} stub ${number}`,
    title: `${titled(plan.id)}, tube of inlet ${number}: where the tubes meet`,
    outsideDiameter,
    wall,
    measuredOn: 'outside',
    height,
    corners,
    heel: highest[0]!,
    crotch: lowest[0]!,
    seam: 'the line farthest from the axis of the collector',
    notes: [
      'The base line is the square end at the inlet. Every face of the cut is flat: saw or grind across the whole wall.',
      ...gap,
    ],
  };
}

/** Angles from the seam at which one plane gives way to another, or to the base line where nothing of the tube is left. */
function cornersOf(lines: readonly Line2[], start: number, radius: number): number[] {
  const pairs = lines.flatMap((p, i) => [[start, 0, 0] as const, ...lines.slice(i + 1)].map((q) => [p, q] as const));
  const found = pairs.flatMap(([p, q]) =>
    crossings([p[0] - q[0], p[1] - q[1], p[2] - q[2]], radius).filter((a) => {
      const at = [radius * Math.cos(a), radius * Math.sin(a)] as const;
      const height = cutHeight(lines, at);
      return height > start - ON_CUT && cutHeight([p], at) - height < ON_CUT;
    }),
  );
  const own = found.map((a) => (a - SEAM + 2 * Math.PI) % (2 * Math.PI)).sort((a, b) => a - b);
  return own.filter((a, k) => k === 0 || a - own[k - 1]! > SAME_ANGLE);
}
const ON_CUT = 1000 * LENGTH_TOLERANCE;
const SAME_ANGLE = 1e-6;
