/**
 * Least gaps of pairs of things, remembered by the two: for `check` and for the list of gaps alike, so that after an edit only
 * what changed is measured. mm.
 */
import type { Surrounding } from '../../shared/design/types';
import { remembered, rememberedOfTwo } from '../../shared/remember';
import { bodyToMesh, bodyToShape } from '../clearance/bodies';
import { type Chain, chain } from '../clearance/chain';
import { selfGap } from '../clearance/self';
import { frustumShape } from '../clearance/shapes';
import { type Stretch, stretches } from '../clearance/stretches';
import { tubeToMesh } from '../clearance/tubeMesh';
import { tubeToShape } from '../clearance/tubeShape';
import { roughGap, tubeToTube } from '../clearance/tubeTube';
import type { Header, ResolvedMerge, ResolvedRunner } from '../header/resolve';
import type { Motion } from '../motion/motion';
import { sweptBody, sweptTube } from '../motion/sweptGap';
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
export const roughGapOf = rememberedOfTwo(roughGap);
export const gapBetweenTubes = rememberedGap(tubeToTube, (found) => found.gap);
export const gapToObstacle = rememberedGap(
  (tube: Chain, shape: Obstacle['shape'], below) =>
    isTree(shape) ? tubeToMesh(tube, shape, below) : tubeToShape(tube, shape, below),
  (found) => found.gap,
);
export const bodyShape = remembered(({ body }: ResolvedMerge) => frustumShape(body));
export const gapToBody = rememberedGap(
  (tube: Chain, merge: ResolvedMerge, below) => tubeToShape(tube, bodyShape(merge), below),
  (found) => found.gap,
);
export const bodyToObstacle = rememberedGap(
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

export const sweptTubeGap = rememberedSweep(sweptTube, (found) => found.gap);
export const sweptBodyGap = rememberedSweep(sweptBody, (found) => found.value);
