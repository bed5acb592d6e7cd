/** A plane figure with holes, drawn out square to its plane into a closed solid. mm. Figures are cut into triangles by earcut. */
import earcut from 'earcut';
import { type Loop, loopArea, type Point2, sampleLoop } from '../plane/loop';
import { type Lifted, liftedSolid } from './lifted';

/** Chords of the figure's arcs stray at most so far, mm: fine, so that the volume holds too. */
const SAGITTA = 0.004;

export function extrudedSolid(outline: Loop, holes: readonly Loop[], low: number, high: number): Lifted['mesh'] {
  const rings = [outline, ...holes].map((loop) => sampleLoop(loop, SAGITTA));
  const points = rings.flat();
  const starts = rings.slice(1).map((_, k) => rings.slice(0, k + 1).reduce((n, ring) => n + ring.length, 0));
  const corners = earcut(points.flat(), starts);
  const triangles = Array.from({ length: corners.length / 3 }, (_, t) => {
    const [a, b, c] = [corners[3 * t]!, corners[3 * t + 1]!, corners[3 * t + 2]!];
    return turnsLeft(points[a]!, points[b]!, points[c]!) ? ([a, b, c] as const) : ([a, c, b] as const);
  });
  return liftedSolid({ points, triangles }, () => low, () => high).mesh; // biome-ignore format: one line
}

const turnsLeft = (a: Point2, b: Point2, c: Point2): boolean =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;

export const extrudedVolume = (outline: Loop, holes: readonly Loop[], low: number, high: number): number =>
  (high - low) * (Math.abs(loopArea(outline)) - holes.reduce((sum, h) => sum + Math.abs(loopArea(h)), 0));

/** Both rims of every loop, as pairs of points. */
export function rims(loops: readonly Loop[], heights: readonly number[]): Float32Array {
  const pairs = loops.flatMap((loop) => {
    const ring = sampleLoop(loop, 0.05);
    return heights.flatMap((z) =>
      ring.flatMap(([x, y], i) => {
        const [u, v] = ring[(i + 1) % ring.length]!;
        return [x, y, z, u, v, z];
      }),
    );
  });
  return Float32Array.from(pairs);
}
