/**
 * The dimension line of a least clearance: the report tells how wide the gap is and where; this finds the two surface
 * points to draw it between. Balls strung along the axes stand in for tubes, so it is to look at; the number drawn
 * beside it is the report's. mm, in the design's frame.
 */
import { addScaled, distance, dot, type Header, lerp, type Margin, pointAt, sub, unit } from '../../../../geometry';
import type { Surrounding } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import type { Ball } from '../camera/fit';

export type GapLine = { readonly from: Vec3; readonly to: Vec3 };

/** Spacing of the balls along an axis, and how far from the report's place they are looked for, mm. */
const SPACING = 2;
const NEAR = 120;

export function gapLine(header: Header, margin: Margin): GapLine | null {
  const [a, b] = margin.between.map((id) => ballsOf(header, id, margin.at));
  const first = a ?? b;
  if (!first || first.length === 0) return null;
  const otherId = margin.between[a ? 1 : 0];
  const others = a ? b : null;
  const shape = header.surroundings.find((s) => s.id === otherId);
  let best: (GapLine & { gap: number }) | null = null;
  const offer = (ball: Ball, foot: Vec3, radius: number) => {
    const gap = distance(ball.at, foot) - ball.radius - radius;
    if (best && gap >= best.gap) return;
    const way = unit(sub(foot, ball.at));
    best = { gap, from: addScaled(ball.at, way, ball.radius), to: addScaled(foot, way, -radius) };
  };
  for (const ball of first) {
    if (others) for (const other of others) offer(ball, other.at, other.radius);
    else {
      const foot = shape && nearest(shape, ball.at);
      if (!foot) return null;
      offer(ball, foot.at, foot.radius);
    }
  }
  return best;
}

/** Balls of a runner or a collector near a place; null where the id is neither. */
function ballsOf(header: Header, id: string, near: Vec3): Ball[] | null {
  const runner = header.runners.find((r) => r.runner.id === id);
  const body = header.merges.get(id)?.body;
  const balls: Ball[] = [];
  if (runner) {
    const line = runner.centerline;
    if (!line) return null;
    for (let s = 0; s <= line.length; s += SPACING)
      balls.push({ at: pointAt(line, s).position, radius: runner.tubeRadius });
  } else if (body) {
    for (let s = 0; s <= body.length; s += SPACING) {
      const share = s / body.length;
      const radius = body.startRadius + share * (body.endRadius - body.startRadius);
      balls.push({ at: addScaled(body.position, body.axis, s), radius });
    }
  } else return null;
  const close = balls.filter((b) => distance(b.at, near) < NEAR + b.radius);
  return close.length > 0 ? close : balls;
}

/** The shape's point nearest to `p`, or for a capsule its axis' with the radius; meshes are left to the report's place. */
function nearest(shape: Surrounding, p: Vec3): Ball | null {
  if (shape.shape === 'box') {
    const at = p.map((x, i) => Math.min(Math.max(x, shape.min[i]!), shape.max[i]!)) as unknown as Vec3;
    return { at, radius: 0 };
  }
  if (shape.shape === 'plane') {
    const way = unit(shape.normal);
    return { at: addScaled(p, way, -dot(sub(p, shape.position), way)), radius: 0 };
  }
  if (shape.shape === 'capsule' || shape.shape === 'cylinder') {
    const axis = sub(shape.b, shape.a);
    const t = dot(sub(p, shape.a), axis) / (dot(axis, axis) || 1);
    return { at: lerp(shape.a, shape.b, Math.min(1, Math.max(0, t))), radius: shape.radius };
  }
  return null;
}
