/**
 * The least gap of balls along curves over a motion, by branch and bound over boxes of stretch of tube, angle and heat. About each
 * corner of a box the ball out to the obstacle is empty. A place inside is a mean of the corners, P = Σ λ C, and for whatever
 * obstacle's point q Σ λ |q − C|² = |q − P|² + Σ λ |P − C|². So |q − P|² is at least the least d² of the corners less their spread,
 * which is no more than a quarter of the sum of the squares of the box's edges (Efron and Stein, 1981): a bound that is good to the
 * second order in every direction, for meshes as for solids. What arcs stray from their chords is taken off. A box that is halved
 * hands its corners on, and no look leaves garbage: there are thousands after an edit. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import { leverOf, mover, type Stand, type Sway } from './motion';

/** Swept gaps are good to this, mm. */
export const FINE = 0.01;

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

/** Stretch, angle and heat, each from and to; and how far the obstacle is from each corner, bit by bit in that order. */
type Box = { readonly path: Path; readonly span: Float64Array; readonly off: Float64Array; low: number };

/** Of centerline to begin with, mm. */
const STEP = 60;

/**
 * Of balls of a radius along paths, where it is less than `below`.
 * @param anyWillDo the first that is found to be less, not the least
 */
export function leastOfBalls(
  paths: readonly Path[],
  radius: number,
  away: Away,
  sway: Sway,
  below: number,
  anyWillDo = false,
): Swept | null {
  const { rock, growth } = sway;
  const move = mover(sway);
  const p = new Float64Array(3);
  const edges = new Float64Array(4);
  const moves = [true, rock !== null && rock.high > rock.low, growth !== 0] as const;
  const most = (1 + Math.abs(growth)) * radius;
  let best = below;
  let found: Swept | null = null;
  /** Nothing is nearer than what is pierced. */
  let isDone = false;

  const look = (path: Path, s: number, angle: number, heat: number, room: number): number => {
    path.place(s, p);
    move(p, angle, heat);
    const off = away(p[0]!, p[1]!, p[2]!, room);
    const gap = off - radius * (1 + growth * heat);
    isDone ||= off === 0;
    if (off < room && gap < best) {
      best = gap;
      found = { gap, station: s, at: [p[0]!, p[1]!, p[2]!], stand: { angle, heat } };
      isDone ||= anyWillDo;
    }
    return Math.min(off, room);
  };
  /** Longest edges along the tube, by angle, by heat; and how far its places stray from means of its corners. */
  const measure = ({ path, span }: Box): void => {
    const long = span[1]! - span[0]!;
    path.place((span[0]! + span[1]!) / 2, p);
    const size = 1 + Math.abs(growth);
    const turn = (span[3]! - span[2]!) / 2;
    const lever = rock ? leverOf(sway, p[0]!, p[1]!, p[2]!) + (size * long) / 2 : 0;
    const [mx, my, mz] = sway.middle;
    const out = Math.sqrt((p[0]! - mx) ** 2 + (p[1]! - my) ** 2 + (p[2]! - mz) ** 2);
    const bend = path.radius > 0 ? size * path.radius * (1 - Math.cos(Math.min(Math.PI, long / path.radius) / 2)) : 0;
    edges[0] = size * long;
    edges[1] = 2 * lever * Math.sin(turn);
    edges[2] = Math.abs(growth) * (span[5]! - span[4]!) * (out + long / 2);
    edges[3] = bend + lever * (1 - Math.cos(turn));
  };
  const half = (): number => (edges[0]! + edges[1]! + edges[2]!) / 2;
  /** At the corners whose bits of `axes` are those of `side`; what does not move has its corners twice. */
  const lookAtCorners = ({ path, span, off }: Box, axes: number, side: number, room: number): void => {
    for (let corner = 0; corner < 8; corner++) {
      if ((corner & axes) !== (side & axes)) continue;
      const twin = corner & ~((moves[1] ? 0 : 2) | (moves[2] ? 0 : 4));
      off[corner] =
        twin < corner && (twin & axes) === (side & axes)
          ? off[twin]!
          : look(path, span[corner & 1]!, span[2 + ((corner >> 1) & 1)]!, span[4 + (corner >> 2)]!, room);
    }
  };
  /** From the corners, after `measure`. */
  const bound = (box: Box): void => {
    let least = Number.POSITIVE_INFINITY;
    for (const off of box.off) least = Math.min(least, off);
    const spread = (edges[0]! * edges[0]! + edges[1]! * edges[1]! + edges[2]! * edges[2]!) / 4;
    const largest = radius * (1 + Math.max(growth * box.span[4]!, growth * box.span[5]!));
    box.low = Math.max(box.low, Math.sqrt(Math.max(0, least * least - spread)) - edges[3]! - largest);
  };
  const search = (box: Box): void => {
    if (box.low >= best - FINE || isDone) return;
    measure(box);
    const longest = Math.max(edges[0]!, edges[1]!, edges[2]!);
    if (longest < FINE) return;
    const axis = longest === edges[0] ? 0 : longest === edges[1] ? 1 : 2;
    const bit = 1 << axis;
    const { path, span, off, low } = box;
    const middle = (span[2 * axis]! + span[2 * axis + 1]!) / 2;
    const one: Box = { path, span: span.slice(), off: off.slice(), low };
    const two: Box = { path, span: span.slice(), off: off.slice(), low };
    one.span[2 * axis + 1] = middle;
    two.span[2 * axis] = middle;
    lookAtCorners(one, bit, bit, best + most + half() + edges[3]! + 1);
    for (let corner = 0; corner < 8; corner++) if ((corner & bit) === 0) two.off[corner] = one.off[corner | bit]!;
    for (const part of [one, two]) {
      measure(part);
      bound(part);
    }
    const isFirst = one.low <= two.low;
    search(isFirst ? one : two);
    search(isFirst ? two : one);
  };

  const angles = rock ? [rock.low, rock.high] : [0, 0];
  const heats = moves[2] ? [0, 1] : [0, 0];
  const boxes = paths.flatMap((path) => {
    const count = Math.max(1, Math.ceil((path.to - path.from) / STEP));
    const step = (path.to - path.from) / count;
    return Array.from({ length: count }, (_, k): Box => {
      const stretch = [path.from + k * step, k === count - 1 ? path.to : path.from + (k + 1) * step];
      const box: Box = {
        path,
        span: Float64Array.of(...stretch, ...angles, ...heats),
        off: new Float64Array(8),
        low: 0,
      };
      measure(box);
      const reach = half() + edges[3]!;
      const middle = (values: readonly number[]): number => (values[0]! + values[1]!) / 2;
      const centre = look(path, middle(stretch), middle(angles), middle(heats), best + most + reach + 1);
      box.low = centre - reach - most;
      return box;
    });
  });
  boxes.sort((x, y) => x.low - y.low);
  for (const box of boxes) {
    if (box.low >= best - FINE || isDone) continue;
    measure(box);
    lookAtCorners(box, 0, 0, best + most + half() + edges[3]! + 1);
    bound(box);
    search(box);
  }
  return found;
}
