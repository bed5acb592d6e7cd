/** What joints at a collector's outlet measure, mm: common practice, but for the outlet and the slip gap, which are the design's. */
import type { OutletJoint } from '../../shared/design/types';

/** A sleeve goes on beyond the outlet's end, for the pipe that is welded into it, and stops short of the cone. */
export const SLEEVE = { beyond: 15, short: 5, leastGrip: 15, gap: 0.25 };
export const BAND = { width: 45, thickness: 1.5, slit: 8, ear: 16, earThickness: 4, gap: 0.1 };
export const FLANGE = { thickness: 8, hole: 9, land: 9, gap: 0.2, bolts: 3 };
export const BELLOWS = { length: 90, waves: 9, depth: 5, wall: 0.6, cuff: 15, gap: 0.25 };

/** Plain outlet that the joint takes hold of, so that it does not stand on the cone. */
export function leastOutlet(joint: OutletJoint | null): number {
  switch (joint) {
    case 'slip':
      return SLEEVE.short + SLEEVE.leastGrip;
    case 'band-clamp':
      return BAND.width / 2 + 1;
    case 'flange':
      return FLANGE.thickness + 2;
    case 'flexible':
      return BELLOWS.cuff;
    default:
      return 0;
  }
}
