/**
 * Lines to start a search from: the tangent points of bends, drawn by seeded chance between two ends, roughly right only.
 * mm, radians.
 */
import type { Tooling } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { addScaled, dot, lerp, sub } from '../vector';
import type { Ends } from './report';

/** Start, tangent intersections, end; one radius for each intersection. */
export type Line = { readonly points: readonly Vec3[]; readonly radii: readonly number[] };

export type Random = () => number;

/** End legs and offsets, in bend radii beyond the least straight: from tight to roomy, evenly by ratio. */
const LEAST_LEG = 0.15;
const MOST_LEG = 7;
const LEAST_OFFSET = 0.2;
const MOST_OFFSET = 9;

/** One line with `bends` bends. @param bends at least two */
export function sampled({ start, end }: Ends, tooling: Tooling, radius: number, bends: number, random: Random): Line {
  const leg = (least: number): number => least + radius * between(LEAST_LEG, MOST_LEG, random);
  const A = addScaled(start.position, start.direction, leg(tooling.firstStraight));
  const B = addScaled(end.position, end.direction, -leg(tooling.lastStraight));
  const inner = Array.from({ length: bends - 2 }, (_, k): Vec3 => {
    const t = (k + 1) / (bends - 1) + 0.5 * (random() - 0.5);
    return addScaled(lerp(A, B, t), anyDirection(random), radius * between(LEAST_OFFSET, MOST_OFFSET, random));
  });
  return lineThrough([start.position, A, ...inner, B, end.position], radius);
}

/** The same line with one of its points elsewhere, up to `by` away; the outer ones keep to their rays. */
export function nudged({ points, radii }: Line, { start, end }: Ends, by: number, random: Random): Line {
  const k = 1 + Math.floor(random() * radii.length);
  const shift = by * (2 * random() - 1);
  const along = k === 1 ? start.direction : k === radii.length ? end.direction : anyDirection(random);
  return { points: points.map((p, i) => (i === k ? addScaled(p, along, shift) : p)), radii };
}

/** With one bend, where the two end rays come nearest; null where they never meet ahead of both ends. */
export function oneBend({ start, end }: Ends, radius: number): Line | null {
  const [u, v] = [start.direction, end.direction];
  const across = sub(end.position, start.position);
  const c = dot(u, v);
  const squared = 1 - c * c;
  if (squared < 1e-9) return null;
  const a = (dot(across, u) - c * dot(across, v)) / squared;
  const b = (dot(across, v) - c * dot(across, u)) / squared;
  if (a <= 0 || b <= 0) return null;
  return lineThrough([start.position, addScaled(start.position, u, a), end.position], radius);
}

/**
 * Far out toward `away` and back, `far` from the ends' legs: two bends where the legs leave, one or two where it turns round.
 */
export function farOut(
  { start, end }: Ends,
  tooling: Tooling,
  radius: number,
  bends: number,
  away: Vec3,
  far: number,
): Line {
  const A = addScaled(start.position, start.direction, tooling.firstStraight + 1.2 * radius);
  const B = addScaled(end.position, end.direction, -tooling.lastStraight - 1.2 * radius);
  if (bends === 2) {
    const out = Math.max(0, far);
    return lineThrough(
      [start.position, addScaled(A, start.direction, out), addScaled(B, end.direction, -out), end.position],
      radius,
    );
  }
  if (bends === 3) {
    const F = addScaled(lerp(A, B, 0.5), away, far);
    return lineThrough([start.position, A, F, B, end.position], radius);
  }
  const wide = 2.2 * radius + tooling.betweenStraight;
  const across = sub(B, A);
  const flat = addScaled(across, away, -dot(across, away));
  const apart = Math.hypot(...flat);
  // Ends that lie one behind the other, seen from afar, are spread to leave room for the turn.
  const spread = apart < wide && apart > 1e-6 ? (wide - apart) / (2 * apart) : 0;
  const F = addScaled(addScaled(A, flat, -spread), away, far);
  const G = addScaled(addScaled(A, flat, 1 + spread), away, far);
  return lineThrough([start.position, A, F, G, B, end.position], radius);
}

const lineThrough = (points: readonly Vec3[], radius: number): Line => ({
  points,
  radii: points.slice(2).map(() => radius),
});

const between = (low: number, high: number, random: Random): number => low * (high / low) ** random();

function anyDirection(random: Random): Vec3 {
  const z = 2 * random() - 1;
  const around = 2 * Math.PI * random();
  const r = Math.sqrt(1 - z * z);
  return [r * Math.cos(around), r * Math.sin(around), z];
}
