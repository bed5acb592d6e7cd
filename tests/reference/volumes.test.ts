/** Theorem of Pappus (a calculus textbook, sec. 7.6): a torus and bend segments, in closed form and as our meshes. */
import { describe, expect, test } from 'vitest';
import { centerline, measureMesh, tubeMeshVolume, tubeSolid, tubeVolume } from '../../geometry';
import { published } from './published';

const RADIANS = Math.PI / 180;

/** A bend and nothing else; past 170° in two points, as the document stores it. */
function bend(radius: number, degrees: number) {
  const parts = Math.ceil(degrees / 170);
  const t = (degrees / parts) * RADIANS;
  const reach = radius / Math.cos(t / 2);
  const on = (angle: number, r: number) => [r * Math.sin(angle), r - r * Math.cos(angle) - (r - radius), 0] as const;
  const corners = Array.from({ length: parts }, (_, k) => on((k + 0.5) * t, reach));
  const points = [on(0, radius), ...corners, on(degrees * RADIANS, radius)];
  return centerline(
    points,
    corners.map(() => radius),
  );
}

// A unit circle at R = 2: the book prints 39.5; the area is ours.
test('a torus is what four of its quarters hold (pappus)', () => {
  const { V, A } = published<{ V: number; A: number }>('pappus');
  const quarter = bend(2, 90);
  expect(4 * Math.PI * quarter.length).toBeCloseTo(V, 6);
  expect(4 * 2 * Math.PI * quarter.length).toBeCloseTo(A, 6);
  expect(Math.abs(V - 39.5)).toBeLessThan(0.05);
});

type Segment = { od: number; t: number; clr: number; deg: number; arc: number; wall: number; bore: number };
describe.each(published<Segment[]>('bend.vol'))(
  '$od × $t, radius $clr, $deg°',
  ({ od, t, clr, deg, arc, wall, bore }) => {
    const line = bend(clr, deg);
    const shape = { outsideDiameter: od, wall: t, chordError: 0.02 };
    test('arc, wall volume, bore volume in closed form (bend.vol)', () => {
      expect(line.length).toBeCloseTo(arc, 5);
      expect(tubeVolume(line, shape)).toBeCloseTo(wall, 3);
      expect(Math.abs(Math.PI * (od - t) * t * arc - wall)).toBeLessThan(0.001);
      expect(Math.PI * (od / 2 - t) ** 2 * line.length).toBeCloseTo(bore, 3);
    });
    test('the mesh holds that less its own deficit, and comes near it', () => {
      const { volume } = measureMesh(tubeSolid(line, shape));
      expect(volume / tubeMeshVolume(line, shape)).toBeCloseTo(1, 9);
      expect(volume).toBeLessThan(wall);
      expect(volume / wall).toBeGreaterThan(0.99);
    });
  },
);
