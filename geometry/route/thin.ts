/** The same problem with thinner tubes: where all is in each other's way, slim tubes find a way through and then fill out. */
import type { Obstacle } from '../check/obstacles';
import type { LayoutProblem } from '../layout/layoutProblem';

/** @param share of the tubes' radii and of every clearance */
export function thinned(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  share: number,
): { problem: LayoutProblem; obstacles: readonly Obstacle[] } {
  return {
    problem: {
      ...problem,
      header: { ...problem.header, tubeToTube: share * problem.header.tubeToTube },
      runners: problem.runners.map((r) => ({
        ...r,
        resolved: { ...r.resolved, tubeRadius: share * r.resolved.tubeRadius },
      })),
    },
    obstacles: obstacles.map((o) => ({
      ...o,
      surrounding: { ...o.surrounding, clearance: share * (o.surrounding.clearance ?? 0) },
    })),
  };
}
