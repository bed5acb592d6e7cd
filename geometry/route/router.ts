/**
 * Lays a header from nothing, round by round. A round depends on the design, the seed and its number alone, so rounds may
 * run anywhere, in any order, and still come to the same file.
 */
import type { Design } from '../../shared/design/types';
import type { Meshes } from '../check/meshes';
import { search } from '../draft/search';
import { type Layout, measuredLayout } from './layout';

/** How inlets that nobody pinned are given out: as it lies best, or so that cylinders fire one after the other round it. */
export type InletOrder = 'free' | 'firing';

export type RouterOptions = {
  /** Default 1. */
  readonly seed?: number;
  /** Default free. */
  readonly order?: InletOrder;
  /** Start from the points drawn and keep their way, where the design has them. Default false: they are laid anew. */
  readonly keepsShape?: boolean;
};

export type Round = {
  /** Layouts in which every rule holds, best first. */
  readonly layouts: readonly Layout[];
  /** The nearest miss, where none holds. */
  readonly attempt: Layout | null;
};

export type Router = {
  /**
   * @param n from 0
   * @param see called with every layout that holds as soon as it is found, better ones after worse
   * @param stopped asked often; true ends the round with what it has
   */
  round(n: number, see?: (layout: Layout) => void, stopped?: () => boolean): Round;
};

/** Locked runners stay as they are; inlets given are kept; everything else is laid. */
export function router(design: Design, meshes: Meshes, _options: RouterOptions = {}): Router {
  const bare: Design = {
    ...design,
    runners: design.runners.map((r) => {
      const { points: _points, radii: _radii, ...rest } = r;
      return r.locked ? r : rest;
    }),
  };
  return {
    round(_n, see, stopped = () => false) {
      const found = search([bare], stopped);
      if (!found) return { layouts: [], attempt: null };
      const layout = measuredLayout(found.design, meshes);
      if (!layout.report.ok) return { layouts: [], attempt: layout };
      see?.(layout);
      return { layouts: [layout], attempt: null };
    },
  };
}
