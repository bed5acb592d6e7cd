/**
 * A runner as a row of balls, bare and wrapped, so that what turns or slides about an axis can be held against it in closed form.
 * Balls every 2 mm stray less than 0.05 mm from the tube. mm, in the design's frame.
 */
import type { Wrap } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { pointOnSegment } from '../curve/pointAt';
import { openingDiscs } from '../flange/seats';
import type { Header, ResolvedPort, ResolvedRunner } from '../header/resolve';
import type { Disc } from '../plane/discs';
import { addScaled, anySquareTo, cross, distance } from '../vector';
import { type Span, wrappedSpans } from './spans';

export type Cloud = {
  readonly runner: string;
  /** Middles, three numbers each. */
  readonly at: Float64Array;
  /** Negative where there is wrap alone. */
  readonly bare: Float64Array;
  readonly wrapped: Float64Array;
  readonly station: Float64Array;
  /** A ball round all of it. */
  readonly middle: Vec3;
  readonly reach: number;
};

const STEP = 2;
/** Of the small balls on the rim of a wrap's end, which is soft and round. */
const RIM = 1.5;
/** A stretch that comes this near to an end of the tube covers it. */
const AT_END = 0.5;

export const wrapThickness = (wrap: Wrap | undefined): number => (wrap ? wrap.thickness * wrap.layers : 0);

type Kept = { readonly port: ResolvedPort | null; readonly thickness: number; readonly cloud: Cloud | null };
const drawn = new WeakMap<ResolvedRunner, Kept>();
const whole = new WeakMap<ResolvedRunner, Kept>();

/**
 * Of every runner that has a line.
 * @param all wrapped from end to end, whatever the design says
 */
export function cloudsOf(header: Header, all = false): Cloud[] {
  const thickness = wrapThickness(header.design.wrap);
  return header.runners.flatMap((r) => {
    const { from } = r.runner;
    const port = 'port' in from ? (header.ports.get(from.port) ?? null) : null;
    const known = all && r.runner.wrapped ? whole : drawn;
    const kept = known.get(r);
    if (kept?.port === port && kept.thickness === thickness) return kept.cloud ?? [];
    const cloud = cloudOf(r, port, thickness, all);
    known.set(r, { port, thickness, cloud });
    return cloud ?? [];
  });
}

function cloudOf(r: ResolvedRunner, port: ResolvedPort | null, thickness: number, all: boolean): Cloud | null {
  const line = r.centerline;
  if (!line) return null;
  const { tubeRadius: radius } = r;
  const [at, bare, wrapped, station]: number[][] = [[], [], [], []];
  const spans: Span[] = thickness === 0 ? [] : all ? [[0, line.length]] : wrappedSpans(r.runner, line.length);
  const put = (p: Vec3, s: number, own: number, over: number): void => {
    at!.push(...p);
    station!.push(s);
    bare!.push(own);
    wrapped!.push(Math.max(own, over));
  };
  /** What wrap adds at a station, no more than keeps a ball from standing out beyond the wrap's end. */
  const wrapAt = (s: number, own: number): number => {
    const span = spans.find(([a, b]) => s >= a && s <= b);
    if (!span) return -1;
    const toStart = span[0] <= AT_END ? Number.POSITIVE_INFINITY : s - span[0];
    const toEnd = span[1] >= line.length - AT_END ? Number.POSITIVE_INFINITY : span[1] - s;
    const inside = Math.min(toStart, toEnd);
    return Math.min(own + thickness, Math.sqrt(own * own + inside * inside));
  };
  const flare = flareOf(r, port);
  for (const segment of line.segments) {
    const steps = Math.max(1, Math.ceil(segment.length / STEP));
    for (let k = segment.station === 0 ? 0 : 1; k <= steps; k++) {
      const p = pointOnSegment(segment, (segment.length * k) / steps);
      put(p.position, p.station, radius, wrapAt(p.station, radius));
      for (const disc of k % 2 === 0 ? flare(p.station) : []) {
        const on = addScaled(addScaled(p.position, flare.across, disc.x), flare.up, disc.y);
        put(on, p.station, disc.r, wrapAt(p.station, disc.r));
      }
    }
  }
  for (const [a, b] of spans) {
    if (a > AT_END) rim(r, a, 1, thickness, put);
    if (b < line.length - AT_END) rim(r, b, -1, thickness, put);
  }
  let [lowest, highest]: [Vec3, Vec3] = [
    [Infinity, Infinity, Infinity],
    [-Infinity, -Infinity, -Infinity],
  ];
  let widest = 0;
  for (let i = 0; i < station!.length; i++) {
    const p = [at![3 * i]!, at![3 * i + 1]!, at![3 * i + 2]!] as const;
    lowest = [Math.min(lowest[0], p[0]), Math.min(lowest[1], p[1]), Math.min(lowest[2], p[2])];
    highest = [Math.max(highest[0], p[0]), Math.max(highest[1], p[1]), Math.max(highest[2], p[2])];
    widest = Math.max(widest, wrapped![i]!, bare![i]!);
  }
  return {
    runner: r.runner.id,
    at: Float64Array.from(at!),
    bare: Float64Array.from(bare!),
    wrapped: Float64Array.from(wrapped!),
    station: Float64Array.from(station!),
    middle: [(lowest[0] + highest[0]) / 2, (lowest[1] + highest[1]) / 2, (lowest[2] + highest[2]) / 2],
    reach: distance(lowest, highest) / 2 + widest,
  };
}

/** The corner that balls inside cannot fill: rings of small ones just under the wrap's face, to where the others take over. */
function rim(
  r: ResolvedRunner,
  end: number,
  inward: 1 | -1,
  thickness: number,
  put: (p: Vec3, s: number, own: number, over: number) => void,
): void {
  const small = Math.min(RIM, thickness / 2);
  const outer = r.tubeRadius + thickness - small;
  const depth = Math.sqrt((r.tubeRadius + thickness) ** 2 - r.tubeRadius ** 2);
  const around = Math.ceil((2 * Math.PI * outer) / (2 * small));
  for (let into = small; into <= depth; into += 2 * small) {
    const s = end + inward * into;
    const segment = r.centerline!.segments.find((g) => s >= g.station && s <= g.station + g.length);
    if (!segment) return;
    const { position, tangent } = pointOnSegment(segment, s - segment.station);
    const u = anySquareTo(tangent);
    const v = cross(tangent, u);
    for (let k = 0; k < around; k++) {
      const phi = (2 * Math.PI * k) / around;
      put(addScaled(addScaled(position, u, outer * Math.cos(phi)), v, outer * Math.sin(phi)), s, -1, small);
    }
  }
}

type Flare = ((station: number) => readonly Disc[]) & { readonly across: Vec3; readonly up: Vec3 };

/** Balls stand this near to each other along a flare's flat sides. */
const BESIDE = 4;

/** A formed transition: the opening's outside going over evenly into the tube's, nearly as it is made. */
function flareOf(r: ResolvedRunner, port: ResolvedPort | null): Flare {
  const up = r.start.up;
  const across = cross(up, r.start.direction);
  const transition = port?.port.transition;
  if (!port || !transition) return Object.assign(() => [], { across, up });
  const wall = transition.wall ?? r.tube.wall;
  const corners = openingDiscs(port.port.opening).map((d) => ({ ...d, r: d.r + wall }));
  const around = corners.flatMap((d, k) =>
    corners.slice(k).flatMap((e) => (d.x === e.x || d.y === e.y ? between(d, e) : [])),
  );
  const section = (station: number): Disc[] => {
    const share = station / transition.length;
    if (share > 1) return [];
    return around.map((d) => ({
      x: d.x * (1 - share),
      y: d.y * (1 - share),
      r: d.r + (r.tubeRadius - d.r) * share,
    }));
  };
  return Object.assign(section, { across, up });
}

function between(a: Disc, b: Disc): Disc[] {
  const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / BESIDE));
  return Array.from({ length: a === b ? 1 : steps }, (_, k) => ({
    x: a.x + ((b.x - a.x) * k) / steps,
    y: a.y + ((b.y - a.y) * k) / steps,
    r: a.r,
  }));
}
