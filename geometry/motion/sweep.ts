/**
 * The least gap over a motion, by branch and bound over boxes of stretch of tube, angle and heat. About each corner of a box
 * the ball out to the obstacle is empty. A place inside is a mean of the corners, P = Σ λ C, and for whatever obstacle's point q
 * Σ λ |q − C|² = |q − P|² + Σ λ |P − C|². So |q − P|² is at least the least d² of the corners less their spread, which is no more
 * than a quarter of the sum of the squares of the box's edges (Efron and Stein, 1981): a bound that is good to the second order in
 * every direction, for meshes as for solids. What arcs stray from their chords is taken off. mm, radians.
 */

import type { Vec3 } from '../../shared/vec3';
import { GAP_RESOLUTION } from '../clearance/gap';
import { cross, distance, norm, sub } from '../vector';
import { placedAt, type Stand, type Sway, sizeAt } from './motion';

/** Swept gaps are good to this, mm. */
const FINE = 0.01;

/** A curve of centerline, by station. */
export type Path = {
  readonly from: number;
  readonly to: number;
  /** Of its bend; 0 where straight. */
  readonly radius: number;
  readonly place: (station: number, into: Float64Array) => void;
};

/** Distance to an obstacle, never negative; anything from `below` on will do where it is no less. */
export type Away = (x: number, y: number, z: number, below: number) => number;

export type Swept = { readonly gap: number; readonly station: number; readonly at: Vec3; readonly stand: Stand };

type Box = {
  path: Path;
  s: readonly [number, number];
  a: readonly [number, number];
  h: readonly [number, number];
  low: number;
};

/** Of balls of a radius along paths, where it is less than `below`. */
export function leastOfBalls(
  paths: readonly Path[],
  radius: number,
  away: Away,
  sway: Sway,
  below: number,
): Swept | null {
  const p = new Float64Array(3);
  let best = below;
  let found: Swept | null = null;
  const most = (1 + Math.abs(sway.growth)) * radius;
  /** Nothing is nearer than what is pierced. */
  let isPierced = false;
  const look = (path: Path, s: number, stand: Stand, room: number): number => {
    path.place(s, p);
    const at = placedAt(sway, [p[0]!, p[1]!, p[2]!], stand);
    const off = away(at[0], at[1], at[2], room);
    const gap = off - radius * sizeAt(sway, stand);
    isPierced ||= off === 0;
    if (off < room && gap < best) {
      best = gap;
      found = { gap, station: s, at, stand };
    }
    return Math.min(off, room);
  };
  const boxOf = (path: Path, s: Box['s'], a: Box['a'], h: Box['h']): Box => {
    const edges = edgesOf(path, s, a, h, sway);
    const half = (edges[0]! + edges[1]! + edges[2]!) / 2;
    const largest = radius * Math.max(sizeAt(sway, { angle: 0, heat: h[0] }), sizeAt(sway, { angle: 0, heat: h[1] }));
    const middle: Stand = { angle: (a[0] + a[1]) / 2, heat: (h[0] + h[1]) / 2 };
    const room = best + most + half + edges[3]! + 1;
    const centre = look(path, (s[0] + s[1]) / 2, middle, room);
    let low = centre - half - edges[3]! - largest;
    if (low < best - FINE) {
      let least = Number.POSITIVE_INFINITY;
      for (const x of s)
        for (const angle of a[1] > a[0] ? a : [a[0]])
          for (const heat of h[1] > h[0] ? h : [h[0]])
            least = Math.min(least, look(path, x, { angle, heat }, centre + half + edges[3]! + GAP_RESOLUTION));
      const spread = (edges[0]! ** 2 + edges[1]! ** 2 + edges[2]! ** 2) / 4;
      low = Math.max(low, Math.sqrt(Math.max(0, least * least - spread)) - edges[3]! - largest);
    }
    return { path, s, a, h, low };
  };
  const search = (box: Box): void => {
    if (box.low >= best - FINE || isPierced) return;
    const { path, s, a, h } = box;
    const edges = edgesOf(path, s, a, h, sway);
    const longest = Math.max(edges[0]!, edges[1]!, edges[2]!);
    if (longest < FINE) return;
    const [one, two] =
      longest === edges[0]
        ? halved(s).map((part) => boxOf(path, part, a, h))
        : longest === edges[1]
          ? halved(a).map((part) => boxOf(path, s, part, h))
          : halved(h).map((part) => boxOf(path, s, a, part));
    for (const part of one!.low <= two!.low ? [one!, two!] : [two!, one!]) search(part);
  };
  const angles: Box['a'] = sway.rock ? [sway.rock.low, sway.rock.high] : [0, 0];
  const heats: Box['h'] = sway.growth !== 0 ? [0, 1] : [0, 0];
  const boxes = paths.flatMap((path) => {
    const count = Math.max(1, Math.ceil((path.to - path.from) / STEP));
    const step = (path.to - path.from) / count;
    return Array.from({ length: count }, (_, k) =>
      boxOf(path, [path.from + k * step, k === count - 1 ? path.to : path.from + (k + 1) * step], angles, heats),
    );
  });
  boxes.sort((x, y) => x.low - y.low);
  for (const box of boxes) search(box);
  return found;
}

/** Of centerline to begin with, mm. */
const STEP = 60;

const halved = ([low, high]: readonly [number, number]): (readonly [number, number])[] => {
  const middle = (low + high) / 2;
  return [
    [low, middle],
    [middle, high],
  ];
};

/** Longest edges of a box along the tube, by angle, by heat; and how far its places stray from means of its corners. */
function edgesOf(path: Path, s: Box['s'], a: Box['a'], h: Box['h'], sway: Sway): [number, number, number, number] {
  const size = 1 + Math.abs(sway.growth);
  const long = s[1] - s[0];
  const p = new Float64Array(3);
  path.place((s[0] + s[1]) / 2, p);
  const at: Vec3 = [p[0]!, p[1]!, p[2]!];
  const turn = (a[1] - a[0]) / 2;
  const lever = sway.rock ? leverOf(sway, at) + (size * long) / 2 : 0;
  const grown = Math.abs(sway.growth) * (h[1] - h[0]) * (distance(at, sway.middle) + long / 2);
  const bend = path.radius > 0 ? size * path.radius * (1 - Math.cos(Math.min(Math.PI, long / path.radius) / 2)) : 0;
  return [size * long, 2 * lever * Math.sin(turn), grown, bend + lever * (1 - Math.cos(turn))];
}

/** No further from the roll axis than this, hot or cold. */
function leverOf({ rock, middle, growth }: Sway, at: Vec3): number {
  return norm(cross(sub(at, rock!.position), rock!.axis)) + Math.abs(growth) * distance(at, middle);
}

/** How far a thing with flat ends is from an obstacle at one moment, where that is less than `below`. */
export type GapAt<G> = (stand: Stand, below: number) => { readonly gap: number; readonly found: G } | null;

/**
 * The least gap over all moments, of a thing that is asked as a whole: its every place is a mean of where it is at four moments.
 * Where it overlaps at some moment, by how much it does so at the worst of the moments asked.
 * @param about a place of it and how far it reaches from there
 */
export function leastOfMoments<G>(
  gapAt: GapAt<G>,
  { at, reach }: { readonly at: Vec3; readonly reach: number },
  sway: Sway,
  below: number,
): { readonly gap: number; readonly found: G; readonly stand: Stand } | null {
  let best: { gap: number; found: G; stand: Stand } | null = null;
  const bound = (): number => best?.gap ?? below;
  const known = new Map<string, number>();
  const lever = sway.rock ? leverOf(sway, at) + reach * (1 + Math.abs(sway.growth)) : 0;
  const path = Math.abs(sway.growth) * (distance(at, sway.middle) + reach);
  const ask = (stand: Stand, within: number): number => {
    const key = `${stand.angle} ${stand.heat}`;
    const kept = known.get(key);
    if (kept !== undefined) return kept;
    const answer = gapAt(stand, within);
    if (answer && answer.gap < bound()) best = { ...answer, stand };
    const gap = answer ? Math.max(0, answer.gap) : within;
    known.set(key, gap);
    return gap;
  };
  const search = (a: Box['a'], h: Box['h']): void => {
    const turn = (a[1] - a[0]) / 2;
    const [swing, swell] = [2 * lever * Math.sin(turn), path * (h[1] - h[0])];
    const within = Math.max(bound(), 0) + swing + swell;
    let least = Number.POSITIVE_INFINITY;
    for (const angle of a[1] > a[0] ? a : [a[0]])
      for (const heat of h[1] > h[0] ? h : [h[0]]) least = Math.min(least, ask({ angle, heat }, within));
    const stray = lever * (1 - Math.cos(turn));
    const low = Math.max(
      least - (swing + swell) / 2,
      Math.sqrt(Math.max(0, least * least - (swing * swing + swell * swell) / 4)) - stray,
    );
    if (low >= bound() - FINE || Math.max(swing, swell) < FINE || bound() <= 0) return;
    if (swing >= swell) for (const part of halved(a)) search(part, h);
    else for (const part of halved(h)) search(a, part);
  };
  const angles: Box['a'] = sway.rock ? [sway.rock.low, sway.rock.high] : [0, 0];
  search(angles, sway.growth !== 0 ? [0, 1] : [0, 0]);
  return best;
}
