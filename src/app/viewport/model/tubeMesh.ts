/**
 * A runner as a picture: outer wall, bore and annular ends with smooth radial normals, in millimetres in the design's
 * frame. Unlike the solid that is exported, it keeps each bend and straight apart (so that each can be lit and picked)
 * and marks the seams between them. Flat arrays throughout: it is rebuilt on every frame of a drag.
 */
import {
  bends,
  type Centerline,
  chordCount,
  type Frame,
  frames,
  pointOnSegment,
  type Segment,
  type Station,
  straightIndices,
} from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { AROUND, type Weave, weave } from './weave';

export type TubeMesh = Weave & {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** Rings at both ends and wherever a bend meets a straight: segments as pairs of points. */
  readonly seams: Float32Array;
  /** How far along the line each ring stands, mm. */
  readonly stations: Float32Array;
};

type Stretch = { readonly kind: 'bend' | 'straight'; readonly index: number; readonly segments: Segment[] };

/** How far a drawn chord may stray from the true bend, mm: below a pixel at any zoom that shows the whole header. */
const DRAWN_SAGITTA = 0.15;
/** Seams stand this share of the radius proud of the wall, so that the wall never swallows them. */
const SEAM_LIFT = 1.004;

const COS = Float64Array.from({ length: AROUND + 1 }, (_, i) => Math.cos((2 * Math.PI * i) / AROUND));
const SIN = Float64Array.from({ length: AROUND + 1 }, (_, i) => Math.sin((2 * Math.PI * i) / AROUND));

/** The centerline's segments gathered into the bends and straights that a fabricator counts. */
export function stretches(line: Centerline): Stretch[] {
  const bendOf: number[] = [];
  bends(line).forEach((bend, b) => {
    for (let i = bend.first; i <= bend.last; i++) bendOf[i] = b;
  });
  const straightOf = new Map(straightIndices(line).map((leg, ordinal) => [leg, ordinal]));
  const found: Stretch[] = [];
  let next = 0;
  for (let leg = 0; leg < line.straights.length; leg++) {
    if (line.straights[leg]! > 0) {
      const index = straightOf.get(leg);
      const segment = line.segments[next++]!;
      if (index !== undefined) found.push({ kind: 'straight', index, segments: [segment] });
    }
    if (leg === line.turns.length) break;
    const arc = line.segments[next++]!;
    const last = found.at(-1);
    if (last?.kind === 'bend' && last.index === bendOf[leg]) last.segments.push(arc);
    else found.push({ kind: 'bend', index: bendOf[leg]!, segments: [arc] });
  }
  return found;
}

/** How many pieces a segment is drawn in: as a bend needs, and none longer than `step`. */
const pieces = (segment: Segment, step: number): number =>
  Math.max(
    segment.kind === 'arc' ? chordCount(segment.radius, segment.angle, DRAWN_SAGITTA) : 1,
    Math.ceil(segment.length / step),
  );

/** @param along is given where each stands along the line, mm */
function stationsOf(stretch: Stretch, step: number, along: number[]): Station[] {
  const [first] = stretch.segments;
  const stations = [pointOnSegment(first!, 0)];
  along.push(first!.station);
  for (const segment of stretch.segments) {
    const count = pieces(segment, step);
    for (let k = 1; k <= count; k++) {
      stations.push(pointOnSegment(segment, (segment.length * k) / count));
      along.push(segment.station + (segment.length * k) / count);
    }
  }
  return stations;
}

/**
 * @param up turns the first ring; only the look of the facets depends on it
 * @param step rings are no farther apart, mm: for what changes along the tube
 */
export function tubeMesh(
  line: Centerline,
  radius: number,
  wall: number,
  up?: Vec3,
  step = Number.POSITIVE_INFINITY,
): TubeMesh {
  const runs = stretches(line);
  const stations: Station[] = [];
  const along: number[] = [];
  const starts: number[] = [];
  for (const run of runs) {
    starts.push(stations.length);
    for (const station of stationsOf(run, step, along)) stations.push(station);
  }
  starts.push(stations.length);
  const rings = frames(stations, up);
  const bore = Math.max(radius - wall, radius * 0.1);

  const count = rings.length;
  const vertices = (2 * count + 4) * AROUND;
  const positions = new Float32Array(vertices * 3);
  const normals = new Float32Array(vertices * 3);
  rings.forEach((ring, i) => {
    writeRing(positions, normals, i, ring, radius, 1);
    writeRing(positions, normals, count + i, ring, bore, -1);
  });
  const first = rings[0];
  const last = rings.at(-1);
  if (first && last) {
    writeCap(positions, normals, 2 * count, first, radius, bore, -1);
    writeCap(positions, normals, 2 * count + 2, last, radius, bore, 1);
  }
  const joints = [...starts.slice(0, -1), count - 1].filter((i) => i >= 0);
  return {
    positions,
    normals,
    ...weave(runs, starts),
    seams: seamRings(rings, joints, radius),
    stations: Float32Array.from(along),
  };
}

/** `sign` −1 turns the normals into the bore. */
function writeRing(
  positions: Float32Array,
  normals: Float32Array,
  ring: number,
  frame: Frame,
  r: number,
  sign: number,
) {
  const { position: p, normal: n, side: s } = frame;
  let at = ring * AROUND * 3;
  for (let j = 0; j < AROUND; j++) {
    const c = COS[j]!;
    const d = SIN[j]!;
    const x = c * n[0] + d * s[0];
    const y = c * n[1] + d * s[1];
    const z = c * n[2] + d * s[2];
    normals[at] = sign * x;
    positions[at++] = p[0] + r * x;
    normals[at] = sign * y;
    positions[at++] = p[1] + r * y;
    normals[at] = sign * z;
    positions[at++] = p[2] + r * z;
  }
}

/** Two rings (outer, then bore) that share the end's own normal. */
function writeCap(
  positions: Float32Array,
  normals: Float32Array,
  ring: number,
  frame: Frame,
  outer: number,
  bore: number,
  sign: number,
) {
  writeRing(positions, normals, ring, frame, outer, 1);
  writeRing(positions, normals, ring + 1, frame, bore, 1);
  const t = frame.tangent;
  const end = (ring + 2) * AROUND * 3;
  for (let at = ring * AROUND * 3; at < end; at++) normals[at] = sign * t[at % 3]!;
}

function seamRings(rings: readonly Frame[], joints: readonly number[], radius: number): Float32Array {
  const out = new Float32Array(joints.length * AROUND * 6);
  const r = radius * SEAM_LIFT;
  let at = 0;
  for (const joint of joints) {
    const { position: p, normal: n, side: s } = rings[joint]!;
    for (let j = 0; j < AROUND; j++) {
      for (let k = j; k <= j + 1; k++) {
        const c = r * COS[k]!;
        const d = r * SIN[k]!;
        out[at++] = p[0] + c * n[0] + d * s[0];
        out[at++] = p[1] + c * n[1] + d * s[1];
        out[at++] = p[2] + c * n[2] + d * s[2];
      }
    }
  }
  return out;
}
