/** Tubes for the tests of check heights, and a slow, independent look at how high they stand: 1 mm slices, each one disc. */
import { type Centerline, centerline, dot, pointAt, rotate, sub, tubeSolid, unit } from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import { type Random, random } from '../../../random';
import { madeOf, pointsOf, type Shape } from '../designs';

export const OD = 42.4;
export const RADIUS = OD / 2;

export const lineOf = (shapes: readonly Shape[], last: number): Centerline => {
  const { points, radii } = pointsOf(shapes, last);
  return centerline(points, radii);
};

export const partOf = (design: Design) => madeOf(design)[0]!.part;

export function anyDirection(chance: Random): Vec3 {
  const z = chance.between(-1, 1);
  const phi = chance.between(0, 2 * Math.PI);
  const r = Math.sqrt(1 - z * z);
  return [r * Math.cos(phi), r * Math.sin(phi), z];
}

/** The whole line turned about the origin, any way. */
export function turnedLine(line: Centerline, seed: number): Centerline {
  const chance = random(seed);
  const [axis, angle] = [anyDirection(chance), chance.between(0, 2 * Math.PI)];
  return centerline(
    line.points.map((p) => rotate(p, axis, angle)),
    line.radii,
  );
}

export type Slices = { readonly centre: Vec3; readonly height: (up: Vec3) => number };

/** Height of the centre of mass over the lowest disc. */
export function slices(line: Centerline, radius: number): Slices {
  const count = Math.ceil(line.length);
  const at = Array.from({ length: count + 1 }, (_, k) => pointAt(line, (line.length * k) / count));
  const middles = Array.from({ length: count }, (_, k) => pointAt(line, (line.length * (k + 0.5)) / count).position);
  const centre = middles
    .reduce<[number, number, number]>((sum, p) => [sum[0] + p[0], sum[1] + p[1], sum[2] + p[2]], [0, 0, 0])
    .map((x) => x / count) as unknown as Vec3;
  const height = (up: Vec3): number =>
    Math.max(
      ...at.map(({ position, tangent }) => {
        const along = dot(tangent, up);
        return dot(sub(centre, position), up) + radius * Math.sqrt(Math.max(0, 1 - along * along));
      }),
    );
  return { centre, height };
}

/** The lowest there is by trying: many directions, the best of them bettered by ever smaller chance steps. */
export function lowestByTrying({ height }: Slices, seed: number, tries = 1500): { up: Vec3; height: number } {
  const chance = random(seed);
  const tried = Array.from({ length: tries }, () => {
    const up = anyDirection(chance);
    return { up, height: height(up) };
  }).sort((a, b) => a.height - b.height);
  const bettered = tried.slice(0, 6).map((from) => {
    let best = from;
    for (let step = 0.1; step > 1e-6; step *= 0.6)
      for (let k = 0; k < 12; k++) {
        const aside = anyDirection(chance);
        const up = unit([best.up[0] + step * aside[0], best.up[1] + step * aside[1], best.up[2] + step * aside[2]]);
        const its = height(up);
        if (its < best.height) best = { up, height: its };
      }
    return best;
  });
  return bettered.reduce((a, b) => (b.height < a.height ? b : a));
}

export const fineMesh = (line: Centerline) => tubeSolid(line, { outsideDiameter: OD, wall: 1.5, chordError: 0.005 });
