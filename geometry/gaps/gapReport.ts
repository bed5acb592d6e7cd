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
  bodyToSurrounding,
  gapToBody,
  isWeldedTo,
  type StretchPair,
  stretchGap,
  stretchPairs,
  tubeOf,
  tubeToSurrounding,
} from '../check/pairGaps';
import type { Field } from '../clearance/convexMinimum';
import type { Gap } from '../clearance/gap';
import { frustumShape } from '../clearance/shapes';
import type { Header, ResolvedRunner } from '../header/resolve';
import { nearestOn } from '../measure/shapes';
import { besideTube, nearestOnTree, type Span, spanBetweenTubes } from '../measure/surfaces';
import { motionOf, swayOf } from '../motion/motion';
import { movedBody, movedChain } from '../motion/moved';
import { solverObstacles } from '../motion/replicas';
import { gapProfiles } from './gapProfile';
import type { GapEntry, GapReport } from './report';

export type GapOptions = {
  /** Pairs with more than this to spare are left out, and profiles end there, mm. Default 60. */
  readonly within?: number;
  /** Between stations of the profiles, mm. Default 10. */
  readonly step?: number;
};

const WITHIN = 60;
const STEP = 10;

/** @param meshes by file name, as for `check`; of a mesh that is absent here there are no gaps, and `check` says so */
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
  return { gaps, profiles: gapProfiles(header, solverObstacles(header, meshes), { within, step }) };
}

const spans = new WeakMap<object, Span>();

/** Places are found once for a gap that is remembered. */
function spanOf(found: object, find: () => Span): Span {
  const kept = spans.get(found) ?? find();
  spans.set(found, kept);
  return kept;
}

function tubePairs(header: Header, within: number): GapEntry[] {
  return header.runners.flatMap((a, i) => header.runners.slice(i + 1).flatMap((b) => tubePair(header, a, b, within)));
}

function tubePair(header: Header, a: ResolvedRunner, b: ResolvedRunner, within: number): GapEntry[] {
  let best: { readonly pair: StretchPair; readonly found: Gap } | null = null;
  let open = within;
  const pairs = stretchPairs(a, b, header).sort((x, y) => x.low - y.low);
  for (const pair of pairs) {
    const found = stretchGap(pair, open);
    if (!found) continue;
    open = found.gap - pair.required;
    best = { pair, found };
  }
  if (!best) return [];
  const { found } = best;
  const { p, q, required } = best.pair;
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
      const found = tubeToSurrounding(r, o, motion, within + required);
      if (!found) return [];
      const { gap, at, station, pose, stand } = found;
      const moved = () =>
        motion && stand ? movedChain(tube, swayOf(motion, surrounding, r.tube.material), stand) : tube;
      const { from, to } = spanOf(found, () => besideTube(moved(), found, footOn(shape, at)));
      const between = [r.runner.id, surrounding.id] as const;
      const entry = { gap, required, margin: gap - required, between, at, from, to, station };
      return [{ kind: 'surroundings', ...entry, ...(pose ? { pose } : {}) }];
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
      const found = tube && !isWeldedTo(r, body) ? gapToBody(tube, body, within) : null;
      if (!tube || !found) return [];
      const { from, to } = spanOf(found, () => besideTube(tube, found, nearestOn(field, found.at)));
      return [entry(id, r.runner.id, found.gap, found.at, to, from)];
    });
    const around = obstacles.flatMap((o): GapEntry[] => {
      const { surrounding, shape } = o;
      const found = bodyToSurrounding(body, o, motion, within);
      if (!found) return [];
      const { value, at, pose, stand } = found;
      const own =
        motion && stand
          ? frustumShape(movedBody(body.body, swayOf(motion, surrounding, body.material), stand)).signedDistance
          : field;
      const [from, to] = bodySpan(own, shape, at);
      return [{ ...entry(id, surrounding.id, value, at, from, to), ...(pose ? { pose } : {}) }];
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
