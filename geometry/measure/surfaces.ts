/**
 * Least gap of two surfaces with the two places that it lies between, for a dimension line. The kernel's searches say how
 * wide the gap is and about where; the places are found again from that, exactly. mm; negative where the two overlap.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Chain } from '../clearance/chain';
import { leastAbout, minimumOnDisc, minimumOnTriangle } from '../clearance/convexMinimum';
import { pointToDisc } from '../clearance/discs';
import { GAP_RESOLUTION, type Gap } from '../clearance/gap';
import { treeToTree } from '../clearance/treeTree';
import type { TriangleTree } from '../clearance/triangleTree';
import { leastOnChain } from '../clearance/tubeField';
import { tubeToMesh } from '../clearance/tubeMesh';
import { tubeToShape } from '../clearance/tubeShape';
import { tubeToTube } from '../clearance/tubeTube';
import { addScaled, distance, sub, unit } from '../vector';
import type { Surface } from './resolve';
import { type Convex, nearestOn } from './shapes';

export type Span = {
  readonly value: number;
  /** On the first surface and on the second. The same place twice where they overlap too oddly to say. */
  readonly from: Vec3;
  readonly to: Vec3;
};

/** Null where there is nothing to measure to: a tube of no length, a scan of no triangles. Two scans that cross are 0 apart. */
export function surfaceGap(a: Surface, b: Surface): Span | null {
  if ('tube' in a) {
    if ('tube' in b) return tubes(a.tube, b.tube);
    return 'convex' in b ? tubeAndConvex(a.tube, b.convex) : tubeAndTree(a.tube, b.tree);
  }
  if ('tube' in b) return turned(surfaceGap(b, a));
  if ('convex' in a) return 'convex' in b ? convexes(a.convex, b.convex) : convexAndTree(a.convex, b.tree);
  return 'convex' in b ? turned(surfaceGap(b, a)) : treeToTree(a.tree, b.tree);
}

const turned = (span: Span | null): Span | null => span && { ...span, from: span.to, to: span.from };

/** Whether two places found for a gap are its own: as far apart as it is wide. */
const spans = (from: Vec3, to: Vec3, gap: number): boolean =>
  Math.abs(distance(from, to) - Math.abs(gap)) <= 2 * GAP_RESOLUTION;

function firstThatSpans(value: number, at: Vec3, candidates: Iterable<readonly [Vec3, Vec3]>): Span {
  for (const [from, to] of candidates) if (spans(from, to, value)) return { value, from, to };
  return { value, from: at, to: at };
}

function tubes(a: Chain, b: Chain): Span | null {
  const found = tubeToTube(a, b);
  return found && tubesSpan(a, b, found);
}

const tubesSpan = (a: Chain, b: Chain, found: Gap): Span =>
  firstThatSpans(found.gap, found.at, tubePlaces(a, b, found));

/** Where a gap that is known lies: mostly side to side, which is soon found. */
export function spanBetweenTubes(a: Chain, b: Chain, found: Gap): Span {
  const { gap, at } = found;
  for (const [from, to] of sidePlaces(a, found)) {
    const centre = nearestOnAxis(b, to, b.tubeRadius + GAP_RESOLUTION);
    if (centre && spans(from, to, gap) && Math.abs(distance(centre, to) - b.tubeRadius) <= 2 * GAP_RESOLUTION)
      return { value: gap, from, to };
  }
  return firstThatSpans(gap, at, tubePlaces(a, b, found));
}

/** Every way in which two tubes can be nearest: end to side both ways, end to end, side to side. */
function* tubePlaces(a: Chain, b: Chain, { gap, at }: Gap): Generator<readonly [Vec3, Vec3]> {
  for (const [one, other, swap] of [
    [a, b, false],
    [b, a, true],
  ] as const) {
    for (const disc of one.ends) {
      const field = (x: number, y: number, z: number) => pointToDisc(disc, x, y, z);
      const side = leastOnChain(other, field, gap + 2 * GAP_RESOLUTION);
      if (!side) continue;
      const onDisc = nearestOn(field, side.at);
      const onSide = addScaled(side.at, unit(sub(onDisc, side.at)), other.tubeRadius);
      yield swap ? [onSide, onDisc] : [onDisc, onSide];
    }
  }
  for (const p of a.ends) {
    for (const q of b.ends) {
      const field = (x: number, y: number, z: number) => pointToDisc(q, x, y, z);
      const on = minimumOnDisc(field, p).at;
      yield [on, nearestOn(field, on)];
    }
  }
  yield* sidePlaces(a, { gap, at });
}

/** Side to side: the search's place lies on the line that joins the centerlines, half way across the gap. */
function* sidePlaces(a: Chain, { gap, at }: Pick<Gap, 'gap' | 'at'>): Generator<readonly [Vec3, Vec3]> {
  const middle = a.tubeRadius + gap / 2;
  const centre = nearestOnAxis(a, at, middle);
  if (!centre) return;
  const across = unit(sub(at, centre));
  yield [addScaled(centre, across, a.tubeRadius), addScaled(centre, across, a.tubeRadius + gap)];
}

/** The axis' point nearest to `p`, where it is about `off` away. */
function nearestOnAxis(tube: Chain, p: Vec3, off: number): Vec3 | null {
  const field = (x: number, y: number, z: number) => Math.hypot(x - p[0], y - p[1], z - p[2]);
  return leastOnChain(tube, field, off - tube.tubeRadius + 2 * GAP_RESOLUTION)?.at ?? null;
}

function tubeAndConvex(tube: Chain, convex: Convex): Span | null {
  const found = tubeToShape(tube, convex);
  return found && besideTube(tube, found, nearestOn(convex.signedDistance, found.at));
}

function tubeAndTree(tube: Chain, tree: TriangleTree): Span | null {
  const found = tubeToMesh(tube, tree);
  const on = found && nearestOnTree(tree, found.at);
  return found && on && besideTube(tube, found, on);
}

/** The search's place is on the tube's end itself, or on its centerline with the wall a radius nearer. */
export function besideTube(tube: Chain, { gap, at }: Gap, on: Vec3): Span {
  const wall = addScaled(at, unit(sub(on, at)), tube.tubeRadius);
  return firstThatSpans(gap, at, [
    [at, on],
    [wall, on],
  ]);
}

export function nearestOnTree(tree: TriangleTree, p: Vec3): Vec3 | null {
  const place = new Float64Array(3);
  return Number.isFinite(tree.nearest(...p, undefined, place)) ? [place[0]!, place[1]!, place[2]!] : null;
}

function convexes(a: Convex, b: Convex): Span {
  const { value, at } = a.least(b.signedDistance);
  return firstThatSpans(value, at, [[at, nearestOn(b.signedDistance, at)]]);
}

function convexAndTree(convex: Convex, tree: TriangleTree): Span | null {
  let best: { value: number; at: Vec3 } | null = null;
  tree.visit(
    convex.centre,
    () => (best?.value ?? Number.POSITIVE_INFINITY) + convex.reach,
    (a, b, c) => {
      if (leastAbout(convex.signedDistance, a, b, c) >= (best?.value ?? Number.POSITIVE_INFINITY)) return;
      const found = minimumOnTriangle(convex.signedDistance, a, b, c);
      if (found.value < (best?.value ?? Number.POSITIVE_INFINITY)) best = found;
    },
  );
  if (!best) return null;
  const { value, at } = best as { value: number; at: Vec3 };
  return firstThatSpans(value, at, [[nearestOn(convex.signedDistance, at), at]]);
}
