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
  const { path } = r;
  const total = path.length;
  const cuts = [r.bundleAtStart, total - r.bundleAtEnd];
  const links: SolverLink[] = [];
  let station = 0;
  for (let i = 0; i <= path.bends; i++) {
    const straight = path.straights[i]!;
    if (straight > SHORTEST) cutLink(r, i, false, station, straight, cuts, total, links);
    station += straight;
    if (i === path.bends) break;
    const arc = path.radii[i]! * path.turns[i]!;
    if (arc > SHORTEST) cutLink(r, i, true, station, arc, cuts, total, links);
    station += arc;
  }
  return links;
}

function cutLink(
  runner: SolverRunner,
  index: number,
  isArc: boolean,
  station: number,
  length: number,
  cuts: readonly number[],
  total: number,
  out: SolverLink[],
): void {
  const inner = cuts.map((c) => (c - station) / length).filter((f) => f > 1e-9 && f < 1 - 1e-9);
  const bounds = [0, ...inner.sort((a, b) => a - b), 1];
  for (let k = 0; k + 1 < bounds.length; k++) {
    const [low, high] = [bounds[k]!, bounds[k + 1]!];
    const from = station + low * length;
    const to = station + high * length;
    const middle = (from + to) / 2;
    const bundle = middle > cuts[1]! ? 1 : middle < cuts[0]! ? -1 : 0;
    out.push(link(runner, index, isArc, low, high, from, to, from <= SHORTEST, to >= total - SHORTEST, bundle));
  }
}

function link(
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
): SolverLink {
  const { path } = runner;
  const radius = isArc ? path.radii[index]! : 0;
  const angle = isArc ? (high - low) * path.turns[index]! : 0;
  const wanted = isArc ? angle / (2 * Math.acos(Math.max(0, 1 - SAGITTA / radius))) : 1;
  const count = isArc ? Math.min(MOST_CHORDS, 2 ** Math.max(0, Math.ceil(Math.log2(wanted)))) : 1;
  const last = 3 * count;
  const points = new Float64Array(last + 3);
  for (let k = 3; k < last; k += 3) points[k] = Number.NaN;
  pointOnLink(runner, index, isArc, low, points, 0);
  pointOnLink(runner, index, isArc, high, points, last);
  return {
    runner,
    index,
    isArc,
    low,
    high,
    count,
    points,
    radius,
    angle,
    stray: isArc ? radius * (1 - Math.cos(Math.min(angle / 2, Math.PI))) : 0,
    middleX: (points[0]! + points[last]!) / 2,
    middleY: (points[1]! + points[last + 1]!) / 2,
    middleZ: (points[2]! + points[last + 2]!) / 2,
    half: Math.hypot(points[last]! - points[0]!, points[last + 1]! - points[1]!, points[last + 2]! - points[2]!) / 2,
    station,
    end,
    isFirst,
    isLast,
    bundle,
  };
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
  const { points: P, directions: D, setbacks, turns, radii, straights } = path;
  const d = 3 * index;
  if (!isArc) {
    const along = (index > 0 ? setbacks[index - 1]! : 0) + f * straights[index]!;
    for (let k = 0; k < 3; k++) out[at + k] = P[d + k]! + along * D[d + k]!;
    return;
  }
  const theta = turns[index]!;
  const R = radii[index]!;
  const s = Math.sin(theta);
  const c = Math.cos(theta);
  const phi = f * theta;
  const inward = s > 1e-9 ? (R * (1 - Math.cos(phi))) / s : 0;
  const forward = R * Math.sin(phi) - setbacks[index]! - inward * c;
  for (let k = 0; k < 3; k++) out[at + k] = P[d + 3 + k]! + forward * D[d + k]! + inward * D[d + 3 + k]!;
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
  const { directions: D, turns } = path;
  const d = 3 * index;
  if (!isArc) {
    for (let k = 0; k < 3; k++) out[k] = D[d + k]!;
    return;
  }
  const theta = turns[index]!;
  const s = Math.sin(theta);
  const phi = f * theta;
  const b = s > 1e-9 ? Math.sin(phi) / s : 0;
  const a = Math.cos(phi) - b * Math.cos(theta);
  for (let k = 0; k < 3; k++) out[k] = a * D[d + k]! + b * D[d + 3 + k]!;
}
