/** The least gap between a moved solid and what stands still, by halving the solid's cells. mm. */
import type { Vec3 } from '../../shared/vec3';
import type { Cell } from './cells';
import type { Matrix } from './pose';

/** Distance of a place to what stands still; may say Infinity where it is not below `below`. Changes no faster than one walks. */
export type Distance = (x: number, y: number, z: number, below: number) => number;

export type Found = {
  /** Never more than the true gap but for what the smallest cells allow; the limit where nothing is nearer. */
  readonly gap: number;
  readonly at: Vec3;
};

export type Fineness = {
  /** The gap is this exact at least near contact, mm. */
  readonly fine: number;
  /** And elsewhere to this share of itself. */
  readonly share: number;
  /** Cells of plates and collectors whose ball is no larger than this are not halved, and count as all of their ball, mm. */
  readonly whole: number;
};

export const EXACT: Fineness = { fine: 0.02, share: 0.1, whole: 0 };
/** For finding a way: plates and collectors are taken as up to so much larger than they are. */
export const ROUGH: Fineness = { fine: 0.3, share: 0.35, whole: 2 };

/**
 * @param limit gaps from here on are all the same
 * @param enough once a gap is known to be below this, no lesser one is sought
 */
export function leastGap(
  root: Cell,
  m: Matrix,
  f: Distance,
  limit: number,
  { fine, share, whole }: Fineness,
  enough = Number.NEGATIVE_INFINITY,
): Found {
  let best = limit;
  let done = false;
  let [bx, by, bz] = [m[9]!, m[10]!, m[11]!];
  const valueAt = (c: Cell): number => {
    const x = m[0]! * c.x + m[1]! * c.y + m[2]! * c.z + m[9]!;
    const y = m[3]! * c.x + m[4]! * c.y + m[5]! * c.z + m[10]!;
    const z = m[6]! * c.x + m[7]! * c.y + m[8]! * c.z + m[11]!;
    return f(x, y, z, best + c.outer);
  };
  const note = (c: Cell, gap: number): void => {
    best = gap;
    bx = m[0]! * c.x + m[1]! * c.y + m[2]! * c.z + m[9]!;
    by = m[3]! * c.x + m[4]! * c.y + m[5]! * c.z + m[10]!;
    bz = m[6]! * c.x + m[7]! * c.y + m[8]! * c.z + m[11]!;
  };
  const search = (c: Cell, value: number): void => {
    if (done || value - c.outer >= best) return;
    const most = value - c.inner;
    if (most < enough) {
      note(c, most);
      done = true;
      return;
    }
    const exact = c.outer <= whole || c.outer - c.inner <= Math.max(fine, share * most);
    const parts = exact ? null : c.parts();
    if (!parts) {
      const told = exact ? value - c.outer : value - Math.max(0, c.inner);
      if (told < best) note(c, told);
      return;
    }
    const [a, b] = parts;
    if (!a) return;
    if (!b) {
      search(a, valueAt(a));
      return;
    }
    const [va, vb] = [valueAt(a), valueAt(b)];
    if (va - a.outer <= vb - b.outer) {
      search(a, va);
      search(b, vb);
    } else {
      search(b, vb);
      search(a, va);
    }
  };
  search(root, valueAt(root));
  return { gap: best, at: [bx, by, bz] };
}
