/**
 * Where a scan stands, from three points on it and the three places in the design that they belong to: the rigid motion that
 * brings them nearest by least squares, no mirroring (Horn, Closed-form solution of absolute orientation using unit
 * quaternions, 1987). Three points lie in planes: these are laid into each other first, which leaves a turn about their
 * normal with a closed form. mm for places and residuals; points in the file's unit.
 */
import type { LengthUnit } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { add, addScaled, cross, distance, dot, norm, scale, sub, unit } from '../vector';
import { MM_PER_UNIT } from './soup';

export type ThreePoints = readonly [Vec3, Vec3, Vec3];

export type PosedByPoints = {
  readonly pose: { readonly position: Vec3; readonly x: Vec3; readonly y: Vec3 };
  /** How far each point is then from its place, mm. */
  readonly residuals: readonly [number, number, number];
  /** Where the points are as far from each other as the places are not. */
  readonly warning: string | null;
};

/** Height of a triangle over its longest side: flatter ones do not tell how the scan is turned about that side. */
const FLAT = 0.02;
/** Sides that differ by more than a picked point may be off: of a side, and at least in mm. */
const OFF_PART = 0.02;
const OFF_MM = 3;
/** Factors that a wrong unit makes, and what then is. */
const FACTORS: readonly (readonly [factor: number, from: LengthUnit, is: LengthUnit])[] = [
  [25.4, 'mm', 'in'],
  [1 / 25.4, 'in', 'mm'],
  [10, 'mm', 'cm'],
  [1 / 10, 'cm', 'mm'],
  [1000, 'mm', 'm'],
  [1 / 1000, 'm', 'mm'],
  [100, 'cm', 'm'],
  [1 / 100, 'm', 'cm'],
  [2.54, 'cm', 'in'],
  [1 / 2.54, 'in', 'cm'],
  [1000 / 25.4, 'in', 'm'],
  [25.4 / 1000, 'm', 'in'],
];
const WORDS: Readonly<Record<LengthUnit, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
  in: 'inches',
};

/** @returns its place, or `refusal`: why these points do not say where it stands, and the remedy, in words */
export function poseFromPoints(
  points: ThreePoints,
  places: ThreePoints,
  fileUnit: LengthUnit,
): PosedByPoints | { readonly refusal: string } {
  const own = points.map((p) => scale(p, MM_PER_UNIT[fileUnit])) as unknown as ThreePoints;
  const refusal = flatness(own, 'The points on the scan') ?? flatness(places, 'The places in the design');
  if (refusal) return { refusal };
  const [from, to] = [frameOf(own), frameOf(places)];
  // In the common plane: the turn that brings the one's points nearest to the other's.
  let [c, s] = [0, 0];
  for (let i = 0; i < 3; i++) {
    const [p, q] = [inFrame(own[i]!, from), inFrame(places[i]!, to)];
    c += p[0] * q[0] + p[1] * q[1];
    s += p[0] * q[1] - p[1] * q[0];
  }
  const size = Math.hypot(c, s);
  [c, s] = [c / size, s / size];
  const turn = (v: Vec3): Vec3 => {
    const [x, y, z] = [dot(v, from.x), dot(v, from.y), dot(v, from.z)];
    const inPlane = addScaled(scale(to.x, c * x - s * y), to.y, s * x + c * y);
    return addScaled(inPlane, to.z, z);
  };
  const position = sub(to.middle, turn(from.middle));
  const residuals = own.map((p, i) => distance(add(turn(p), position), places[i]!));
  return {
    pose: { position, x: turn([1, 0, 0]), y: turn([0, 1, 0]) },
    residuals: residuals as unknown as [number, number, number],
    warning: sidesWarning(own, places, fileUnit),
  };
}

function flatness(p: ThreePoints, what: string): string | null {
  const sides = sidesOf(p);
  const longest = Math.max(...sides);
  if (Math.min(...sides) <= FLAT * longest || !(longest > 0))
    return `${what} lie on each other: pick three that are far apart.`;
  const height = norm(cross(sub(p[1], p[0]), sub(p[2], p[0]))) / longest;
  if (height <= FLAT * longest)
    return `${what} lie on one line, so the scan could turn about it: pick a third well off that line.`;
  return null;
}

const sidesOf = ([a, b, c]: ThreePoints): number[] => [distance(a, b), distance(b, c), distance(c, a)];

type PlaneFrame = { readonly middle: Vec3; readonly x: Vec3; readonly y: Vec3; readonly z: Vec3 };

function frameOf(p: ThreePoints): PlaneFrame {
  const middle = scale(add(add(p[0], p[1]), p[2]), 1 / 3);
  const x = unit(sub(p[1], p[0]));
  const z = unit(cross(x, sub(p[2], p[0])));
  return { middle, x, y: cross(z, x), z };
}

function inFrame(p: Vec3, { middle, x, y }: PlaneFrame): readonly [number, number] {
  const v = sub(p, middle);
  return [dot(v, x), dot(v, y)];
}

function sidesWarning(points: ThreePoints, places: ThreePoints, fileUnit: LengthUnit): string | null {
  const [own, due] = [sidesOf(points), sidesOf(places)];
  const isOff = own.some((side, i) => Math.abs(side - due[i]!) > Math.max(OFF_MM, OFF_PART * due[i]!));
  if (!isOff) return null;
  const factor = Math.sqrt(due.reduce((sum, d) => sum + d * d, 0) / own.reduce((sum, d) => sum + d * d, 0));
  const alike = own.every((side, i) => Math.abs((side * factor) / due[i]! - 1) < 2 * OFF_PART);
  if (!alike) {
    const worst = own.map((side, i) => Math.abs(side - due[i]!));
    const i = worst.indexOf(Math.max(...worst));
    const side = `points ${i + 1} and ${((i + 1) % 3) + 1}`;
    return `On the scan ${side} are ${own[i]!.toFixed(1)} mm apart, in the design ${due[i]!.toFixed(1)} mm: is one of them another place?`;
  }
  const times = factor > 1 ? `${show(factor)} times too near each other` : `${show(1 / factor)} times too far apart`;
  const known = FACTORS.find(([f, from]) => from === fileUnit && Math.abs(factor / f - 1) < 2 * OFF_PART);
  return `Your points on the scan are ${times}: is the scan ${known ? `in ${WORDS[known[2]]}` : 'in another unit, or scaled'}?`;
}

const show = (factor: number): string => Number(factor.toPrecision(3)).toString();
