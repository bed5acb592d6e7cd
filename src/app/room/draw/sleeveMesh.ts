/** The surface of a sleeve over stretches of a tube: its outside, and a ring at each end down to the tube. mm. */
import { BufferAttribute, BufferGeometry } from 'three';
import { type Centerline, frames, pointAt } from '../../../../geometry';
import type { Runner } from '../../../../shared/design/types';

type Stretch = readonly [from: number, to: number];

const AROUND = 32;
/** Rings are about so far apart, mm: a bend looks round. */
const STEP = 6;

/** What is wrapped of a line, in its bounds: all of it where the design does not say. */
export function wrappedOf(line: Centerline, wrapped: Runner['wrapped']): readonly Stretch[] {
  const within = (wrapped ?? [[0, line.length]]).map(
    ([from, to]): Stretch => [Math.max(0, from), Math.min(line.length, to)],
  );
  return within.filter(([from, to]) => to > from);
}

export function sleeveGeometry(
  line: Centerline,
  tube: number,
  radius: number,
  stretches: readonly Stretch[],
): BufferGeometry {
  const positions: number[] = [];
  const normals: number[] = [];
  const indices: number[] = [];
  for (const [from, to] of stretches) {
    const count = Math.max(1, Math.ceil((to - from) / STEP));
    const stations = Array.from({ length: count + 1 }, (_, i) => pointAt(line, from + ((to - from) * i) / count));
    const rings = frames(stations);
    const ring = (at: (typeof rings)[number], r: number, facing: number) => {
      const first = positions.length / 3;
      for (let j = 0; j < AROUND; j++) {
        const c = Math.cos((2 * Math.PI * j) / AROUND);
        const s = Math.sin((2 * Math.PI * j) / AROUND);
        for (let k = 0; k < 3; k++) {
          const out = c * at.normal[k]! + s * at.side[k]!;
          positions.push(at.position[k]! + r * out);
          normals.push(facing === 0 ? out : facing * at.tangent[k]!);
        }
      }
      return first;
    };
    const stitch = (a: number, b: number) => {
      for (let j = 0; j < AROUND; j++) {
        const n = (j + 1) % AROUND;
        indices.push(a + j, a + n, b + j, b + j, a + n, b + n);
      }
    };
    const walls = rings.map((at) => ring(at, radius, 0));
    for (let i = 1; i < walls.length; i++) stitch(walls[i - 1]!, walls[i]!);
    const [first, last] = [rings[0]!, rings.at(-1)!];
    stitch(ring(first, tube, -1), ring(first, radius, -1));
    stitch(ring(last, radius, 1), ring(last, tube, 1));
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(positions), 3));
  geometry.setAttribute('normal', new BufferAttribute(Float32Array.from(normals), 3));
  geometry.setIndex(indices);
  geometry.computeBoundingSphere();
  return geometry;
}
