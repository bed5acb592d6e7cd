/** Least gap between a stretch of tube with flat ends and a convex solid. mm; negative where they overlap. */
import { distance } from '../vector';
import { BOTH_ENDS, type Chain } from './chain';
import { minimumOnDisc } from './convexMinimum';
import { type Gap, lesser } from './gap';
import type { ConvexShape } from './shapes';
import { leastOnChain } from './tubeField';

/**
 * @param flatEnds which of its ends are measured: a stretch that goes on has none there
 * @returns null where nothing is nearer than `below`
 */
export function tubeToShape(
  tube: Chain,
  shape: ConvexShape,
  below = Number.POSITIVE_INFINITY,
  flatEnds = BOTH_ENDS,
): Gap | null {
  let best = leastOnChain(tube, shape.signedDistance, below);
  for (const i of flatEnds) {
    const disc = tube.ends[i];
    const bound = best?.gap ?? below;
    if (distance(disc.centre, shape.centre) - disc.radius - shape.reach >= bound) continue;
    if (shape.signedDistance(...disc.centre) - disc.radius >= bound) continue;
    const { value, at } = minimumOnDisc(shape.signedDistance, disc);
    const link = i === 0 ? tube.links[0]! : tube.links.at(-1)!;
    if (value < bound) best = lesser(best, { gap: value, at, station: link.station + (i === 0 ? 0 : link.length) });
  }
  return best;
}
