/**
 * A closed line of many points, such as a traced edge, as few straights and arcs. A dynamic program chooses the joints:
 * each piece costs a fixed sum and the squares of what it misses by, so neither noise nor a coarse guess decides. Then the
 * joints are moved point by point, laid where their pieces meet, and arcs bent to fit between them. Any one unit.
 */
import { type Circle, fitCircle } from './fitCircle';
import { circleLoop, edges, type Loop, type Point2 } from './loop';
import { type Runs, runsOf } from './runs';
import { distanceToEdge } from './within';

export type FitOptions = {
  /** How far points may stray. */
  readonly tolerance: number;
  /** Usual miss of a point from the true edge; at least a quarter of the tolerance counts. */
  readonly noise?: number;
  /** Length of edge that the points stand for one by one: joints are first sought so far apart. */
  readonly step: number;
};

export type Fitted = {
  readonly loop: Loop;
  /** Greatest distance of a point from it. */
  readonly stray: number;
  /** Where it is a whole circle. */
  readonly circle: Circle | null;
};

/** In squared misses over squared noise: what a further piece must save. */
const PIECE = { line: 30, arc: 42 } as const;
/** A piece that misses by more than this is none. */
const HOPELESS = 600;
/** Candidates for joints; more are no better and take long. */
const MOST_JOINTS = 1200;

/** @param points counter-clockwise, at least eight, evenly spaced as far as may be */
export function fitLoop(points: readonly Point2[], { tolerance, noise = 0, step }: FitOptions): Fitted {
  const circle = fitCircle(points);
  if (circle) {
    const stray = strayFrom(points, circle);
    if (stray <= tolerance) return { loop: circleLoop(circle.centre, circle.radius), stray, circle };
  }
  const variance = Math.max(noise, tolerance / 4) ** 2;
  const runs = runsOf(points);
  const stride = Math.max(1, Math.round(step), Math.ceil(points.length / MOST_JOINTS));
  const first = chooseJoints(runs, points.length, stride, 0, variance);
  // Once more from a joint that was found: the first pass had to begin somewhere, joint or not.
  const again = chooseJoints(runs, points.length, stride, first[Math.floor(first.length / 2)]!, variance);
  const slid = slideJoints(runs, points.length, stride, again, variance);
  const joints = slideJoints(runs, points.length, stride, dropJoints(runs, points.length, slid, variance), variance);
  const loop = buildLoop(points, pieces(runs, points.length, joints, variance));
  return { loop, stray: strayOf(points, joints, loop), circle: null };
}

const strayFrom = (points: readonly Point2[], { centre, radius }: Circle): number =>
  points.reduce((most, [x, y]) => Math.max(most, Math.abs(Math.hypot(x - centre[0], y - centre[1]) - radius)), 0);

type Cost = { readonly cost: number; readonly arc: boolean };

function costOf(runs: Runs, from: number, to: number, variance: number): Cost {
  const line = PIECE.line + runs.line(from, to) / variance;
  const arc = to - from < 3 ? Number.POSITIVE_INFINITY : PIECE.arc + runs.arc(from, to) / variance;
  return arc < line ? { cost: arc, arc: true } : { cost: line, arc: false };
}

/** Indices of points, rising from `start` once round; the last piece ends at `start` + the number of points. */
function chooseJoints(runs: Runs, count: number, stride: number, start: number, variance: number): number[] {
  const stops: number[] = [];
  for (let k = 0; k < count; k += stride) stops.push(start + k);
  stops.push(start + count);
  const best = new Float64Array(stops.length).fill(Number.POSITIVE_INFINITY);
  const came = new Int32Array(stops.length);
  best[0] = 0;
  for (let i = 0; i < stops.length - 1; i++) {
    for (let j = i + 1; j < stops.length; j++) {
      // The whole way round in one piece is no closed line of pieces.
      if (i === 0 && j === stops.length - 1) break;
      const { cost } = costOf(runs, stops[i]!, stops[j]!, variance);
      if (best[i]! + cost < best[j]!) [best[j], came[j]] = [best[i]! + cost, i];
      // Further points only add to what it misses.
      if (cost > HOPELESS && j > i + 3) break;
    }
  }
  const joints: number[] = [];
  for (let j = came[stops.length - 1]!; ; j = came[j]!) {
    joints.unshift(stops[j]! % count);
    if (j === 0) break;
  }
  return joints.sort((a, b) => a - b);
}

/** Each joint to the point between its neighbours that suits both pieces best, in turns until all stay. */
function slideJoints(runs: Runs, count: number, stride: number, from: readonly number[], variance: number): number[] {
  const joints = [...from];
  const n = joints.length;
  for (let turn = 0; turn < 6; turn++) {
    let moved = false;
    for (let k = 0; k < n; k++) {
      const at = joints[k]!;
      let before = joints[(k + n - 1) % n]!;
      let after = joints[(k + 1) % n]!;
      if (before >= at) before -= count;
      if (after <= at) after += count;
      let [best, place] = [Number.POSITIVE_INFINITY, at];
      for (let p = Math.max(before + 2, at - 2 * stride); p <= Math.min(after - 2, at + 2 * stride); p++) {
        // Kept at no less than 0, as the sums run only forward.
        const lift = before < 0 ? count : 0;
        const cost =
          costOf(runs, before + lift, p + lift, variance).cost +
          costOf(runs, ...forward(p, after, count), variance).cost;
        if (cost < best - 1e-9) [best, place] = [cost, p];
      }
      if (place === at) continue;
      moved = true;
      joints[k] = place;
    }
    if (!moved) break;
  }
  return joints.map((p) => ((p % count) + count) % count).sort((a, b) => a - b);
}

/** Joints that no longer pay once the others lie where they should: those that only bridged a coarse guess. */
function dropJoints(runs: Runs, count: number, from: readonly number[], variance: number): number[] {
  const joints = [...from];
  for (let k = 0; joints.length > 2 && k < joints.length; ) {
    const n = joints.length;
    const before = joints[(k + n - 1) % n]!;
    const at = joints[k]! + (joints[k]! < before ? count : 0);
    const after = joints[(k + 1) % n]!;
    const to = after + (after < at ? count * Math.ceil((at - after) / count) : 0);
    const apart =
      costOf(runs, before, at, variance).cost + costOf(runs, at % count, to - (at - (at % count)), variance).cost;
    if (to - before < count && to <= 2 * count - 1 && costOf(runs, before, to, variance).cost <= apart)
      joints.splice(k, 1);
    else k++;
  }
  return joints;
}

function forward(from: number, to: number, count: number): [number, number] {
  const by = from < 0 ? count : from >= count ? -count : 0;
  return [from + by, to + by];
}

type Piece = { readonly from: number; readonly to: number; readonly arc: boolean };

function pieces(runs: Runs, count: number, joints: readonly number[], variance: number): Piece[] {
  return joints.map((from, k) => {
    const next = joints[k + 1] ?? joints[0]! + count;
    return { from, to: next, arc: costOf(runs, from, next, variance).arc };
  });
}

type Line = { readonly at: Point2; readonly along: Point2 };
type Curve = { readonly line: Line } | { readonly circle: Circle };

function buildLoop(points: readonly Point2[], all: readonly Piece[]): Loop {
  const ofPiece = all.map(({ from, to }) => stretch(points, from, to));
  const curves = all.map(({ arc }, k): Curve => {
    const circle = arc ? fitCircle(ofPiece[k]!) : null;
    return circle ? { circle } : { line: fitLine(ofPiece[k]!) };
  });
  const corners = all.map(({ from }, k) =>
    meet(points[from % points.length]!, curves[(k + all.length - 1) % all.length]!, curves[k]!),
  );
  return corners.map(([x, y], k) => {
    const curve = curves[k]!;
    if ('line' in curve) return [x, y, 0];
    return [x, y, bulgeThrough([x, y], corners[(k + 1) % corners.length]!, ofPiece[k]!)];
  });
}

const stretch = (points: readonly Point2[], from: number, to: number): Point2[] =>
  Array.from({ length: to - from + 1 }, (_, k) => points[(from + k) % points.length]!);

function fitLine(points: readonly Point2[]): Line {
  const n = points.length;
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n;
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n;
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y] of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return { at: [mx, my], along: [Math.cos(angle), Math.sin(angle)] };
}

/** Sine of the least angle at which two pieces cross cleanly; flatter ones touch, and their crossing says little. */
const CLEAN_CROSSING = 0.25;

/** Where two neighbouring pieces meet: their crossing where it is clean, else midway between the nearest points of both. */
function meet(near: Point2, one: Curve, other: Curve): Point2 {
  const [p, q] = [nearestOn(one, near), nearestOn(other, near)];
  let at: Point2 = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
  // From tangent to tangent, as Newton would: lines meet at once, arcs in a few steps.
  for (let step = 0; step < 6; step++) {
    const a = tangentAt(one, at);
    const b = tangentAt(other, at);
    const sine = a.along[0] * b.along[1] - a.along[1] * b.along[0];
    if (Math.abs(sine) < CLEAN_CROSSING) break;
    const s = ((b.at[0] - a.at[0]) * b.along[1] - (b.at[1] - a.at[1]) * b.along[0]) / sine;
    at = [a.at[0] + s * a.along[0], a.at[1] + s * a.along[1]];
  }
  return at;
}

function nearestOn(curve: Curve, [x, y]: Point2): Point2 {
  if ('line' in curve) {
    const { at, along } = curve.line;
    const s = (x - at[0]) * along[0] + (y - at[1]) * along[1];
    return [at[0] + s * along[0], at[1] + s * along[1]];
  }
  const { centre, radius } = curve.circle;
  const away = Math.hypot(x - centre[0], y - centre[1]) || 1;
  return [centre[0] + ((x - centre[0]) * radius) / away, centre[1] + ((y - centre[1]) * radius) / away];
}

function tangentAt(curve: Curve, at: Point2): Line {
  if ('line' in curve) return curve.line;
  const on = nearestOn(curve, at);
  const { centre, radius } = curve.circle;
  return { at: on, along: [-(on[1] - centre[1]) / radius, (on[0] - centre[0]) / radius] };
}

/** Flatter than this over its length an arc is drawn straight. */
const FLAT = 1e-6;

/**
 * The arc from one point to another that misses points least, as a bulge. With u along the chord from its middle, half of
 * it 1, and v to its left, a point on the arc has (1 − u² − v²)·b = −v·(1 − b²): each point gives a b, but the ends say little.
 */
function bulgeThrough(from: Point2, to: Point2, points: readonly Point2[]): number {
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const [hx, hy] = [(to[0] - from[0]) / 2, (to[1] - from[1]) / 2];
  const half2 = hx * hx + hy * hy;
  const local = points.map(([x, y]): Point2 => {
    const [dx, dy] = [x - mx, y - my];
    return [(dx * hx + dy * hy) / half2, (dy * hx - dx * hy) / half2];
  });
  // A left turn bows to the right: v = −b in the middle.
  const middle = local[Math.floor(local.length / 2)]!;
  let b = -middle[1] || FLAT;
  for (let step = 0; step < 20; step++) {
    let [top, bottom] = [0, 0];
    for (const point of local) {
      const miss = missOf(point, b);
      const slope = (missOf(point, b + 1e-6) - missOf(point, b - 1e-6)) / 2e-6;
      top += miss * slope;
      bottom += slope * slope;
    }
    const by = bottom === 0 ? 0 : top / bottom;
    b -= by;
    if (Math.abs(by) < 1e-10) break;
  }
  return Math.abs(b) < FLAT ? 0 : b;
}

/** Signed distance from the arc of bulge b over the chord from (−1, 0) to (1, 0). */
function missOf([u, v]: Point2, b: number): number {
  if (Math.abs(b) < FLAT) return v + b * (1 - u * u);
  const off = (1 - b * b) / (2 * b);
  const radius = (1 + b * b) / (2 * Math.abs(b));
  return (radius - Math.hypot(u, v - off)) * Math.sign(b);
}

function strayOf(points: readonly Point2[], joints: readonly number[], loop: Loop): number {
  const all = edges(loop);
  const n = all.length;
  return all.reduce((most, edge, k) => {
    const beside = [edge, all[(k + 1) % n]!, all[(k + n - 1) % n]!];
    const to = joints[k + 1] ?? joints[0]! + points.length;
    return stretch(points, joints[k]!, to).reduce(
      (worst, point) => Math.max(worst, Math.min(...beside.map((e) => distanceToEdge(point, e)))),
      most,
    );
  }, 0);
}
