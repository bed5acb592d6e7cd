/** What is asked of a mesh again and again, found in one walk over its corners and kept as long as they are. The file's own unit and frame. */
import type { TriangleSoup } from '../../../geometry';
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

function walked(soup: ArrayLike<number>): Corners {
  if (soup.length < 3) return [ORIGIN, ORIGIN];
  let [x0, y0, z0] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [x1, y1, z1] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i + 2 < soup.length; i += 3) {
    const x = soup[i]!;
    const y = soup[i + 1]!;
    const z = soup[i + 2]!;
    if (x < x0) x0 = x;
    if (x > x1) x1 = x;
    if (y < y0) y0 = y;
    if (y > y1) y1 = y;
    if (z < z0) z0 = z;
    if (z > z1) z1 = z;
  }
  return [
    [x0, y0, z0],
    [x1, y1, z1],
  ];
}

const ORIGIN: Vec3 = [0, 0, 0];
