/** The middle of a mesh against closed forms: a frustum, and a bent tube's straight and arc (Pappus; a circular arc's centroid). */
import { describe, expect, test } from 'vitest';
import { centerline, frustumSolid, meshCentroid, tubeSolid } from '../../../geometry';

describe('the middle of what a mesh encloses', () => {
  test('a frustum: h/4 · (R² + 2Rr + 3r²)/(R² + Rr + r²) above its wide end', () => {
    const [R, r, h] = [30, 20, 90];
    const solid = frustumSolid({ position: [5, -7, 11], axis: [0, 0, 1], startRadius: R, endRadius: r, length: h });
    const [x, y, z] = meshCentroid(solid);
    expect(x).toBeCloseTo(5, 6);
    expect(y).toBeCloseTo(-7, 6);
    expect(z - 11).toBeCloseTo((h / 4) * ((R * R + 2 * R * r + 3 * r * r) / (R * R + R * r + r * r)), 1);
  });

  test('a tube of one right-angled bend between two straights', () => {
    const [leg, radius, od, wall] = [150, 60, 42.4, 1.5];
    const line = centerline(
      [
        [0, 0, 0],
        [leg + radius, 0, 0],
        [leg + radius, leg + radius, 0],
      ],
      [radius],
    );
    const [x, y, z] = meshCentroid(tubeSolid(line, { outsideDiameter: od, wall, up: [0, 0, 1] }));
    // Metal lies evenly along the straights; in the bend a ring of mean radius ρ shifts its middle outward by its
    // second moment over R: (ro² + ri²)/4/R.
    const arc = (radius * Math.PI) / 2;
    const shift = ((od / 2) ** 2 + (od / 2 - wall) ** 2) / 4 / radius;
    const toward = ((2 * Math.SQRT2) / Math.PI) * (radius + shift);
    const [cx, cy] = [leg, radius];
    const bend = [cx + toward * Math.SQRT1_2, cy - toward * Math.SQRT1_2] as const;
    const all = 2 * leg + arc;
    expect(x).toBeCloseTo((leg * (leg / 2) + arc * bend[0] + leg * (leg + radius)) / all, 1);
    expect(y).toBeCloseTo((leg * 0 + arc * bend[1] + leg * (radius + leg / 2)) / all, 1);
    expect(z).toBeCloseTo(0, 9);
  });

  test('a mesh that encloses nothing is refused', () => {
    const flat = { positions: new Float64Array([0, 0, 0, 1, 0, 0, 0, 1, 0]), triangles: new Uint32Array([0, 1, 2]) };
    expect(() => meshCentroid(flat)).toThrow(/encloses nothing/);
  });
});
