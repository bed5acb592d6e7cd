/** What is asked of a mesh again and again, found in one walk over its corners and kept as long as they are. The file's own unit and frame. */
import { soupBox, type TriangleSoup } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';

export type Corners = readonly [low: Vec3, high: Vec3];

const boxes = new WeakMap<TriangleSoup, Corners>();

/** The upright box round it; round nothing it is the origin. */
export function boxOf(soup: TriangleSoup): Corners {
  const known = boxes.get(soup) ?? walked(soup);
  boxes.set(soup, known);
  return known;
}

/** For whoever was told by the worker that read it. */
export const knowBox = (soup: TriangleSoup, box: Corners): void => void boxes.set(soup, box);

function walked(soup: TriangleSoup): Corners {
  if (soup.length < 3) return [ORIGIN, ORIGIN];
  const [lx, ly, lz, hx, hy, hz] = soupBox(soup);
  return [
    [lx, ly, lz],
    [hx, hy, hz],
  ];
}

const ORIGIN: Vec3 = [0, 0, 0];
