/**
 * Least gaps of pairs of things, remembered by the two: for `check` and for the list of gaps alike, so that after an edit only
 * what changed is measured. mm.
 */
import type { Surrounding } from '../../shared/design/types';
import { remembered, rememberedOfTwo } from '../../shared/remember';
import { bodyToMesh, bodyToShape } from '../clearance/bodies';
import { type Chain, chain } from '../clearance/chain';
import type { Minimum } from '../clearance/convexMinimum';
import type { Gap } from '../clearance/gap';
import { selfGap } from '../clearance/self';
import { frustumShape } from '../clearance/shapes';
import { requiredGap, type Stretch, stretches } from '../clearance/stretches';
import { tubeToMesh } from '../clearance/tubeMesh';
import { tubeToShape } from '../clearance/tubeShape';
import { roughGap, tubeToTube } from '../clearance/tubeTube';
import type { Header, ResolvedMerge, ResolvedRunner } from '../header/resolve';
import type { Motion } from '../motion/motion';
import { type SweptBody, type SweptGap, sweptBody, sweptTube } from '../motion/sweptGap';
import { SELF_SEPARATION } from '../tolerance';
import { isTree, type Obstacle } from './obstacles';
import { rememberedGap } from './rememberedGap';

const stretchesOf = new WeakMap<ResolvedRunner, readonly Stretch[]>();

/** A resolved runner belongs to one set of merges and ports, so its stretches are its own. */
export function partsOf(r: ResolvedRunner, { merges, ports }: Header): readonly Stretch[] {
  const kept = stretchesOf.get(r) ?? stretches(r, merges, ports);
  stretchesOf.set(r, kept);
  return kept;
}

export const tubeOf = remembered((r: ResolvedRunner) => r.centerline && chain(r.centerline, r.tubeRadius));
const roughGapOf = rememberedOfTwo(roughGap);
const gapBetweenTubes = rememberedGap(tubeToTube, (found) => found.gap);
const gapToObstacle = rememberedGap(
  (tube: Chain, shape: Obstacle['shape'], below) =>
    isTree(shape) ? tubeToMesh(tube, shape, below) : tubeToShape(tube, shape, below),
  (found) => found.gap,
);
export const bodyShape = remembered(({ body }: ResolvedMerge) => frustumShape(body));
export const gapToBody = rememberedGap(
  (tube: Chain, merge: ResolvedMerge, below) => tubeToShape(tube, bodyShape(merge), below),
  (found) => found.gap,
);
const bodyToObstacle = rememberedGap(
  ({ body }: ResolvedMerge, shape: Obstacle['shape'], below) =>
    isTree(shape) ? bodyToMesh(body, shape, below) : bodyToShape(body, shape, below),
  (found) => found.value,
);
export const bodyToBody = rememberedGap(
  ({ body }: ResolvedMerge, other: ResolvedMerge, below) => bodyToShape(body, bodyShape(other), below),
  (found) => found.value,
);
export const gapToItself = remembered((r: ResolvedRunner) => {
  const tube = tubeOf(r);
  return tube && selfGap(tube, SELF_SEPARATION * r.tube.outsideDiameter, 0);
});

/** What is kept of a pair is of one motion: another one is another question. */
function rememberedSweep<A extends object, G>(
  work: (a: A, o: Obstacle, motion: Motion, below: number) => G | null,
  gapOf: (found: G) => number,
): (a: A, o: Obstacle, motion: Motion, below: number) => G | null {
  const known = new WeakMap<A, WeakMap<Surrounding, { key: string; shape: unknown; below: number; found: G | null }>>();
  return (a, o, motion, below) => {
    const own = known.get(a) ?? new WeakMap();
    known.set(a, own);
    const { surrounding, shape } = o;
    const kept = own.get(surrounding);
    if (kept && kept.key === motion.key && kept.shape === shape) {
      if (kept.found) return gapOf(kept.found) < below ? kept.found : null;
      if (kept.below >= below) return null;
    }
    const found = work(a, o, motion, below);
    own.set(surrounding, { key: motion.key, shape, below, found });
    return found;
  };
}

const sweptTubeGap = rememberedSweep(sweptTube, (found) => found.gap);
const sweptBodyGap = rememberedSweep(sweptBody, (found) => found.value);

type AtRest = { readonly pose?: undefined; readonly stand?: undefined };

/** The least over the motion, with the moment of it; of a header that stands still as it stands. */
export function tubeToSurrounding(
  r: ResolvedRunner,
  o: Obstacle,
  motion: Motion | null,
  below: number,
): SweptGap | (Gap & AtRest) | null {
  if (motion) return sweptTubeGap(r, o, motion, below);
  const tube = tubeOf(r);
  return tube && gapToObstacle(tube, o.shape, below);
}

/** The same of a collector's body. */
export const bodyToSurrounding = (
  merge: ResolvedMerge,
  o: Obstacle,
  motion: Motion | null,
  below: number,
): SweptBody | (Minimum & AtRest) | null =>
  motion ? sweptBodyGap(merge, o, motion, below) : bodyToObstacle(merge, o.shape, below);

/** Stretches of two runners. */
export type StretchPair = {
  readonly p: Stretch;
  readonly q: Stretch;
  /** Below zero where they are bundled. */
  readonly required: number;
  /** Under their margin, and cheap to know: what is likely tightest is measured first, the rest only where it could be tighter. */
  readonly low: number;
};

export const stretchPairs = (a: ResolvedRunner, b: ResolvedRunner, header: Header): StretchPair[] =>
  partsOf(a, header).flatMap((p) =>
    partsOf(b, header).map((q) => {
      const required = requiredGap(p, q, header.tubeToTube);
      return { p, q, required, low: roughGapOf(p.chain, q.chain) - required };
    }),
  );

/** @returns null where their margin is `open` or more */
export function stretchGap({ p, q, required, low }: StretchPair, open: number): Gap | null {
  // Bundled tubes touch by design: there only a clash is news.
  const limit = required < 0 ? Math.min(0, open) : open;
  return low < limit ? gapBetweenTubes(p.chain, q.chain, limit + required) : null;
}

/** Whether the runner enters the collector or leaves it: what is welded together has no gap. */
export const isWeldedTo = ({ runner: { from, to } }: ResolvedRunner, { merge }: ResolvedMerge): boolean =>
  to.merge === merge.id || ('merge' in from && from.merge === merge.id);
