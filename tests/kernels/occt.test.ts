import { beforeAll, expect, test } from 'vitest';
import {
  addScaled,
  anySquareTo,
  centerline,
  cross,
  measureMesh,
  triangleCount,
  tubeVolume,
  unit,
} from '../../geometry';
import type { Vec3 } from '../../shared/vec3';
import { random } from '../random';
import {
  free,
  loadOcct,
  type OcctShape,
  occtCutTube,
  occtMesh,
  occtMeshing,
  occtRuledLoft,
  occtSweep,
  occtTrim,
  occtVolume,
} from './occt';

beforeAll(loadOcct, 60_000);

/** The volume, and the shape given back. */
function volumeOf(shape: OcctShape): number {
  const volume = occtVolume(shape);
  free(shape);
  return volume;
}

const ring = (outer: number, inner: number): number => Math.PI * (outer ** 2 - inner ** 2);

test('a tube between square ends: wall area × length', () => {
  const run = { position: [10, -20, 30], direction: unit([1, 2, -2]), length: 80 } as const;
  expect(volumeOf(occtCutTube(run, 21.2, 19.7)) / (ring(21.2, 19.7) * 80)).toBeCloseTo(1, 9);
  expect(volumeOf(occtCutTube(run, 21.2, 0)) / (ring(21.2, 0) * 80)).toBeCloseTo(1, 9);
});

// A cylinder cut aslant holds its area × its height at the axis, whatever the slant (textbook solid geometry, from memory).
test.each([1, 2, 3, 4])('a tube cut aslant at both ends: wall area × height at its axis, seed %i', (seed) => {
  const next = random(seed);
  const any = (): Vec3 => [next.between(-1, 1), next.between(-1, 1), next.between(-1, 1)];
  const direction = unit(any());
  const position: Vec3 = [next.between(-300, 300), next.between(-300, 300), next.between(-300, 300)];
  const outer = next.between(15, 30);
  const inner = outer - next.between(1, 3);
  const slanted = (sign: number): Vec3 => {
    const aside = anySquareTo(direction);
    const turned = addScaled(aside, cross(direction, aside), next.between(-2, 2));
    return addScaled([sign * direction[0], sign * direction[1], sign * direction[2]], turned, next.between(-0.5, 0.5));
  };
  const planes = [
    { point: addScaled(position, direction, 60), normal: slanted(-1) },
    { point: addScaled(position, direction, 170), normal: slanted(1) },
  ];
  const volume = volumeOf(occtCutTube({ position, direction, length: 240 }, outer, inner, planes));
  expect(volume / (ring(outer, inner) * 110)).toBeCloseTo(1, 8);
});

test('a plane beyond the shape takes nothing, one before it everything', () => {
  const tube = occtCutTube({ position: [0, 0, 0], direction: [0, 0, 1], length: 50 }, 20, 18);
  expect(volumeOf(occtTrim(tube, { point: [0, 0, 60], normal: [0, 0, 1] })) / (ring(20, 18) * 50)).toBeCloseTo(1, 9);
  expect(() => occtTrim(tube, { point: [0, 0, -10], normal: [0, 0, 1] })).toThrow(/Nothing is left/);
  free(tube);
});

/** Corners of a regular polygon about the z axis. */
const polygon = (sides: number, radius: number, z: number, turn = 0): Vec3[] =>
  Array.from({ length: sides }, (_, i) => {
    const angle = (2 * Math.PI * i) / sides + turn;
    return [radius * Math.cos(angle), radius * Math.sin(angle), z];
  });
const polygonArea = (sides: number, radius: number): number =>
  (sides / 2) * Math.sin((2 * Math.PI) / sides) * radius ** 2;

// Prismatoid: h/3 · (A₁ + √(A₁A₂) + A₂), exact for similar ends (textbook solid geometry, from memory).
test('a ruled loft between similar polygons is a frustum of a pyramid', () => {
  const [a, b] = [polygonArea(24, 40), polygonArea(24, 25)];
  const volume = volumeOf(occtRuledLoft(polygon(24, 40, 10), polygon(24, 25, 100)));
  expect(volume / (30 * (a + Math.sqrt(a * b) + b))).toBeCloseTo(1, 8);
});

// Corner k runs from r∠φ to r∠(φ + θ) in a straight line: squared distance from the axis r²((1 − t)² + t² + 2t(1 − t) cos θ),
// and the section stays a regular polygon. Integrated: h · A · (2 + cos θ)/3.
test.each([10, 25])('a ruled loft between polygons turned by %i° has a waist', (degrees) => {
  const turn = (degrees * Math.PI) / 180;
  const volume = volumeOf(occtRuledLoft(polygon(12, 30, 0), polygon(12, 30, 50, turn)));
  expect(volume / ((50 * polygonArea(12, 30) * (2 + Math.cos(turn))) / 3)).toBeCloseTo(1, 6);
});

test('a loft between polygons of different corners is refused', () => {
  expect(() => occtRuledLoft(polygon(5, 10, 0), polygon(6, 10, 5))).toThrow(/5 and 6/);
});

/** Straights, a bend, a bend at once in another plane, and a straight. */
const LINE = centerline(
  [
    [0, 0, 0],
    [0, 0, 160],
    [0, 120, 160],
    [110, 120, 160],
  ],
  [60, 60],
);

test('a swept tube holds what Pappus says: wall area × length of its centerline', () => {
  const volume = volumeOf(occtSweep(LINE, 21.2, 19.7));
  expect(volume / tubeVolume(LINE, { outsideDiameter: 42.4, wall: 1.5 })).toBeCloseTo(1, 8);
});

test('half a torus: π²·R·r²', () => {
  const half = centerline(
    [
      [0, 0, 0],
      [0, 50, 0],
      [100, 50, 0],
      [100, 0, 0],
    ],
    [50, 50],
  );
  expect(volumeOf(occtSweep(half, 20, 0)) / (Math.PI ** 2 * 50 * 20 ** 2)).toBeCloseTo(1, 8);
});

test('its meshes close in on the volume as the chord error falls, and cost more triangles', () => {
  const tube = occtSweep(LINE, 21.2, 19.7);
  const whole = occtVolume(tube);
  const at = (error: number) => {
    occtMeshing(tube, error);
    const mesh = occtMesh(tube, error);
    return { triangles: triangleCount(mesh), off: Math.abs(measureMesh(mesh).volume / whole - 1) };
  };
  const [coarse, fine] = [at(0.2), at(0.02)];
  free(tube);
  expect(fine.triangles).toBeGreaterThan(3 * coarse.triangles);
  expect(fine.off).toBeLessThan(coarse.off / 3);
  expect(fine.off).toBeLessThan(0.002);
});
