/**
 * A collector as a picture: from the outline of its tubes it narrows to a round outlet, hollow at the end. It stays
 * inside the frustum by which the contract measures clearance, and is only drawn: what is welded comes from the solids.
 * mm, in the design's frame.
 */
import { mergeAxes, type ResolvedMerge } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { lobedOutline } from './lobes';

export type SurfaceMesh = {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly shades: Uint8Array;
  readonly indices: Uint32Array;
  /** How many of `indices`, from the first, are the outer wall. */
  readonly outerCount: number;
  readonly seams: Float32Array;
};

const AROUND = 96;
const ALONG = 14;
/** Share of the length in which the body narrows; the rest is the round outlet. */
const NARROWING = 0.72;
/** Narrows faster at first, so that it meets the outlet without a visible kink and stays inside the straight frustum. */
const EASE = 1.5;
const BORE_SHADE = 60;
/** Between the tubes it lies in their shade. */
const CAP_SHADE = 120;

type Ring = readonly Vec3[];

export function collectorMesh(merge: ResolvedMerge): SurfaceMesh {
  const { u, v, w } = mergeAxes(merge.merge);
  const { position } = merge.merge;
  const place = (along: number, angle: number, r: number): Vec3 => {
    const [c, s] = [r * Math.cos(angle), r * Math.sin(angle)];
    return [0, 1, 2].map((i) => position[i]! + along * w[i]! + c * u[i]! + s * v[i]!) as unknown as Vec3;
  };
  const angles = Array.from({ length: AROUND }, (_, j) => (2 * Math.PI * j) / AROUND);
  const circles = merge.inlets.map(({ position: p }) => {
    const d = [0, 1, 2].map((i) => p[i]! - position[i]!);
    const on = (axis: Vec3) => d[0]! * axis[0] + d[1]! * axis[1] + d[2]! * axis[2];
    return { x: on(u), y: on(v), radius: merge.inletOutsideDiameter / 2 };
  });
  const lobes = lobedOutline(circles, angles);
  const { length, endRadius } = merge.body;
  const bore = Math.max(endRadius - merge.wall, endRadius * 0.1);
  const ring = (along: number, radius: (j: number) => number) => angles.map((a, j) => place(along, a, radius(j)));

  const wall: Ring[] = [];
  for (let i = 0; i <= ALONG; i++) {
    const share = 1 - (1 - i / ALONG) ** EASE;
    wall.push(ring((i / ALONG) * NARROWING * length, (j) => lobes[j]! + share * (endRadius - lobes[j]!)));
  }
  wall.push(ring(length, () => endRadius));

  const mesh = builder();
  mesh.skin(wall, 255);
  const outerCount = mesh.indexCount();
  mesh.skin([ring(0, () => 0), wall[0]!], CAP_SHADE);
  mesh.skin([wall.at(-1)!, ring(length, () => bore)], 255);
  mesh.skin([ring(length, () => bore), ring(length * NARROWING, () => bore)], BORE_SHADE);
  mesh.skin([ring(length * NARROWING, () => bore), ring(length * NARROWING, () => 0)], BORE_SHADE / 2);
  const seams = [wall[0]!, wall[ALONG]!, wall.at(-1)!].flatMap((r) =>
    r.flatMap((p, j) => [...p, ...r[(j + 1) % AROUND]!]),
  );
  return { ...mesh.done(), outerCount, seams: Float32Array.from(seams) };
}

/** Gathers skins stretched over rings of equal count, each with normals of its own so that corners stay crisp. */
function builder() {
  const positions: number[] = [];
  const normals: number[] = [];
  const shades: number[] = [];
  const indices: number[] = [];
  return {
    indexCount: () => indices.length,
    /** Rings run right-handed about the way from the first to the last when the skin faces outward. */
    skin(rings: readonly Ring[], shade: number) {
      const base = positions.length / 3;
      rings.forEach((ring, i) => {
        ring.forEach((p, j) => {
          positions.push(...p);
          normals.push(...slope(rings, i, j));
          shades.push(shade, shade, shade);
        });
      });
      for (let i = 0; i + 1 < rings.length; i++) {
        for (let j = 0; j < AROUND; j++) {
          const k = (j + 1) % AROUND;
          const [a, b] = [base + i * AROUND, base + (i + 1) * AROUND];
          indices.push(a + j, a + k, b + j, b + j, a + k, b + k);
        }
      }
    },
    done: () => ({
      positions: Float32Array.from(positions),
      normals: Float32Array.from(normals),
      shades: Uint8Array.from(shades),
      indices: Uint32Array.from(indices),
    }),
  };
}

/** Normal of the skin at ring i, corner j, from its neighbours; a ring shrunk to a point borrows from the next. */
function slope(rings: readonly Ring[], i: number, j: number): Vec3 {
  const [before, after] = [rings[Math.max(i - 1, 0)]!, rings[Math.min(i + 1, rings.length - 1)]!];
  const wide = [rings[i]!, after, before].find((r) => far(r[0]!, r[AROUND / 2]!)) ?? rings[i]!;
  const [p, q] = [wide[(j + AROUND - 1) % AROUND]!, wide[(j + 1) % AROUND]!];
  const [a, b] = [before[j]!, after[j]!];
  const e = [q[0] - p[0], q[1] - p[1], q[2] - p[2]] as const;
  const f = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  const n = [e[1] * f[2] - e[2] * f[1], e[2] * f[0] - e[0] * f[2], e[0] * f[1] - e[1] * f[0]] as const;
  const k = Math.hypot(...n) || 1;
  return [n[0] / k, n[1] / k, n[2] / k];
}

const far = (a: Vec3, b: Vec3) => a.some((x, i) => Math.abs(x - b[i]!) > 0);
