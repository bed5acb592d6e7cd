/** Places of a mesh near a frustum, patch by patch: on the mesh, exact, and the least of them the least there is. */
import { describe, expect, test } from 'vitest';
import { type Frustum, treeOf } from '../../../geometry';
import { minimumOnTriangle } from '../../../geometry/clearance/convexMinimum';
import { FrustumField } from '../../../geometry/clearance/frustumField';
import { frustumShape, slopeOf } from '../../../geometry/clearance/shapes';
import { nearestToFrustum, PLACE_NUMBERS, placesNear, SkinPlaces } from '../../../geometry/clearance/skinPlaces';
import { add, addScaled, anySquareTo, cross, dot, scale, sub, unit } from '../../../geometry/vector';
import type { MeshSurrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';
import { randomPoint } from './lines';

const SEEDS = [1, 2, 3, 4, 5, 6];
const REACH = 12;
const EVERYWHERE = Number.POSITIVE_INFINITY;

const cone = (next: Random): Frustum => ({
  position: randomPoint(next, 80),
  axis: unit(randomPoint(next, 1)),
  length: next.between(40, 150),
  startRadius: next.between(30, 70),
  endRadius: next.between(20, 45),
});

const near = (next: Random, body: Frustum, far: number): Vec3 =>
  add(addScaled(body.position, body.axis, body.length / 2), randomPoint(next, far));

test.each(SEEDS)('the field and its slope are those of the shape, seed %i', (seed) => {
  const next = random(seed);
  const body = cone(next);
  const { signedDistance } = frustumShape(body);
  const field = new FrustumField();
  field.set(body.position, body.axis, body.length, body.startRadius, body.endRadius);
  for (let i = 0; i < 400; i++) {
    const p = near(next, body, 100);
    expect(field.at(...p)).toBeCloseTo(signedDistance(...p), 9);
    const slope: Vec3 = [field.gx, field.gy, field.gz];
    const apart = Math.hypot(...sub(slope, slopeOf(signedDistance, ...p)));
    // On a kink differences mean the middle of two slopes: these seeds meet none.
    expect(apart).toBeLessThan(1e-4);
    // Convex: nowhere under the plane that touches it, which the search's bounds rely on.
    const q = near(next, body, 100);
    expect(signedDistance(...q)).toBeGreaterThan(field.at(...p) + dot(slope, sub(q, p)) - 1e-9);
  }
});

/** Triangles from a millimetre to some hundred, about the body and through it. */
function soupAbout(next: Random, body: Frustum, count: number): Vec3[][] {
  return Array.from({ length: count }, () => {
    const a = near(next, body, 130);
    const size = 10 ** next.between(0, 2.2);
    const corner = (): Vec3 => add(a, randomPoint(next, size));
    return [a, corner(), corner()];
  });
}

/** In single precision, as meshes are. */
const flatten = (triangles: readonly Vec3[][]): Float32Array => Float32Array.from(triangles.flat(2));

const cornersOf = (soup: Float32Array, i: number): [Vec3, Vec3, Vec3] =>
  [0, 3, 6].map((k) => [...soup.subarray(9 * i + k, 9 * i + k + 3)]) as unknown as [Vec3, Vec3, Vec3];

const SCAN: MeshSurrounding = { id: 'scan', shape: 'mesh', file: 'scan.stl' };

describe.each(SEEDS)('against every triangle in turn, seed %i', (seed) => {
  const next = random(100 + seed);
  const body = cone(next);
  const { signedDistance } = frustumShape(body);
  const few = seed % 2 === 0;
  const soup = flatten(soupAbout(next, body, few ? 6 : 300));
  const leasts = Array.from({ length: soup.length / 9 }, (_, i) =>
    minimumOnTriangle(signedDistance, ...cornersOf(soup, i)),
  );
  const least = Math.min(...leasts.map((m) => m.value));

  test('the least of all the skin', () => {
    const tree = treeOf(SCAN, soup);
    const found = nearestToFrustum(body, tree, EVERYWHERE)!;
    expect(Math.abs(found.value - least)).toBeLessThan(2e-3 * Math.max(0.01, Math.abs(least)));
    expect(found.value).toBeCloseTo(signedDistance(...found.at), 5);
    expect(tree.nearest(...found.at)).toBeLessThan(1e-4);
    expect(nearestToFrustum(body, tree, least - 0.01)).toBeNull();
  });

  test('each patch has a place on the mesh, and none is nearer than the nearest of these', () => {
    const tree = treeOf(SCAN, soup);
    const places = new SkinPlaces();
    placesNear({ frustum: body, until: EVERYWHERE }, tree, REACH, places);
    if (least < REACH * 0.9) expect(places.count).toBeGreaterThan(0);
    let lowest = Number.POSITIVE_INFINITY;
    for (let k = 0; k < places.count; k++) {
      const [, value, x, y, z, ...normal] = places.numbers.subarray(PLACE_NUMBERS * k, PLACE_NUMBERS * (k + 1));
      expect(value).toBeCloseTo(signedDistance(x!, y!, z!), 6);
      expect(value).toBeLessThan(REACH);
      expect(tree.nearest(x!, y!, z!)).toBeLessThan(1e-4);
      expect(Math.hypot(...normal)).toBeCloseTo(1, 9);
      lowest = Math.min(lowest, value!);
    }
    if (least < REACH * 0.9) expect(Math.abs(lowest - least)).toBeLessThan(Math.max(3e-3, 0.11 * Math.abs(least)));
  });

  test('the same mesh in inches, moved and turned, has the same places', () => {
    const [x, y, position] = [unit(randomPoint(next, 1)), randomPoint(next, 1), randomPoint(next, 300)];
    const ey = unit(addScaled(y, x, -dot(x, y)));
    const ez = cross(x, ey);
    const back = (p: Vec3): Vec3 => {
      const d = scale(sub(p, position), 1 / 25.4);
      return [dot(d, x), dot(d, ey), dot(d, ez)];
    };
    const away = flatten(
      Array.from({ length: soup.length / 9 }, (_, i) => cornersOf(soup, i).map((p): Vec3 => back(p))),
    );
    const placed = treeOf({ ...SCAN, unit: 'in', pose: { position, x, y } }, away);
    const whole = nearestToFrustum(body, placed, EVERYWHERE)!;
    expect(Math.abs(whole.value - least)).toBeLessThan(1e-3 + 2e-3 * Math.abs(least));
    expect(signedDistance(...whole.at)).toBeCloseTo(whole.value, 4);
    const [one, other] = [new SkinPlaces(), new SkinPlaces()];
    placesNear({ frustum: body, until: EVERYWHERE }, treeOf(SCAN, soup), REACH, one);
    placesNear({ frustum: body, until: EVERYWHERE }, placed, REACH, other);
    expect(Math.abs(other.count - one.count)).toBeLessThanOrEqual(2);
    for (let k = 0; k < other.count; k++) {
      const [, value, px, py, pz, nx, ny, nz] = other.numbers.subarray(PLACE_NUMBERS * k, PLACE_NUMBERS * (k + 1));
      expect(signedDistance(px!, py!, pz!)).toBeCloseTo(value!, 4);
      const slope = slopeOf(signedDistance, px!, py!, pz!);
      // Beside a kink differences tell the middle of two slopes.
      if (Math.hypot(...slope) > 0.9999) expect(Math.hypot(...sub(slope, [nx!, ny!, nz!]))).toBeLessThan(0.02);
    }
  });
});

describe('a fine sheet beside a body', () => {
  const body: Frustum = { position: [0, 0, 0], axis: [1, 0, 0], length: 120, startRadius: 40, endRadius: 40 };

  /** Of squares of half a millimetre, all of it seen from `low` on. */
  function sheet(at: (s: number, t: number) => Vec3, n: number): Float32Array {
    const triangles: Vec3[][] = [];
    for (let i = 0; i < n; i++)
      for (let k = 0; k < n; k++) {
        const [a, b, c, d] = [
          at(i / n, k / n),
          at((i + 1) / n, k / n),
          at((i + 1) / n, (k + 1) / n),
          at(i / n, (k + 1) / n),
        ];
        triangles.push([a, b, c], [a, c, d]);
      }
    return flatten(triangles);
  }

  test('is few places, one beside each piece of the length', () => {
    const soup = sheet((s, t) => [-30 + 180 * s, -60 + 120 * t, 43], 240);
    const places = new SkinPlaces();
    placesNear({ frustum: body, until: EVERYWHERE }, treeOf(SCAN, soup), REACH, places);
    expect(places.count).toBeGreaterThan(7);
    expect(places.count).toBeLessThan(60);
    const beside = Array.from({ length: places.count }, (_, k) => places.numbers.subarray(PLACE_NUMBERS * k))
      .filter(([, value]) => Math.abs(value! - 3) < 0.01)
      .map(([, , x]) => x!);
    for (let x = 0; x < 120; x += 20) expect(beside.some((at) => Math.abs(at - x) <= 20)).toBe(true);
  });

  test('where only so much of the length counts, nothing further on is found', () => {
    const soup = sheet((s, t) => [-30 + 180 * s, -60 + 120 * t, 43], 240);
    const places = new SkinPlaces();
    placesNear({ frustum: body, until: 25 }, treeOf(SCAN, soup), REACH, places);
    expect(places.count).toBeGreaterThan(2);
    for (let k = 0; k < places.count; k++) expect(places.numbers[PLACE_NUMBERS * k + 2]).toBeLessThanOrEqual(25);
  });

  test('square through its middle: told, and the way out is along the axis', () => {
    const soup = flatten([
      [
        [50, -300, -300],
        [50, 300, -300],
        [50, 0, 600],
      ],
    ]);
    const places = new SkinPlaces();
    placesNear({ frustum: body, until: EVERYWHERE }, treeOf(SCAN, soup), REACH, places);
    expect(places.count).toBeGreaterThan(0);
    const deepest = Math.min(...Array.from({ length: places.count }, (_, k) => places.numbers[PLACE_NUMBERS * k + 1]!));
    // Deep in, told to a tenth.
    expect(deepest).toBeGreaterThan(-40.001);
    expect(deepest).toBeLessThan(-36);
  });

  test('beside a long thing that comes nearer further on, what counts is told without end', () => {
    const soup = flatten([
      [
        [-50, -60, 60],
        [400, -60, 10],
        [400, 60, 10],
      ],
    ]);
    const long = { ...body, length: 1e4 };
    const before = performance.now();
    const places = new SkinPlaces();
    placesNear({ frustum: long, until: 110 }, treeOf(SCAN, soup), 20, places);
    // Against a search of all that does not count; it takes some milliseconds.
    expect(performance.now() - before).toBeLessThan(1000);
    expect(places.count).toBeGreaterThan(3);
  });

  test.each([10, 25])('deep through it, %i mm from the axis, every place pushes the way the deepest does', (off) => {
    const soup = sheet((s, t) => [-30 + 180 * s, -60 + 120 * t, off], 240);
    const places = new SkinPlaces();
    placesNear({ frustum: body, until: EVERYWHERE }, treeOf(SCAN, soup), REACH, places);
    const least = 40 - off;
    let most = 0;
    for (let k = 0; k < places.count; k++) {
      const [, value, x, , , , , nz] = places.numbers.subarray(PLACE_NUMBERS * k);
      // Near an end the shortest way out is along the axis.
      if (x! < 35 || x! > 85 || value! > 0) continue;
      most = Math.max(most, -value! / nz!);
    }
    // What the straightened rows ask of a move across the sheet: no more than takes the body off it, but for curving.
    expect(most).toBeGreaterThan(least - 0.1);
    expect(most).toBeLessThan(1.3 * least);
  });

  test('all of a plane as near as the end beside it is told without end', () => {
    const u = anySquareTo([1, 0, 0]);
    const v = cross([1, 0, 0], u);
    const corner = (a: number, b: number): Vec3 => addScaled(addScaled([120.04, 0, 0], u, a), v, b);
    const soup = flatten([
      [corner(-300, -300), corner(300, -300), corner(300, 300)],
      [corner(-300, -300), corner(300, 300), corner(-300, 300)],
    ]);
    const tree = treeOf(SCAN, soup);
    const before = performance.now();
    expect(nearestToFrustum(body, tree, EVERYWHERE)!.value).toBeCloseTo(0.04, 4);
    const places = new SkinPlaces();
    placesNear({ frustum: body, until: EVERYWHERE }, tree, REACH, places);
    // Against a search that never ends; it takes some milliseconds.
    expect(performance.now() - before).toBeLessThan(2000);
    expect(places.count).toBeGreaterThan(8);
  });
});
