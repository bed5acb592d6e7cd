/**
 * Distances the slow way, to hold the kernel's against: whole surfaces cut into ever smaller patches, keeping every patch
 * that could still hold the least value. Nothing here is shared with the kernel's searches: no chords, no golden
 * sections, no stationary points. The answer is at most `WITHIN` mm above the true least value, never below it. mm.
 */
import type { Centerline, Segment } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';

export const WITHIN = 0.02;
/** Overlaps deeper than this are not measured to the end: there only the sign counts. */
const DEEP = -1;

export type Patch = {
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
  /** How far a point can move for each unit of either parameter, at most. */
  readonly speed: readonly [number, number];
  readonly point: (u: number, v: number) => Vec3;
};
/** Any function that changes by no more than a point moves: signed distances are. */
export type Distance = (p: Vec3) => number;

type Cell = { readonly patch: Patch; readonly u: number; readonly v: number; readonly du: number; readonly dv: number };

/** Least value of `f` over all patches. */
export function leastOver(patches: readonly Patch[], f: Distance): number {
  let best = Number.POSITIVE_INFINITY;
  let cells: Cell[] = patches.map(
    (patch): Cell => ({
      patch,
      u: (patch.low[0] + patch.high[0]) / 2,
      v: (patch.low[1] + patch.high[1]) / 2,
      du: (patch.high[0] - patch.low[0]) / 2,
      dv: (patch.high[1] - patch.low[1]) / 2,
    }),
  );
  while (cells.length > 0 && best > DEEP) {
    const values = cells.map(({ patch, u, v }) => f(patch.point(u, v)));
    for (const value of values) best = Math.min(best, value);
    cells = cells.flatMap((cell, i) => (values[i]! - reach(cell) < best - WITHIN ? quarters(cell) : []));
  }
  return best;
}

const reach = ({ patch, du, dv }: Cell): number => patch.speed[0] * du + patch.speed[1] * dv;

/** Halves the way along which the patch is longer, or both where they are alike. */
function quarters({ patch, u, v, du, dv }: Cell): Cell[] {
  const [a, b] = [patch.speed[0] * du, patch.speed[1] * dv];
  const us = a >= b / 2 ? [u - du / 2, u + du / 2] : [u];
  const vs = b >= a / 2 ? [v - dv / 2, v + dv / 2] : [v];
  return us.flatMap((x) =>
    vs.map((y) => ({ patch, u: x, v: y, du: us.length > 1 ? du / 2 : du, dv: vs.length > 1 ? dv / 2 : dv })),
  );
}

const plus = (a: Vec3, b: Vec3, k: number): Vec3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Vec3, b: Vec3): Vec3 => plus(a, b, -1);
const size = (a: Vec3): number => Math.sqrt(dot(a, a));
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vec3): Vec3 => plus([0, 0, 0], a, 1 / size(a));

/** Position, travel and a pair of unit vectors square to it, at `along` mm of a segment. */
function station(segment: Segment, along: number): { c: Vec3; t: Vec3; n: Vec3; b: Vec3 } {
  if (segment.kind === 'straight') {
    const n = squareTo(segment.direction);
    return {
      c: plus(segment.start, segment.direction, along),
      t: segment.direction,
      n,
      b: cross(segment.direction, n),
    };
  }
  const { start, direction, inward, radius } = segment;
  const phi = along / radius;
  const centre = plus(start, inward, radius);
  const n = plus(plus([0, 0, 0], inward, Math.cos(phi)), direction, -Math.sin(phi));
  const t = plus(plus([0, 0, 0], direction, Math.cos(phi)), inward, Math.sin(phi));
  return { c: plus(centre, n, -radius), t, n, b: cross(direction, inward) };
}

function squareTo(d: Vec3): Vec3 {
  return unit(cross(d, Math.abs(d[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0]));
}

/** Where on each segment a stretch from one station to another lies. */
const within = (line: Centerline, from: number, to: number): { segment: Segment; low: number; high: number }[] =>
  line.segments
    .map((segment) => ({
      segment,
      low: Math.max(0, from - segment.station),
      high: Math.min(segment.length, to - segment.station),
    }))
    .filter(({ low, high }) => high - low > 1e-9);

/** The skin of a stretch of tube: its side, and its two flat ends. */
export function tubePatches(line: Centerline, radius: number, from = 0, to = line.length): Patch[] {
  const parts = within(line, from, to);
  const sides = parts.map(({ segment, low, high }): Patch => {
    const swing = segment.kind === 'arc' ? 1 + radius / segment.radius : 1;
    return {
      low: [low, 0],
      high: [high, 2 * Math.PI],
      speed: [swing, radius],
      point: (s, phi) => {
        const { c, n, b } = station(segment, s);
        return plus(plus(c, n, radius * Math.cos(phi)), b, radius * Math.sin(phi));
      },
    };
  });
  const [first, last] = [parts[0]!, parts.at(-1)!];
  return [
    ...sides,
    discPatch(station(first.segment, first.low), radius),
    discPatch(station(last.segment, last.high), radius),
  ];
}

const discPatch = ({ c, n, b }: { c: Vec3; n: Vec3; b: Vec3 }, radius: number): Patch => ({
  low: [0, 0],
  high: [radius, 2 * Math.PI],
  speed: [1, radius],
  point: (rho, phi) => plus(plus(c, n, rho * Math.cos(phi)), b, rho * Math.sin(phi)),
});

/** Distance of a point to a stretch of tube, flat ends and all; inside, how deep under the side (negative). */
export function toTube(line: Centerline, radius: number, from = 0, to = line.length): Distance {
  const parts = within(line, from, to);
  return (p) => {
    let least = Number.POSITIVE_INFINITY;
    for (const { segment, low, high } of parts) {
      const s = nearestOn(segment, p);
      const { c } = station(segment, s);
      if (s >= low && s <= high) least = Math.min(least, size(minus(p, c)) - radius);
      else for (const end of [low, high]) least = Math.min(least, toDisc(p, station(segment, end), radius));
    }
    return least;
  };
}

/** Station on the endless line or circle that the segment is part of; on a circle the one nearest to the segment's middle. */
function nearestOn(segment: Segment, p: Vec3): number {
  const q = minus(p, segment.start);
  if (segment.kind === 'straight') return dot(q, segment.direction);
  const x = dot(q, segment.direction);
  const y = segment.radius - dot(q, segment.inward);
  const angle = Math.atan2(x, y);
  const turn = 2 * Math.PI;
  return segment.radius * (angle + turn * Math.round((segment.angle / 2 - angle) / turn));
}

function toDisc(p: Vec3, { c, t }: { c: Vec3; t: Vec3 }, radius: number): number {
  const q = minus(p, c);
  const height = dot(q, t);
  const across = size(plus(q, t, -height));
  return Math.hypot(height, Math.max(0, across - radius));
}

type Stretch = { readonly line: Centerline; readonly radius: number; readonly from?: number; readonly to?: number };

/** From the skin of the first; where the second could lie wholly inside the first, ask the other way round as well. */
export const tubeTube = (a: Stretch, b: Stretch): number =>
  leastOver(tubePatches(a.line, a.radius, a.from, a.to), toTube(b.line, b.radius, b.from, b.to));

/** Centerline distance of parts at least `apart` from each other along it, less the diameter. */
export function self(line: Centerline, radius: number, apart: number): number {
  const at = (s: number): Vec3 => {
    const segment = line.segments.find((x) => s <= x.station + x.length) ?? line.segments.at(-1)!;
    return station(segment, Math.min(segment.length, s - segment.station)).c;
  };
  const pairs: Patch = {
    low: [0, apart],
    high: [line.length - apart, line.length],
    speed: [2, 1],
    // The pair's separation stands in for a point, so that the search serves this as well.
    point: (s, gap) => minus(at(Math.min(line.length, s + gap)), at(s)),
  };
  return leastOver([pairs], size) - 2 * radius;
}

export const trianglePatch = (a: Vec3, b: Vec3, c: Vec3): Patch => ({
  low: [0, 0],
  high: [1, 1],
  speed: [size(minus(b, a)) + size(minus(c, b)), size(minus(c, b))],
  point: (u, v) => plus(plus(a, minus(b, a), u), minus(c, b), u * v),
});

type Cone = { position: Vec3; axis: Vec3; length: number; startRadius: number; endRadius: number };

export function frustumPatches({ position, axis, length, startRadius, endRadius }: Cone): Patch[] {
  const n = squareTo(axis);
  const b = cross(axis, n);
  const ring = (h: number, rho: number, phi: number): Vec3 =>
    plus(plus(plus(position, axis, h), n, rho * Math.cos(phi)), b, rho * Math.sin(phi));
  const slope = (endRadius - startRadius) / length;
  return [
    {
      low: [0, 0],
      high: [length, 2 * Math.PI],
      speed: [Math.hypot(1, slope), Math.max(startRadius, endRadius)],
      point: (h, phi) => ring(h, startRadius + slope * h, phi),
    },
    discPatch({ c: position, n, b }, startRadius),
    discPatch({ c: plus(position, axis, length), n, b }, endRadius),
  ];
}

export const toBox =
  (low: Vec3, high: Vec3): Distance =>
  (p) => {
    const nearest = p.map((x, k) => Math.min(high[k]!, Math.max(low[k]!, x))) as unknown as Vec3;
    const outside = size(minus(p, nearest));
    return outside > 0 ? outside : -Math.min(...p.flatMap((x, k) => [x - low[k]!, high[k]! - x]));
  };

/** By ternary search for the nearest place on the axis. */
export const toCapsule =
  (a: Vec3, b: Vec3, radius: number): Distance =>
  (p) => {
    let [low, high] = [0, 1];
    const at = (t: number): number => size(minus(p, plus(a, minus(b, a), t)));
    for (let i = 0; i < 60; i++) {
      const [x, y] = [low + (high - low) / 3, high - (high - low) / 3];
      if (at(x) <= at(y)) high = y;
      else low = x;
    }
    return at(low) - radius;
  };

/** In the half-plane through the axis: the nearest side of the trapezium, negative within it. */
export const toFrustum =
  ({ position, axis, length, startRadius, endRadius }: Cone): Distance =>
  (p) => {
    const q = minus(p, position);
    const h = dot(q, axis);
    const rho = size(plus(q, axis, -h));
    const corners = [
      [0, 0],
      [startRadius, 0],
      [endRadius, length],
      [0, length],
    ] as const;
    const sides = [0, 1, 2].map((i) => {
      const [a, b] = [corners[i]!, corners[i + 1]!];
      const e = [b[0] - a[0], b[1] - a[1]] as const;
      const along = ((rho - a[0]) * e[0] + (h - a[1]) * e[1]) / (e[0] ** 2 + e[1] ** 2);
      const t = Math.min(1, Math.max(0, along));
      return Math.hypot(rho - a[0] - t * e[0], h - a[1] - t * e[1]);
    });
    const isInside = h > 0 && h < length && rho < startRadius + ((endRadius - startRadius) * h) / length;
    return isInside ? -Math.min(...sides) : Math.min(...sides);
  };
