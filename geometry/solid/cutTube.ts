/**
 * A straight tube cut by planes, as a closed solid: its start square, its far end along whichever plane comes first. Over
 * the ring that is the tube's section, each plane is a height that grows evenly, and the cut is the lowest of them; the ring
 * is divided where one plane gives way to the next, so every cut face is truly plane. mm; the tube's own frame, z along it.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Point2 } from '../plane/loop';
import { LEAST_MESH_STEP, LENGTH_TOLERANCE } from '../tolerance';
import { clipped, type Line2 } from './clip2';
import { liftedSolid } from './lifted';
import type { Mesh } from './mesh';
import { ringSides } from './sections';
import { DEFAULT_CHORD_ERROR } from './tube';
import { weldedPoints } from './weld2';

/** What lies on or behind the plane stays: normal · p ≤ offset. `normal` is a unit vector. */
export type CutPlane = { readonly normal: Vec3; readonly offset: number };

export type CutTubeShape = {
  readonly outsideDiameter: number;
  readonly wall: number;
  /** Where the tube begins, square. */
  readonly start: number;
  /** Each with a normal that leans toward +z or is square to z; at least one leans. */
  readonly planes: readonly CutPlane[];
  readonly chordError?: number;
};

export type CutTube = {
  readonly mesh: Mesh;
  /** The outer edges of start and cut as pairs of points. */
  readonly edges: Float32Array;
};

/** A normal less than this along the tube is square to it. */
const SQUARE = LENGTH_TOLERANCE;

/** @throws RangeError where no plane leans toward the end, or nothing is left of the tube */
export function cutTube(shape: CutTubeShape): CutTube {
  const { outsideDiameter, wall, start, chordError = DEFAULT_CHORD_ERROR } = shape;
  const outer = outsideDiameter / 2;
  const inner = outer - wall;
  const heights = heightLines(shape.planes);
  if (heights.length === 0) throw new RangeError('A cut tube needs a plane across its far end');
  const beside = sideLines(shape.planes);
  const angles = anglesOf(heights, beside, start, [outer, inner], ringSides(outer, chordError));

  const welded = weldedPoints(LEAST_MESH_STEP);
  const triangles: [number, number, number][] = [];
  angles.forEach((from, i) => {
    const to = angles[(i + 1) % angles.length]!;
    const cell = [at(inner, from), at(outer, from), at(outer, to), at(inner, to)];
    heights.forEach((own, j) => {
      const lines = [
        ...heights.filter((_, k) => k !== j).map((other) => minus(own, other)),
        ...beside,
        minus([start, 0, 0], own),
      ];
      const piece = lines.reduce((polygon, line) => clipped(polygon, line, ON_LINE * steepness(line)), cell);
      const corners = piece.map((p) => welded.at(p)).filter((c, k, all) => c !== all[(k + 1) % all.length]);
      for (let k = 1; k + 1 < corners.length; k++) triangles.push([corners[0]!, corners[k]!, corners[k + 1]!]);
    });
  });
  const { points } = welded;
  const solid = triangles.filter((t) => twiceArea(t.map((c) => points[c]!)) > 0);
  if (solid.length === 0) throw new RangeError('Nothing is left of the tube: it is cut away at its start');
  const floor = () => start;
  const ceiling = (p: Point2) => Math.max(start, cutHeight(heights, p));
  const { mesh, border } = liftedSolid({ points, triangles: solid }, floor, ceiling);
  const onOutside = (c: number) => Math.abs(Math.hypot(...points[c]!) - outer) < ON_OUTSIDE;
  const pairs = border
    .filter((edge) => edge.every(onOutside))
    .flatMap((edge) => [floor, ceiling].flatMap((height) => edge.flatMap((c) => [...points[c]!, height(points[c]!)])));
  return { mesh, edges: Float32Array.from(pairs) };
}

/** The height of each plane over the section: a + b·x + c·y. */
export const heightLines = (planes: readonly CutPlane[]): Line2[] =>
  planes
    .filter(({ normal }) => normal[2] > SQUARE)
    .map(({ normal: [x, y, z], offset }): Line2 => [offset / z, -x / z, -y / z]);

/** The lowest plane's. */
export const cutHeight = (heights: readonly Line2[], [x, y]: Point2): number =>
  Math.min(...heights.map(([a, b, c]) => a + b * x + c * y));

/** Planes that run along the tube cut its section instead. */
const sideLines = (planes: readonly CutPlane[]): Line2[] =>
  planes
    .filter(({ normal }) => Math.abs(normal[2]) <= SQUARE)
    .map(({ normal: [x, y], offset }): Line2 => [-offset, x, y]);

/** A corner this near to a line is on it, mm; and one this near to the outside. */
const ON_LINE = LEAST_MESH_STEP / 10;
const ON_OUTSIDE = LEAST_MESH_STEP;

const steepness = ([, b, c]: Line2): number => Math.max(Math.hypot(b, c), LENGTH_TOLERANCE);
const minus = (p: Line2, q: Line2): Line2 => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const at = (radius: number, angle: number): Point2 => [radius * Math.cos(angle), radius * Math.sin(angle)];

const twiceArea = ([p, q, r]: readonly Point2[]): number =>
  (q![0] - p![0]) * (r![1] - p![1]) - (q![1] - p![1]) * (r![0] - p![0]);

/**
 * Even steps round the ring, and every angle at which one plane gives way to another on either wall: corners of the cut
 * then fall on corners of the mesh. An even step next to one of those is left out, or slivers would come of it.
 */
function anglesOf(
  heights: readonly Line2[],
  beside: readonly Line2[],
  start: number,
  radii: readonly number[],
  sides: number,
): number[] {
  const step = (2 * Math.PI) / sides;
  const lines = [
    ...beside,
    ...heights.flatMap((h, i) => [minus(h, [start, 0, 0]), ...heights.slice(i + 1).map((other) => minus(h, other))]),
  ];
  const kinks: number[] = [];
  for (const angle of lines.flatMap((line) => radii.flatMap((r) => crossings(line, r))).sort((a, b) => a - b))
    if (angle - (kinks.at(-1) ?? -1) > NEAR_ANGLE) kinks.push(angle);
  const near = (a: number, b: number) => Math.abs(Math.sin((a - b) / 2)) * 2;
  const even = Array.from({ length: sides }, (_, i) => i * step).filter((a) =>
    kinks.every((kink) => near(a, kink) > step / 4),
  );
  return [...kinks, ...even].sort((a, b) => a - b);
}

/** Two kinks nearer than this, in radians, are one: about a hundredth of a millimetre on a tube. */
const NEAR_ANGLE = 5e-4;

/** Angles in [0, 2π) at which a line meets the circle: a + r·√(b²+c²)·cos(φ − φ₀) = 0. */
export function crossings([a, b, c]: Line2, radius: number): number[] {
  const reach = radius * Math.hypot(b, c);
  const cosine = -a / reach;
  if (!(Math.abs(cosine) < 1)) return [];
  const middle = Math.atan2(c, b);
  const half = Math.acos(cosine);
  return [middle - half, middle + half].map((angle) => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI));
}

/** Nodes and weights of Gauss and Legendre's rule on [−1, 1], 8 points. Source: from memory; held by the tests' closed forms. */
const GAUSS: readonly (readonly [node: number, weight: number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
].flatMap(([x, w]) => [[x!, w!] as const, [-x!, w!] as const]);

/** Parts of the wall that the rule is used on, one after the other: kinks of the cut may lie within it. */
const LAYERS = 8;

/** Volume of metal, mm³: round each circle of the wall exactly, by pieces between the cut's corners; across the wall by Gauss's rule. */
export function cutTubeVolume({ outsideDiameter, wall, start, planes }: CutTubeShape): number {
  const heights = heightLines(planes).map((h) => minus(h, [start, 0, 0]));
  const beside = sideLines(planes);
  const bounds = [...beside, ...heights, ...heights.flatMap((h, i) => heights.slice(i + 1).map((o) => minus(h, o)))];
  const layer = wall / LAYERS;
  let volume = 0;
  for (let k = 0; k < LAYERS; k++) {
    const middle = outsideDiameter / 2 - wall + (k + 0.5) * layer;
    for (const [node, weight] of GAUSS) {
      const r = middle + (node * layer) / 2;
      volume += ((weight * layer) / 2) * r * roundIntegral(heights, beside, bounds, r);
    }
  }
  return volume;
}

/** ∫ of the lowest height, where it is above 0 and within the side planes, once round a circle. */
function roundIntegral(heights: readonly Line2[], beside: readonly Line2[], bounds: readonly Line2[], r: number) {
  const stops = [0, ...bounds.flatMap((line) => crossings(line, r)), 2 * Math.PI].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 0; i + 1 < stops.length; i++) {
    const [from, to] = [stops[i]!, stops[i + 1]!];
    const middle = at(r, (from + to) / 2);
    if (beside.some(([a, b, c]) => a + b * middle[0] + c * middle[1] > 0)) continue;
    const low = heights.reduce((best, h) => (cutHeight([h], middle) < cutHeight([best], middle) ? h : best));
    if (cutHeight([low], middle) <= 0) continue;
    const [a, b, c] = low;
    sum += a * (to - from) + r * (b * (Math.sin(to) - Math.sin(from)) - c * (Math.cos(to) - Math.cos(from)));
  }
  return sum;
}
