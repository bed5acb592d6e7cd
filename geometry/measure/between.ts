/**
 * Everything that a rule, a pair of compasses and a protractor would tell of two things: the gap between their surfaces,
 * the distance between their centres or axes, the angle between their directions, and how far it is along a runner.
 * mm, radians, design frame.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Meshes } from '../check/meshes';
import type { Header } from '../header/resolve';
import { angleBetween, distance } from '../vector';
import { type Resolved, resolveThing } from './resolve';
import { pointConvex } from './shapes';
import { type Span, surfaceGap } from './surfaces';
import type { Thing } from './thing';

export type Measurement = {
  /** Surface to surface; null where that means nothing (a part of a runner against the whole) or cannot be had. */
  readonly gap: Span | null;
  /** Between two centres, a centre and an axis, or two axes where they are nearest; null where one is a scan. */
  readonly centres: Span | null;
  /** Between their directions, radians: up to π, or up to π/2 where one of them is an axis that points neither way. */
  readonly angle: number | null;
  /** Along the centerline between two places or parts of one runner; 0 where they touch or overlap. */
  readonly along: number | null;
};

/** Or `missing`: what keeps one of them from being measured, in words. */
export type MeasureAnswer = Measurement | { readonly missing: string };

/** @param meshes the files of mesh surroundings, as `check` takes them */
export function measureBetween(header: Header, a: Thing, b: Thing, meshes: Meshes = new Map()): MeasureAnswer {
  const one = resolveThing(header, a, meshes);
  if ('missing' in one) return one;
  const other = resolveThing(header, b, meshes);
  if ('missing' in other) return other;
  const sharesTube = overlap(one, other);
  return {
    gap: sharesTube ? null : surfaceGap(one.surface, other.surface),
    centres: sharesTube ? null : centres(one, other),
    angle: angle(one, other),
    along: along(one, other),
  };
}

/** Two stretches of one tube that share some of it are not apart at all. */
function overlap({ surface: s, along: p }: Resolved, { surface: t, along: q }: Resolved): boolean {
  if (!p || !q || p.runner !== q.runner || !('tube' in s) || !('tube' in t)) return false;
  return Math.min(p.to, q.to) > Math.max(p.from, q.from);
}

function centres({ core: a }: Resolved, { core: b }: Resolved): Span | null {
  if (!a || !b) return null;
  if ('at' in a && 'at' in b) return { value: distance(a.at, b.at), from: a.at, to: b.at };
  const surface = (core: typeof a) => ('at' in core ? { convex: pointConvex(core.at) } : { tube: core.line });
  return surfaceGap(surface(a), surface(b));
}

function angle({ direction: a }: Resolved, { direction: b }: Resolved): number | null {
  if (!a || !b) return null;
  const found = angleBetween(a.way, b.way);
  return a.twoWay || b.twoWay ? Math.min(found, Math.PI - found) : found;
}

function along({ along: a }: Resolved, { along: b }: Resolved): number | null {
  if (!a || !b || a.runner !== b.runner) return null;
  return Math.max(0, Math.max(a.from, b.from) - Math.min(a.to, b.to));
}

/** ΔX, ΔY, ΔZ from the first to the second. */
export const components = ({ from, to }: Span): Vec3 => [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
