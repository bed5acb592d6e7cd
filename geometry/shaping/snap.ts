/**
 * Snapping a held place to what lies near: lines first, then up to three planes together, then round bend angles. Pure
 * geometry on targets that were gathered when hold was taken; the words say what was met. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import { ANGLE_TOLERANCE, RADIANS } from '../tolerance';
import { addScaled, cross, distance, dot, norm, reject, scale, sub, unit } from '../vector';

export type SnapTarget = {
  readonly words: string;
  /** Where the guide line is drawn from. */
  readonly from: Vec3;
} & (
  | { readonly kind: 'plane'; readonly normal: Vec3 }
  | { readonly kind: 'line'; readonly way: Vec3 }
  /** The held place is a bend between `from` and `to`: its angle is made a multiple of `step`, radians. */
  | { readonly kind: 'angle'; readonly to: Vec3; readonly step: number }
);

export type Snapped = {
  readonly at: Vec3;
  /** What was met, such as "level with bend 2 of r2". */
  readonly words: readonly string[];
  readonly guides: readonly (readonly [Vec3, Vec3])[];
};

/** The place may move only on a line: an axis that is locked, or the line that an end bend rides on. */
export type Track = { readonly from: Vec3; readonly way: Vec3 };

/** Two guides more square to one another than this fix a place together; nearly parallel ones would throw it far. */
const LEAST_CROSSING = Math.sin(15 * RADIANS);

/**
 * @param asked where the hand wants it @param reach how near counts, mm
 * @returns null where nothing is near
 */
export function snap(asked: Vec3, targets: readonly SnapTarget[], reach: number, track?: Track): Snapped | null {
  if (track) return onTrack(asked, targets, reach, track);
  return onLine(asked, targets, reach) ?? onPlanes(asked, targets, reach) ?? onAngle(asked, targets, reach);
}

function onLine(asked: Vec3, targets: readonly SnapTarget[], reach: number): Snapped | null {
  let best: { at: Vec3; target: SnapTarget; off: number } | null = null;
  for (const target of targets) {
    if (target.kind !== 'line') continue;
    const at = addScaled(target.from, target.way, dot(sub(asked, target.from), target.way));
    const off = distance(at, asked);
    if (off <= reach && off < (best?.off ?? Number.POSITIVE_INFINITY)) best = { at, target, off };
  }
  return best && met(best.at, [best.target]);
}

/** The nearest plane; then, within it, the nearest of the others that crosses it; then a third. */
function onPlanes(asked: Vec3, targets: readonly SnapTarget[], reach: number): Snapped | null {
  const chosen: (SnapTarget & { kind: 'plane' })[] = [];
  let at = asked;
  while (chosen.length < 3) {
    let best: { at: Vec3; target: SnapTarget & { kind: 'plane' }; off: number } | null = null;
    for (const target of targets) {
      if (target.kind !== 'plane' || chosen.includes(target)) continue;
      const way = within(target.normal, chosen);
      const square = dot(way, target.normal);
      if (square < LEAST_CROSSING * LEAST_CROSSING) continue;
      const place = addScaled(at, way, dot(sub(target.from, at), target.normal) / square);
      const off = distance(place, asked);
      if (off <= reach && off < (best?.off ?? Number.POSITIVE_INFINITY)) best = { at: place, target, off };
    }
    if (!best) break;
    at = best.at;
    chosen.push(best.target);
  }
  return chosen.length > 0 ? met(at, chosen) : null;
}

/** The part of a direction that stays in all of the planes chosen so far. */
function within(normal: Vec3, chosen: readonly { readonly normal: Vec3 }[]): Vec3 {
  if (chosen.length === 0) return normal;
  if (chosen.length === 1) return reject(normal, chosen[0]!.normal);
  const free = unit(cross(chosen[0]!.normal, chosen[1]!.normal));
  return scale(free, dot(normal, free));
}

function onTrack(asked: Vec3, targets: readonly SnapTarget[], reach: number, track: Track): Snapped | null {
  let best: { at: Vec3; target: SnapTarget; off: number } | null = null;
  const rail = addScaled(track.from, track.way, dot(sub(asked, track.from), track.way));
  for (const target of targets) {
    if (target.kind !== 'plane') continue;
    const slope = dot(track.way, target.normal);
    if (Math.abs(slope) < LEAST_CROSSING) continue;
    const at = addScaled(rail, track.way, dot(sub(target.from, rail), target.normal) / slope);
    const off = distance(at, rail);
    if (off <= reach && off < (best?.off ?? Number.POSITIVE_INFINITY)) best = { at, target, off };
  }
  return best && met(best.at, [best.target]);
}

/** Keeps the foot on the line between the neighbours and moves out or in until the bend's angle is round. */
function onAngle(asked: Vec3, targets: readonly SnapTarget[], reach: number): Snapped | null {
  for (const target of targets) {
    if (target.kind !== 'angle') continue;
    const chord = sub(target.to, target.from);
    const c = norm(chord);
    if (c === 0) continue;
    const along = scale(chord, 1 / c);
    const off = sub(asked, target.from);
    const s = dot(off, along);
    const aside = reject(off, along);
    const h = norm(aside);
    if (h <= ANGLE_TOLERANCE * c || s <= 0 || s >= c) continue;
    const turn = Math.atan2(h, s) + Math.atan2(h, c - s);
    const round = Math.round(turn / target.step) * target.step;
    const k = c / Math.tan(round);
    // tan of the turn over the two legs, solved for the height: h² + c·h/tan θ − s(c − s) = 0.
    const height = round > 0 ? (-k + Math.sqrt(k * k + 4 * s * (c - s))) / 2 : 0;
    if (height <= 0 || Math.abs(height - h) > reach) continue;
    const at = addScaled(addScaled(target.from, along, s), aside, height / h);
    const degrees = Math.round(round / RADIANS);
    return { at, words: [`bend of ${degrees}°`], guides: [] };
  }
  return null;
}

const met = (at: Vec3, targets: readonly SnapTarget[]): Snapped => ({
  at,
  words: targets.map((t) => t.words),
  guides: targets.map((t) => [t.from, at] as const),
});

/** The nearest multiple of `step` where it is near; turning snaps to it. Radians. */
export function snapTurn(angle: number, step: number, reach: number): number | null {
  const round = Math.round(angle / step) * step;
  return Math.abs(round - angle) <= reach ? round : null;
}
