/**
 * Least gap between the side of a tube and anything that has a convex distance field. Ends are not measured here (see
 * `tubeTube`): a least value that stands at the stretch's own end is passed over.
 */
import { addScaled, lerp } from '../vector';
import { type Chain, type Link, sagitta, vectorAt } from './chain';
import { type Field, minimumOnInterval } from './convexMinimum';
import { GAP_RESOLUTION, type Gap } from './gap';

/** Step along the tangent to see whether the field falls further on the other side of a joint, mm. */
const PROBE = 0.01;
/** How steeply it may fall there and still count as level: the turn of one chord. */
const LEVEL = 0.02;

/**
 * @param field convex and 1-Lipschitz, such as a signed distance
 * @param below only gaps less than this are sought
 */
export function leastOnChain(c: Chain, field: Field, below = Number.POSITIVE_INFINITY): Gap | null {
  let best: Gap | null = null;
  let bound = below;
  const measure = (link: Link, i: number, n: number): { value: number; t: number } => {
    const [ax, ay, az] = vectorAt(link.points, i);
    const [bx, by, bz] = vectorAt(link.points, i + n);
    return minimumOnInterval((t) => field(ax + t * (bx - ax), ay + t * (by - ay), az + t * (bz - az)), 0, 1);
  };
  const search = (link: Link, i: number, n: number): void => {
    if (isBeyond(link, i, n, field, bound + c.tubeRadius)) return;
    const { value, t } = measure(link, i, n);
    if (value - c.tubeRadius - sagitta(link, n) >= bound - GAP_RESOLUTION) return;
    if (n > 1) {
      // The half that holds the least value first.
      const first = t < 0.5 ? 0 : n / 2;
      search(link, i + first, n / 2);
      search(link, i + n / 2 - first, n / 2);
      return;
    }
    const gap = value - c.tubeRadius;
    if (gap >= bound || !isLeast(link, i + t, t, field)) return;
    bound = gap;
    const at = lerp(vectorAt(link.points, i), vectorAt(link.points, i + 1), t);
    best = { gap, at, station: link.station + (link.length * (i + t)) / link.count };
  };
  for (const link of c.links) search(link, 0, link.count);
  return best;
}

/** A cheap first look from the middle: a 1-Lipschitz field cannot fall by more than half the stretch's length. */
function isBeyond(link: Link, i: number, n: number, field: Field, bound: number): boolean {
  const half = (link.length * n) / link.count / 2;
  const [ax, ay, az] = vectorAt(link.points, i);
  const [bx, by, bz] = vectorAt(link.points, i + n);
  const fromMiddle = field((ax + bx) / 2, (ay + by) / 2, (az + bz) / 2);
  return fromMiddle - half - sagitta(link, n) >= bound;
}

/** Whether a least place on a chord is one on the true curve too: never the stretch's own end, whose disc is measured. */
export function isLeast(link: Link, k: number, t: number, field: Field): boolean {
  if (t > 0 && t < 1) return true;
  if ((link.isFirst && k === 0) || (link.isLast && k === link.count)) return false;
  const p = vectorAt(link.points, k);
  const tangent = vectorAt(link.tangents, k);
  const here = field(...p);
  return [-PROBE, PROBE].every((step) => field(...addScaled(p, tangent, step)) >= here - LEVEL * PROBE);
}
