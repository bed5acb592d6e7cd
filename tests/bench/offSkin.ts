/** How far the triangles of a tube's mesh stray from the true skins, sampled inside every triangle. mm. */
import { type Centerline, cross, dot, type Mesh, norm, type Segment, sub } from '../../geometry';
import type { Vec3 } from '../../shared/vec3';

/** Corners this near a skin belong to it; a triangle between skins is of an end. */
const ON_SKIN = 0.02;

/** Shares of the three corners: the middles of the sides, and of the whole. */
const SAMPLES = [
  [0.5, 0.5, 0],
  [0, 0.5, 0.5],
  [0.5, 0, 0.5],
  [1 / 3, 1 / 3, 1 / 3],
] as const;

/** @param inner radius of the bore */
export function offSkin({ positions, triangles }: Mesh, line: Centerline, outer: number, inner: number): number {
  let worst = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k): Vec3 => {
      const p = 3 * triangles[t + k]!;
      return [positions[p]!, positions[p + 1]!, positions[p + 2]!];
    }) as [Vec3, Vec3, Vec3];
    const skin = [outer, inner].find((radius) =>
      [a, b, c].every((p) => Math.abs(fromLine(line, p) - radius) < ON_SKIN),
    );
    if (skin === undefined) continue;
    for (const [u, v, w] of SAMPLES) {
      const p: Vec3 = [u * a[0] + v * b[0] + w * c[0], u * a[1] + v * b[1] + w * c[1], u * a[2] + v * b[2] + w * c[2]];
      worst = Math.max(worst, Math.abs(fromLine(line, p) - skin));
    }
  }
  return worst;
}

const fromLine = ({ segments }: Centerline, p: Vec3): number =>
  segments.reduce((least, segment) => Math.min(least, fromSegment(segment, p)), Number.POSITIVE_INFINITY);

function fromSegment(segment: Segment, p: Vec3): number {
  const off = sub(p, segment.start);
  const forward = dot(off, segment.direction);
  if (segment.kind === 'straight') {
    const beyond = forward - Math.min(Math.max(forward, 0), segment.length);
    return Math.sqrt(Math.max(0, dot(off, off) - forward * forward) + beyond * beyond);
  }
  const { inward, direction, radius, angle } = segment;
  const toCentre = radius - dot(off, inward);
  const aside = dot(off, cross(direction, inward));
  const turned = Math.atan2(forward, toCentre);
  if (turned >= 0 && turned <= angle) return Math.hypot(Math.hypot(forward, toCentre) - radius, aside);
  const end: Vec3 = [
    radius * (Math.sin(angle) * direction[0] + (1 - Math.cos(angle)) * inward[0]),
    radius * (Math.sin(angle) * direction[1] + (1 - Math.cos(angle)) * inward[1]),
    radius * (Math.sin(angle) * direction[2] + (1 - Math.cos(angle)) * inward[2]),
  ];
  return Math.min(norm(off), norm(sub(off, end)));
}
