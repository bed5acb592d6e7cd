/**
 * How a tube lies on a plate, against trying thousands of ways up on a tube of slices, against a mesh laid in that pose, and
 * against itself turned any way. Seeds in the names.
 */
import { expect, test } from 'vitest';
import { type Centerline, centerline, distance, dot, pointAt, sub, unit } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { checkHeights, laid } from '../../../../src/shop/making/heights/checkHeights';
import { type Rest, restOf } from '../../../../src/shop/making/heights/rest';
import { random } from '../../../random';
import { designOf, madeOf, randomShapes, wholeDesigns } from '../designs';
import { anyDirection, fineMesh, lineOf, lowestByTrying, partOf, RADIUS, slices, turnedLine } from './tubes';

const randomLine = (seed: number): Centerline => {
  const { shapes, last } = randomShapes(random(seed), { least: 10 });
  return lineOf(shapes, last);
};
const heightOf = ({ tube, up }: Rest): number => tube.height(up);

/** Chords of 1 mm slices are less deep than the arcs, at most by this, mm. */
const SLICED = 0.003;

test('the centre of mass and its height are those of the slices (seeds 1 to 40, any way up)', () => {
  for (let seed = 1; seed <= 40; seed++) {
    const line = randomLine(seed);
    const { tube } = restOf(line, RADIUS);
    const sliced = slices(line, RADIUS);
    expect(distance(tube.centre, sliced.centre)).toBeLessThan(SLICED);
    const chance = random(seed);
    for (let k = 0; k < 50; k++) {
      const up = anyDirection(chance);
      const low = tube.height(up) - sliced.height(up);
      expect(low, `seed ${seed}`).toBeGreaterThan(-SLICED);
      expect(low, `seed ${seed}`).toBeLessThan(2 * SLICED);
      // The point that is lowest is as low as is said.
      expect(-dot(tube.at(up), up)).toBe(tube.height(up));
    }
  }
});

/** And the slices are as low in that pose, so that trying has something to beat. */
function noneLower(rest: Rest, line: Centerline, seed: number): void {
  const sliced = slices(line, RADIUS);
  expect(Math.abs(sliced.height(rest.up) - heightOf(rest)), `seed ${seed}`).toBeLessThan(SLICED);
  expect(lowestByTrying(sliced, seed).height, `seed ${seed}`).toBeGreaterThan(heightOf(rest) - SLICED);
}

test('no way up is lower (seeds 1 to 15, 1500 tries each, the best bettered)', () => {
  for (let seed = 1; seed <= 15; seed++) {
    const line = randomLine(seed);
    const rest = restOf(line, RADIUS);
    noneLower(rest, line, seed);
  }
});

test('it rests: tipped any way, by much or little, its centre of mass rises (seeds 1 to 60)', () => {
  for (let seed = 1; seed <= 60; seed++) {
    const rest = restOf(randomLine(seed), RADIUS);
    const chance = random(seed);
    for (const tip of [0.1, 0.01, 0.001, 1e-4])
      for (let k = 0; k < 60; k++) {
        const aside = anyDirection(chance);
        const up = unit([rest.up[0] + tip * aside[0], rest.up[1] + tip * aside[1], rest.up[2] + tip * aside[2]]);
        expect(rest.tube.height(up), `seed ${seed}`).toBeGreaterThan(heightOf(rest) - 1e-9);
      }
  }
});

/** Lowest point where the mesh is cut square to the centerline. */
function sectionLow(mesh: ReturnType<typeof fineMesh>, placed: Vec3[], line: Centerline, station: number): number {
  const { position, tangent } = pointAt(line, station);
  const { positions, triangles } = mesh;
  const vertex = (v: number): Vec3 => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!];
  const side = placed.map((_, v) => dot(sub(vertex(v), position), tangent));
  const near = placed.map((_, v) => distance(vertex(v), position) < 1.5 * RADIUS);
  let low = Number.POSITIVE_INFINITY;
  for (let k = 0; k < triangles.length; k++) {
    const v = triangles[k]!;
    const w = triangles[k % 3 === 2 ? k - 2 : k + 1]!;
    if (!near[v] || !near[w]) continue;
    if (Math.abs(side[v]!) < 1e-6) low = Math.min(low, placed[v]![2]);
    else if (side[v]! * side[w]! < 0) {
      const t = side[v]! / (side[v]! - side[w]!);
      low = Math.min(low, placed[v]![2] + t * (placed[w]![2] - placed[v]![2]));
    }
  }
  return low;
}

/** Their chords are 0.005 mm deep at most, so rings are as much higher at most. */
const MESHED = 0.02;

function meshAgrees(line: Centerline, heights: readonly { at: unknown; height: number }[], name: string): void {
  const pose = laid(line, restOf(line, RADIUS));
  const mesh = fineMesh(line);
  const placed = Array.from({ length: mesh.positions.length / 3 }, (_, v) =>
    pose.place([mesh.positions[3 * v]!, mesh.positions[3 * v + 1]!, mesh.positions[3 * v + 2]!]),
  );
  const lowest = placed.reduce((least, [, , z]) => Math.min(least, z), Number.POSITIVE_INFINITY);
  expect(Math.abs(lowest), name).toBeLessThan(MESHED);
  const arcs = line.segments.filter(({ kind }) => kind === 'arc');
  const stations = [0, ...arcs.map((s) => s.station + s.length / 2), line.length];
  expect(heights).toHaveLength(stations.length);
  for (const [i, station] of stations.entries())
    expect(Math.abs(sectionLow(mesh, placed, line, station) - heights[i]!.height), `${name}, ${i}`).toBeLessThan(
      MESHED,
    );
}

test('a mesh in that pose touches the plate, and stands over it as high as is said (6 tubes of examples)', () => {
  const parts = wholeDesigns()
    .slice(0, 3)
    .flatMap(({ design }) => madeOf(design).map(({ part }) => part))
    .filter(({ resolved, startTrim }) => Math.abs(resolved.tubeRadius - RADIUS) < 1e-9 && startTrim === 0)
    .slice(0, 6);
  expect(parts.length).toBeGreaterThan(3);
  for (const part of parts) meshAgrees(part.line, checkHeights(part).heights, part.id);
});

test('likewise tubes drawn by chance (seeds 1 to 4)', () => {
  for (let seed = 1; seed <= 4; seed++) {
    const { shapes, last } = randomShapes(random(seed), { least: 10, most: 4 });
    meshAgrees(lineOf(shapes, last), checkHeights(partOf(designOf(shapes, last))).heights, `seed ${seed}`);
  }
});

/** Digits: within 0.005 mm. */
const HEIGHTS = 2;

test('turned any way or run through from its other end, it is the same tube (seeds 1 to 60)', () => {
  const measured = (line: Centerline) => {
    const rest = restOf(line, RADIUS);
    const { place } = laid(line, rest);
    return { low: heightOf(rest), ends: [place(line.points[0]!)[2], place(line.points.at(-1)!)[2]] };
  };
  for (let seed = 1; seed <= 60; seed++) {
    const line = randomLine(seed);
    const it = measured(line);
    const turned = measured(turnedLine(line, seed));
    const back = measured(centerline([...line.points].reverse(), [...line.radii].reverse()));
    for (const other of [turned, back]) expect(other.low, `seed ${seed}`).toBeCloseTo(it.low, 6);
    expect(turned.ends, `seed ${seed}`).toEqual(it.ends.map((x) => expect.closeTo(x, HEIGHTS)));
    expect([...back.ends].reverse(), `seed ${seed}`).toEqual(it.ends.map((x) => expect.closeTo(x, HEIGHTS)));
  }
});

test.each([
  ['nearly straight', [{ length: 150, rotation: 0, angle: 0.02, radius: 60 }], 150],
  [
    'nearly straight, twice',
    [
      { length: 150, rotation: 0, angle: 0.1, radius: 60 },
      { length: 80, rotation: 90, angle: 0.1, radius: 60 },
    ],
    150,
  ],
  [
    'nearly planar',
    [
      { length: 150, rotation: 0, angle: 60, radius: 60 },
      { length: 80, rotation: 0.01, angle: 70, radius: 60 },
    ],
    150,
  ],
  [
    'as tight as it can be',
    [
      { length: 30, rotation: 0, angle: 90, radius: RADIUS },
      { length: 30, rotation: 90, angle: 90, radius: RADIUS },
    ],
    30,
  ],
  ['a corkscrew', Array.from({ length: 8 }, () => ({ length: 5, rotation: 20, angle: 90, radius: 60 })), 5],
  ['a stub with a bend', [{ length: 1, rotation: 0, angle: 20, radius: 60 }], 1],
] as const)('%s: nothing lower by trying', (_, shapes, last) => {
  const line = lineOf(shapes, last);
  const rest = restOf(line, RADIUS);
  noneLower(rest, line, 1);
});

test('a tube that is the same from both ends rests as low two ways: taken is the way up with the greater z, whatever way it is given', () => {
  for (let seed = 1; seed <= 20; seed++) {
    const bend = { length: 100, rotation: 0, angle: 80, radius: 60 };
    const line = turnedLine(lineOf([bend, { ...bend, rotation: 70 }], 100), seed);
    const { up, tube } = restOf(line, RADIUS);
    const [a, b, c, d] = line.points as [Vec3, Vec3, Vec3, Vec3];
    const middle = (p: Vec3, q: Vec3): Vec3 => [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2];
    const axis = unit(sub(middle(b, c), middle(a, d)));
    const k = 2 * dot(up, axis);
    const other: Vec3 = [k * axis[0] - up[0], k * axis[1] - up[1], k * axis[2] - up[2]];
    expect(tube.height(other)).toBeCloseTo(tube.height(up), 6);
    expect(up[2], `seed ${seed}`).toBeGreaterThan(other[2] - 1e-4);
  }
});
