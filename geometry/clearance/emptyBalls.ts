/**
 * The least distance from a curve to a mesh, from point queries alone: about each place that was asked the ball out to the
 * nearest triangle is empty, and between two places the two balls leave hardly more room than what was found. So a stretch is
 * halved only where it could still hold less, and scans of millions of triangles cost little more than small ones. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import { GAP_RESOLUTION } from './gap';
import type { TriangleTree } from './triangleTree';

/** A stretch of curve of which places can be asked by station. */
export type Curve = {
  readonly from: number;
  readonly to: number;
  /** Of its bend; 0 where it is straight. */
  readonly radius: number;
  /** Writes a place. */
  readonly place: (station: number, into: Float64Array) => void;
};

export type Least = { readonly distance: number; readonly station: number; readonly at: Vec3 };

/** Between places asked first, mm. */
const STEP = 25;

/** @returns null where no triangle is nearer than `below` */
export function leastToMesh(curves: readonly Curve[], tree: TriangleTree, below: number): Least | null {
  if (!(below > 0)) return null;
  const p = new Float64Array(3);
  let least = below;
  let station = Number.NaN;
  let at: Vec3 | null = null;
  /** Nothing is asked beyond what an empty ball of a whole step could still tell: what is further is as good as there. */
  const ask = (curve: Curve, s: number, within: number): number => {
    curve.place(s, p);
    const found = tree.nearest(p[0]!, p[1]!, p[2]!, within);
    if (found < least) {
      least = found;
      station = s;
      at = [p[0]!, p[1]!, p[2]!];
    }
    return Math.min(found, within);
  };
  const search = (curve: Curve, s0: number, d0: number, s1: number, d1: number): void => {
    const long = s1 - s0;
    if (lowest(d0, d1, long, curve.radius) >= least - GAP_RESOLUTION) return;
    const middle = (s0 + s1) / 2;
    const d = ask(curve, middle, Math.min(d0, d1) + long / 2 + ROUNDING);
    const first = d0 <= d1;
    if (first) search(curve, s0, d0, middle, d);
    search(curve, middle, d, s1, d1);
    if (!first) search(curve, s0, d0, middle, d);
  };
  const pieces: { curve: Curve; s0: number; d0: number; s1: number; d1: number; low: number }[] = [];
  for (const curve of curves) {
    const count = Math.max(1, Math.ceil((curve.to - curve.from) / STEP));
    const step = (curve.to - curve.from) / count;
    let s0 = curve.from;
    let d0 = ask(curve, s0, below + STEP);
    for (let k = 1; k <= count; k++) {
      const s1 = k === count ? curve.to : curve.from + k * step;
      const d1 = ask(curve, s1, Math.min(below + STEP, d0 + step + ROUNDING));
      pieces.push({ curve, s0, d0, s1, d1, low: lowest(d0, d1, step, curve.radius) });
      s0 = s1;
      d0 = d1;
    }
  }
  // What can hold the least first, so that the others can be dropped against it.
  pieces.sort((a, b) => a.low - b.low);
  for (const { curve, s0, d0, s1, d1 } of pieces) search(curve, s0, d0, s1, d1);
  return at && { distance: least, station, at };
}

/** Far under the resolution, far over what a square root loses. */
const ROUNDING = 1e-9;

/**
 * A distance than which no place of a stretch has less: along its chord the two empty balls meet in a circle, and no place
 * between their middles is nearer to what lies outside both than that circle's radius. The curve strays from its chord.
 */
function lowest(d0: number, d1: number, long: number, radius: number): number {
  const plain = (d0 + d1 - long) / 2;
  const stray = radius > 0 ? radius * (1 - Math.cos(long / radius / 2)) : 0;
  const chord = radius > 0 ? 2 * radius * Math.sin(Math.min(Math.PI, long / radius) / 2) : long;
  if (chord <= 0) return plain;
  const x = (chord * chord + d0 * d0 - d1 * d1) / (2 * chord);
  if (x <= 0 || x >= chord) return Math.max(plain, Math.min(d0, d1) - stray);
  const squared = d0 * d0 - x * x;
  return squared <= 0 ? plain : Math.max(plain, Math.sqrt(squared) - stray);
}
