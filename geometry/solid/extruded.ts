/** A plane figure with holes, drawn out square to its plane into a closed solid. mm. */
import { type Loop, loopArea, type Point2, sampleLoop } from '../plane/loop';
import { type Lifted, liftedSolid } from './lifted';
import { planeRegion } from './planeRegion';

/** Chords of the figure's arcs stray at most so far, mm: fine, so that the volume holds too. */
const SAGITTA = 0.004;

export function extrudedSolid(outline: Loop, holes: readonly Loop[], low: number, high: number): Lifted['mesh'] {
  const loops = [sampleLoop(outline, SAGITTA), ...holes.map((hole) => sampleLoop(hole, SAGITTA).toReversed())];
  const points = loops.flat();
  let next = 0;
  const rings = loops.map((loop) => loop.map(() => next++));
  const triangles = planeRegion(points, rings);
  return liftedSolid({ points, triangles }, () => low, () => high).mesh; // biome-ignore format: one line
}

export const extrudedVolume = (outline: Loop, holes: readonly Loop[], low: number, high: number): number =>
  (high - low) * (Math.abs(loopArea(outline)) - holes.reduce((sum, h) => sum + Math.abs(loopArea(h)), 0));

/** A closed ring at a height, as pairs of points one after the other. */
export const rimLines = (ring: readonly Point2[], z: number): number[] =>
  ring.flatMap(([x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    return [x, y, z, u, v, z];
  });

/** Every loop at every height, as pairs of points. */
export const rims = (loops: readonly Loop[], heights: readonly number[]): Float32Array =>
  Float32Array.from(
    loops.flatMap((loop) => {
      const ring = sampleLoop(loop, 0.05);
      return heights.flatMap((z) => rimLines(ring, z));
    }),
  );
