/**
 * Every gap there is within a horizon, the one with least to spare first, each between two places on the skins; and the gap
 * along each tube. The numbers are those of `check`: both measure pairs by the same functions, which remember them, so that
 * after an edit only what changed is measured. mm, in the design's frame.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Meshes } from '../check/meshes';
import { isTree, type Obstacle, obstaclesOf } from '../check/obstacles';
import {
  bodyShape,
  bodyToBody,
  bodyToObstacle,
  gapBetweenTubes,
  gapToBody,
  gapToObstacle,
  partsOf,
  roughGapOf,
  sweptBodyGap,
  sweptTubeGap,
  tubeOf,
} from '../check/pairGaps';
import type { Field } from '../clearance/convexMinimum';
import type { Gap } from '../clearance/gap';
import { frustumShape } from '../clearance/shapes';
import { requiredGap, type Stretch } from '../clearance/stretches';
import type { Header, ResolvedRunner } from '../header/resolve';
import { nearestOn } from '../measure/shapes';
import { besideTube, nearestOnTree, type Span, spanBetweenTubes } from '../measure/surfaces';
import { motionOf, swayOf } from '../motion/motion';
import { movedBody, movedChain } from '../motion/moved';
import { gapProfiles, touches } from './gapProfile';
import type { GapEntry, GapProfile, GapReport } from './report';

export type GapOptions = {
  /** Pairs with more than this to spare are left out, and profiles end there, mm. Default 60. */
  readonly within?: number;
  /** Between stations of the profiles, mm. Default 10. */
  readonly step?: number;
};

const WITHIN = 60;
const STEP = 10;

export function gapReport(
  header: Header,
  meshes: Meshes,
  { within = WITHIN, step = STEP }: GapOptions = {},
): GapReport {
  const { obstacles } = obstaclesOf(header, meshes);
  const gaps = [
    ...tubePairs(header, within),
    ...aroundTubes(header, obstacles, within),
    ...aroundBodies(header, obstacles, within),
  ];
  gaps.sort((a, b) => a.margin - b.margin);
  return { gaps, profiles: gapProfiles(header, obstacles, { within, step }).map((p) => withSwept(p, gaps)) };
}

/**
 * A profile is measured at rest; at the two stations about the place where a motion brings a runner nearest, the least over that
 * motion is no more than the gap there, so it is that: what the list tells is seen on the tube.
 */
function withSwept(profile: GapProfile, gaps: readonly GapEntry[]): GapProfile {
  const { runner, stations } = profile;
  const swept = gaps.filter((gap) => gap.pose && gap.station !== null && gap.between[0] === runner);
  if (swept.length === 0 || stations.length < 2) return profile;
  const margins = profile.margins.slice();
  const apart = (stations.at(-1)! - stations[0]!) / (stations.length - 1);
  for (const { station, margin } of swept) {
    const before = Math.floor((station! - stations[0]!) / apart);
    for (const k of [before, before + 1]) if (k >= 0 && k < margins.length) margins[k] = Math.min(margins[k]!, margin);
  }
  return { ...profile, margins };
}

const spans = new WeakMap<object, Span>();

/** Places are found once for a gap that is remembered. */
function spanOf(found: object, find: () => Span): Span {
  const kept = spans.get(found) ?? find();
  spans.set(found, kept);
  return kept;
}

function tubePairs(header: Header, within: number): GapEntry[] {
  const parts = header.runners.map((r) => partsOf(r, header));
  return header.runners.flatMap((a, i) =>
    header.runners.slice(i + 1).flatMap((b, j) => tubePair(header, a, b, parts[i]!, parts[i + 1 + j]!, within)),
  );
}

function tubePair(
  header: Header,
  a: ResolvedRunner,
  b: ResolvedRunner,
  ps: readonly Stretch[],
  qs: readonly Stretch[],
  within: number,
): GapEntry[] {
  let best: { readonly p: Stretch; readonly q: Stretch; readonly found: Gap; readonly required: number } | null = null;
  let open = within;
  const pairs = ps.flatMap((p) =>
    qs.map((q) => {
      const required = requiredGap(p, q, header.tubeToTube);
      return { p, q, required, low: roughGapOf(p.chain, q.chain) - required };
    }),
  );
  pairs.sort((x, y) => x.low - y.low);
  for (const { p, q, required, low } of pairs) {
    // Bundled tubes touch by design: there only a clash is news.
    const limit = required < 0 ? Math.min(0, open) : open;
    const found = low < limit ? gapBetweenTubes(p.chain, q.chain, limit + required) : null;
    if (!found) continue;
    open = found.gap - required;
    best = { p, q, found, required };
  }
  if (!best) return [];
  const { p, q, found, required } = best;
  const { from, to } = spanOf(found, () => spanBetweenTubes(p.chain, q.chain, found));
  return [
    {
      kind: 'tube-to-tube',
      gap: found.gap,
      required,
      margin: found.gap - required,
      between: [a.runner.id, b.runner.id],
      at: found.at,
      from,
      to,
      station: found.station,
    },
  ];
}

function aroundTubes(header: Header, obstacles: readonly Obstacle[], within: number): GapEntry[] {
  const motion = motionOf(header.design);
  return header.runners.flatMap((r) => {
    const tube = tubeOf(r);
    if (!tube) return [];
    return obstacles.flatMap((o): GapEntry[] => {
      const { surrounding, shape } = o;
      const required = surrounding.clearance ?? 0;
      if (motion) {
        const swept = sweptTubeGap(r, o, motion, within + required);
        if (!swept) return [];
        const { gap, at, station, stand, pose } = swept;
        const sway = swayOf(motion, surrounding, r.tube.material);
        const { from, to } = spanOf(swept, () => besideTube(movedChain(tube, sway, stand), swept, footOn(shape, at)));
        const between = [r.runner.id, surrounding.id] as const;
        return [{ kind: 'surroundings', gap, required, margin: gap - required, between, at, from, to, station, pose }];
      }
      const found = gapToObstacle(tube, shape, within + required);
      if (!found) return [];
      const { gap, at, station } = found;
      const { from, to } = spanOf(found, () => besideTube(tube, found, footOn(shape, at)));
      const between = [r.runner.id, surrounding.id] as const;
      return [{ kind: 'surroundings', gap, required, margin: gap - required, between, at, from, to, station }];
    });
  });
}

const footOn = (shape: Obstacle['shape'], at: Vec3): Vec3 =>
  isTree(shape) ? (nearestOnTree(shape, at) ?? at) : nearestOn(shape.signedDistance, at);

/** The search's place is on a mesh's triangle, or on the body beside a solid. */
const bodySpan = (own: Field, shape: Obstacle['shape'], at: Vec3): readonly [Vec3, Vec3] =>
  isTree(shape) ? [nearestOn(own, at), at] : [at, nearestOn(shape.signedDistance, at)];

function aroundBodies(header: Header, obstacles: readonly Obstacle[], within: number): GapEntry[] {
  const motion = motionOf(header.design);
  const bodies = [...header.merges.values()];
  const entry = (a: string, b: string, gap: number, at: Vec3, from: Vec3, to: Vec3): GapEntry => ({
    kind: 'merge-body',
    gap,
    required: 0,
    margin: gap,
    between: [a, b],
    at,
    from,
    to,
    station: null,
  });
  return bodies.flatMap((body, i) => {
    const id = body.merge.id;
    const field = bodyShape(body).signedDistance;
    const runners = header.runners.flatMap((r): GapEntry[] => {
      const tube = tubeOf(r);
      const found = tube && !touches(r, body) ? gapToBody(tube, body, within) : null;
      if (!tube || !found) return [];
      const { from, to } = spanOf(found, () => besideTube(tube, found, nearestOn(field, found.at)));
      return [entry(id, r.runner.id, found.gap, found.at, to, from)];
    });
    const around = obstacles.flatMap((o): GapEntry[] => {
      const { surrounding, shape } = o;
      if (motion) {
        const swept = sweptBodyGap(body, o, motion, within);
        if (!swept) return [];
        const own = movedBody(body.body, swayOf(motion, surrounding, body.material), swept.stand);
        const [from, to] = bodySpan(frustumShape(own).signedDistance, shape, swept.at);
        return [{ ...entry(id, surrounding.id, swept.value, swept.at, from, to), pose: swept.pose }];
      }
      const found = bodyToObstacle(body, shape, within);
      if (!found) return [];
      const { value, at } = found;
      const [from, to] = bodySpan(field, shape, at);
      return [entry(id, surrounding.id, value, at, from, to)];
    });
    const others = bodies.slice(i + 1).flatMap((other): GapEntry[] => {
      const found = bodyToBody(body, other, within);
      if (!found) return [];
      const to = nearestOn(bodyShape(other).signedDistance, found.at);
      return [entry(id, other.merge.id, found.value, bodyShape(body).centre, found.at, to)];
    });
    return [...runners, ...around, ...others];
  });
}
