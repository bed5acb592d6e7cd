/**
 * The nearest eye that sees every ball, for a given direction of looking: closed form, no search. In the eye's axes each
 * side of the picture is one linear rule on the eye's place, so the tightest ball per side decides. mm, radians.
 */
import { addScaled, dot, scale } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { ANGLE_OF_VIEW, eyeAxes, NEAREST, type View } from './view';

export type Ball = { readonly at: Vec3; readonly radius: number };

/** Free border on each side, as a share of the picture's half width or half height. */
export type Border = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };

export const EVEN_BORDER: Border = { left: 0.1, right: 0.1, top: 0.1, bottom: 0.1 };

/** @param aspect width over height */
export function fitBalls(
  balls: readonly Ball[],
  look: Pick<View, 'yaw' | 'pitch' | 'parallel'>,
  aspect: number,
  border: Border = EVEN_BORDER,
): View {
  const { right, up, back } = eyeAxes(look);
  if (balls.length === 0) return { ...look, target: [0, 0, 0], distance: 1000 };
  const half = Math.tan(ANGLE_OF_VIEW / 2);
  const depths = balls.map((b) => dot(b.at, back));
  const middle = (Math.min(...depths) + Math.max(...depths)) / 2;

  const across = side(balls, right, back, half * aspect, border.left, border.right, look.parallel ? middle : null);
  const along = side(balls, up, back, half, border.bottom, border.top, look.parallel ? middle : null);
  const eye = Math.max(across.depth, along.depth);
  const distance = Math.max(NEAREST, eye - middle);
  const x = across.place(eye);
  const y = along.place(eye);
  const target = addScaled(addScaled(scale(right, x), up, y), back, middle);
  return { ...look, target, distance };
}

/**
 * One axis of the picture. For an eye at (c, z) a ball at (p, q) is inside while ±(p − c) + r·k ≤ (z − q)·slope.
 * @param low @param high borders on the two sides
 * @param flat parallel projection: every ball counts as lying at this depth
 */
function side(
  balls: readonly Ball[],
  axis: Vec3,
  back: Vec3,
  slope: number,
  low: number,
  high: number,
  flat: number | null,
): { depth: number; place(eye: number): number } {
  const [lowSlope, highSlope] = [slope * (1 - low), slope * (1 - high)];
  let most = Number.NEGATIVE_INFINITY;
  let least = Number.NEGATIVE_INFINITY;
  for (const { at, radius } of balls) {
    const p = dot(at, axis);
    const q = flat ?? dot(at, back);
    const swell = (s: number) => (flat === null ? radius * Math.hypot(1, s) : radius);
    most = Math.max(most, p + q * highSlope + swell(highSlope));
    least = Math.max(least, -p + q * lowSlope + swell(lowSlope));
  }
  return {
    depth: (most + least) / (lowSlope + highSlope),
    // With room to spare on this axis the slack is shared evenly.
    place: (eye) => (most - eye * highSlope - (least - eye * lowSlope)) / 2,
  };
}
