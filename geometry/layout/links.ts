/**
 * A path's straights and arcs as rows of points for the solver's contact search, cut where the allowed gap changes.
 * Coarser than the check's chains and rebuilt at every step, so everything is flat and reused. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import type { SolverRunner } from './layoutProblem';

/** Sagitta of one chord of an arc, mm. Contacts are then measured on the true arc. */
const SAGITTA = 0.02;
const MOST_CHORDS = 64;
/** Links shorter than this carry no contact of their own. */
const SHORTEST = 1e-6;

export type SolverLink = {
  readonly runner: SolverRunner;
  /** Leg or bend number on the path. */
  readonly index: number;
  readonly isArc: boolean;
  /** Part of the arc's angle, or of the straight's length, that this link covers. */
  readonly low: number;
  readonly high: number;
  readonly count: number;
  /** Ends of the chords; those between the first and the last are there once `settlePoint` was called for them. */
  readonly points: Float64Array;
  /** 0 for a straight. */
  readonly radius: number;
  readonly angle: number;
  /** How far the true curve strays from the whole link's one chord. */
  readonly stray: number;
  /** Middle of that chord and half its length. */
  readonly middleX: number;
  readonly middleY: number;
  readonly middleZ: number;
  readonly half: number;
  readonly station: number;
  readonly end: number;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  /** −1 within the start port's bundle, 1 within the end merge's, 0 between. */
  readonly bundle: -1 | 0 | 1;
};

/** The links of one path, in order of travel. */
export function linksOf(r: SolverRunner): SolverLink[] {
  const links: Writable<SolverLink>[] = [];
  refill(r, links);
  return links;
}

export type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** Writes the path's links over `out` from its beginning; says how many there are. */
export function refill(r: SolverRunner, out: Writable<SolverLink>[]): number {
  const { path } = r;
  const total = path.length;
  const first = r.bundleAtStart;
  const last = total - r.bundleAtEnd;
  let station = 0;
  let count = 0;
  for (let i = 0; i <= path.bends; i++) {
    const straight = path.straights[i]!;
    if (straight > SHORTEST) count = cutLink(r, i, false, station, straight, first, last, total, out, count);
    station += straight;
    if (i === path.bends) break;
    const arc = path.radii[i]! * path.turns[i]!;
    if (arc > SHORTEST) count = cutLink(r, i, true, station, arc, first, last, total, out, count);
    station += arc;
  }
  return count;
}

function cutLink(
  runner: SolverRunner,
  index: number,
  isArc: boolean,
  station: number,
  length: number,
  firstCut: number,
  lastCut: number,
  total: number,
  out: Writable<SolverLink>[],
  count: number,
): number {
  const a = (firstCut - station) / length;
  const b = (lastCut - station) / length;
  const one = isInner(a) ? a : isInner(b) ? b : 1;
  const two = isInner(a) && isInner(b) ? b : 1;
  const near = Math.min(one, two);
  const far = Math.max(one, two);
  let n = count;
  let low = 0;
  for (let k = 0; k < 3; k++) {
    const high = k === 0 ? near : k === 1 ? far : 1;
    // Without a cut the next bound is the end, and there is nothing beyond.
    if (k > 0 && low === 1) break;
    const from = station + low * length;
    const to = station + high * length;
    const middle = (from + to) / 2;
    const bundle = middle > lastCut ? 1 : middle < firstCut ? -1 : 0;
    if (n === out.length) out.push(emptyLink(runner));
    writeLink(out[n++]!, runner, index, isArc, low, high, from, to, from <= SHORTEST, to >= total - SHORTEST, bundle);
    low = high;
  }
  return n;
}

const isInner = (f: number): boolean => f > 1e-9 && f < 1 - 1e-9;

const emptyLink = (runner: SolverRunner): Writable<SolverLink> => ({
  runner,
  index: 0,
  isArc: false,
  low: 0,
  high: 0,
  count: 1,
  points: new Float64Array(6),
  radius: 0,
  angle: 0,
  stray: 0,
  middleX: 0,
  middleY: 0,
  middleZ: 0,
  half: 0,
  station: 0,
  end: 0,
  isFirst: false,
  isLast: false,
  bundle: 0,
});

function writeLink(
  link: Writable<SolverLink>,
  runner: SolverRunner,
  index: number,
  isArc: boolean,
  low: number,
  high: number,
  station: number,
  end: number,
  isFirst: boolean,
  isLast: boolean,
  bundle: -1 | 0 | 1,
): void {
  const { path } = runner;
  const radius = isArc ? path.radii[index]! : 0;
  const angle = isArc ? (high - low) * path.turns[index]! : 0;
  const wanted = isArc ? angle / (2 * Math.acos(Math.max(0, 1 - SAGITTA / radius))) : 1;
  const count = isArc ? Math.min(MOST_CHORDS, 2 ** Math.max(0, Math.ceil(Math.log2(wanted)))) : 1;
  const last = 3 * count;
  if (link.points.length < last + 3) link.points = new Float64Array(last + 3);
  const { points } = link;
  for (let k = 3; k < last; k += 3) points[k] = Number.NaN;
  pointOnLink(runner, index, isArc, low, points, 0);
  pointOnLink(runner, index, isArc, high, points, last);
  const x = points[last]! - points[0]!;
  const y = points[last + 1]! - points[1]!;
  const z = points[last + 2]! - points[2]!;
  link.runner = runner;
  link.index = index;
  link.isArc = isArc;
  link.low = low;
  link.high = high;
  link.count = count;
  link.radius = radius;
  link.angle = angle;
  link.stray = isArc ? radius * (1 - Math.cos(Math.min(angle / 2, Math.PI))) : 0;
  link.middleX = (points[0]! + points[last]!) / 2;
  link.middleY = (points[1]! + points[last + 1]!) / 2;
  link.middleZ = (points[2]! + points[last + 2]!) / 2;
  link.half = Math.sqrt(x * x + y * y + z * z) / 2;
  link.station = station;
  link.end = end;
  link.isFirst = isFirst;
  link.isLast = isLast;
  link.bundle = bundle;
}

/** Places the end of chord k: few of an arc's chords are ever looked at. */
export function settlePoint({ runner, index, isArc, low, high, count, points }: SolverLink, k: number): void {
  if (Number.isNaN(points[3 * k]!)) pointOnLink(runner, index, isArc, low + ((high - low) * k) / count, points, 3 * k);
}

/** The true place at fraction f of a path's arc or straight, into out[at …]. */
export function pointOnLink(
  { path }: SolverRunner,
  index: number,
  isArc: boolean,
  f: number,
  out: Float64Array,
  at: number,
): void {
  const { points: P, directions: D, setbacks, turns, sines, cosines, radii, straights } = path;
  const d = 3 * index;
  if (!isArc) {
    const along = (index > 0 ? setbacks[index - 1]! : 0) + f * straights[index]!;
    out[at] = P[d]! + along * D[d]!;
    out[at + 1] = P[d + 1]! + along * D[d + 1]!;
    out[at + 2] = P[d + 2]! + along * D[d + 2]!;
    return;
  }
  const theta = turns[index]!;
  const R = radii[index]!;
  const s = sines[index]!;
  const c = cosines[index]!;
  const phi = f * theta;
  const inward = s > 1e-9 ? (R * (1 - Math.cos(phi))) / s : 0;
  const forward = R * Math.sin(phi) - setbacks[index]! - inward * c;
  out[at] = P[d + 3]! + forward * D[d]! + inward * D[d + 3]!;
  out[at + 1] = P[d + 4]! + forward * D[d + 1]! + inward * D[d + 4]!;
  out[at + 2] = P[d + 5]! + forward * D[d + 2]! + inward * D[d + 5]!;
}

/** A place on a link: fraction of its arc's angle or straight's length. */
export type LinkPlace = { readonly link: SolverLink; readonly fraction: number };

export function placeAt({ link, fraction }: LinkPlace): Vec3 {
  pointOnLink(link.runner, link.index, link.isArc, fraction, P, 0);
  return [P[0]!, P[1]!, P[2]!];
}

const P = new Float64Array(3);

/** Unit tangent at fraction f. */
export function tangentOnLink(
  { path }: SolverRunner,
  index: number,
  isArc: boolean,
  f: number,
  out: Float64Array,
): void {
  const { directions: D, turns, sines, cosines } = path;
  const d = 3 * index;
  if (!isArc) {
    out[0] = D[d]!;
    out[1] = D[d + 1]!;
    out[2] = D[d + 2]!;
    return;
  }
  const s = sines[index]!;
  const phi = f * turns[index]!;
  const b = s > 1e-9 ? Math.sin(phi) / s : 0;
  const a = Math.cos(phi) - b * cosines[index]!;
  out[0] = a * D[d]! + b * D[d + 3]!;
  out[1] = a * D[d + 1]! + b * D[d + 4]!;
  out[2] = a * D[d + 2]! + b * D[d + 5]!;
}
