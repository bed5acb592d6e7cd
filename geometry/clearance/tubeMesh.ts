/**
 * The least gap of a tube to a mesh surrounding. mm. A tube whose centerline pierces a triangle has gap −radius; the mesh's
 * inside is nothing, since it need not have one.
 */
import type { Vec3 } from '../../shared/vec3';
import { type Chain, type Link, sagitta, vectorAt } from './chain';
import { minimumOnInterval } from './convexMinimum';
import { discToTriangle } from './discs';
import { GAP_RESOLUTION, type Gap, lesser } from './gap';
import type { TriangleTree } from './triangleTree';
import { isLeast } from './tubeField';

/** Least gap of a tube, its flat ends included, to the mesh; null where nothing is nearer than `below`. */
export function tubeToMesh(tube: Chain, tree: TriangleTree, below = Number.POSITIVE_INFINITY): Gap | null {
  let best: Gap | null = null;
  const bound = (): number => best?.gap ?? below;
  for (const link of tube.links) searchLink(link, 0, link.count);
  for (const [i, disc] of tube.ends.entries()) {
    const link = i === 0 ? tube.links[0]! : tube.links.at(-1)!;
    const station = link.station + (i === 0 ? 0 : link.length);
    tree.visit(
      disc.centre,
      () => bound() + disc.radius,
      (a, b, c, field) => {
        const { value, at } = discToTriangle(disc, field, a, b, c);
        if (value < bound()) best = lesser(best, { gap: value, at, station });
      },
    );
  }
  return best;

  function searchLink(link: Link, i: number, n: number): void {
    const [ax, ay, az] = vectorAt(link.points, i);
    const [bx, by, bz] = vectorAt(link.points, i + n);
    const middle: Vec3 = [(ax + bx) / 2, (ay + by) / 2, (az + bz) / 2];
    const half = Math.hypot(bx - ax, by - ay, bz - az) / 2;
    const stray = sagitta(link, n);
    let split = false;
    tree.visit(
      middle,
      () => (split ? Number.NEGATIVE_INFINITY : bound() + tube.tubeRadius + half + stray),
      (_a, _b, _c, field) => {
        const { value, t } = minimumOnInterval(
          (s) => field(ax + s * (bx - ax), ay + s * (by - ay), az + s * (bz - az)),
          0,
          1,
        );
        const gap = value - tube.tubeRadius;
        if (gap - stray >= bound() - GAP_RESOLUTION) return;
        if (n > 1) {
          split = true;
          return;
        }
        if (!isLeast(link, i + t, t, field)) return;
        const at: Vec3 = [ax + t * (bx - ax), ay + t * (by - ay), az + t * (bz - az)];
        best = { gap, at, station: link.station + (link.length * (i + t)) / link.count };
      },
    );
    if (!split) return;
    searchLink(link, i, n / 2);
    searchLink(link, i + n / 2, n / 2);
  }
}
