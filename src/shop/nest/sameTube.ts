/** Which stock a tube can be cut from: sizes as near as they are sold to, and the same material; none named is mild steel. mm. */
import { DEFAULT_MATERIAL } from '../../../geometry/index';
import type { Tube } from '../../../shared/design/types';

/** Sizes that differ by no more are the same tube, the same radius. */
const SAME_SIZE = 0.05;
/** A piece whose arc is this near to a stock bend's is the whole of it: no saw or eye tells. Degrees. */
export const SAME_ANGLE = 0.05;
const ROUNDING = 1e-9;
export const alike = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_SIZE + ROUNDING;

export const sameTube = (a: Tube, b: Tube): boolean =>
  alike(a.outsideDiameter, b.outsideDiameter) &&
  alike(a.wall, b.wall) &&
  (a.material ?? DEFAULT_MATERIAL) === (b.material ?? DEFAULT_MATERIAL);
