/** The plane that something is drawn on, and round places on it. */
import { describe, expect, it } from 'vitest';
import { dot } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { baseAt, onBase, roundOn, stepFor } from '../../../src/app/drawing/base';
import { ABOVE, FRONT, sightAt } from './sights';

const PORTS: Vec3 = [37, 12.4, 61];

describe('without a surface', () => {
  it.each([
    ['from the front square to Y', FRONT, 1, -1],
    ['from above square to Z', ABOVE, 2, 1],
  ] as const)(
    'the base seen %s goes through the middle of the ports, rounded, and faces the eye',
    (_, view, axis, side) => {
      const { sight } = sightAt(view, [40, 10, 60]);
      const base = baseAt('box', sight, null, PORTS, 'mm');
      expect(base.axis).toBe(axis);
      expect(base.normal[axis]).toBe(side);
      expect(base.origin[axis]).toBe(Math.round(PORTS[axis] / base.step) * base.step);
      expect(dot(base.normal, sight.way)).toBeLessThan(0);
    },
  );
});

describe('on a surface', () => {
  const at: Vec3 = [20, -30.25, 40];

  it('nearly in a main plane the base lies in it, through the very place', () => {
    const { sight } = sightAt(FRONT, at);
    const base = baseAt('cylinder', sight, { at, normal: [0.02, 0.9996, 0.02] }, PORTS, 'mm');
    expect(base).toMatchObject({ axis: 1, origin: at });
    // The surface looked away: which side its normal is on says nothing.
    expect(base.normal).toEqual([0, -1, 0]);
  });

  it('that leans a cylinder stands square to it, and a box on the nearest main plane', () => {
    const { sight } = sightAt(FRONT, at);
    const normal: Vec3 = [0.6, -0.8, 0];
    const leaning = baseAt('cylinder', sight, { at, normal }, PORTS, 'mm');
    expect(leaning.axis).toBeNull();
    expect(leaning.normal).toEqual(normal);
    for (const [a, b] of [
      [leaning.u, leaning.v],
      [leaning.u, normal],
      [leaning.v, normal],
    ] as const)
      expect(dot(a, b)).toBeCloseTo(0, 12);
    expect(leaning.u[2]).toBeCloseTo(0, 12);
    expect(baseAt('box', sight, { at, normal }, PORTS, 'mm').axis).toBe(1);
  });

  it('seen edge-on is left for the main plane through the place that faces the view', () => {
    const { sight } = sightAt(FRONT, at);
    const base = baseAt('capsule', sight, { at, normal: [0, 0.05, 0.99875] }, PORTS, 'mm');
    expect(base).toMatchObject({ axis: 1, origin: at });
  });
});

describe('places', () => {
  it('are where the line of sight meets the base', () => {
    const place: Vec3 = [150, -80, 60];
    const base = baseAt('box', sightAt(ABOVE, [0, 0, 60]).sight, null, [0, 0, 60], 'mm');
    const met = onBase(base, sightAt(ABOVE, place).sight)!;
    place.forEach((x, i) => void expect(met[i]).toBeCloseTo(x, 6));
  });

  it('are none beyond the horizon', () => {
    const base = baseAt('box', sightAt(ABOVE, [0, 0, 0]).sight, null, [0, 0, 0], 'mm');
    const { sight } = sightAt(ABOVE, [0, 0, 0]);
    expect(onBase(base, { ...sight, way: [0.6, 0.8, 0] })).toBeNull();
    expect(onBase(base, { ...sight, way: [0.6, 0.7, 0.39] })).toBeNull();
    expect(onBase(base, { ...sight, way: [0.8, 0.6 - 1e-5, -0.01] })).toBeNull();
  });

  it('are round in the design on a main plane, and left where the hand has them when free', () => {
    const base = { ...baseAt('box', sightAt(FRONT, [0, 0, 0]).sight, null, [0, 7, 0], 'mm'), step: 5 };
    expect(roundOn(base, [52.4, 5, -38], null, false)).toEqual([50, base.origin[1], -40]);
    expect(roundOn(base, [52.41234567, 5, -38], null, true)).toEqual([52.4123, 5, -38]);
  });

  it('are a round way from the first on a plane that leans', () => {
    const at: Vec3 = [1.25, 2.5, 3.75];
    const normal: Vec3 = [0.6, -0.8, 0];
    const base = { ...baseAt('capsule', sightAt(FRONT, at).sight, { at, normal }, PORTS, 'mm'), step: 5 };
    const end = roundOn(base, [1.25 + 0.8 * 21, 2.5 + 0.6 * 21, 3.75 + 13], at, false);
    expect(end).toEqual([1.25 + 0.8 * 20, 2.5 + 0.6 * 20, 18.75]);
    expect(roundOn(base, at, null, false)).toEqual(at);
  });
});

it('steps are round in the unit shown, and greater from far off', () => {
  expect([0.2, 1, 1.5, 9, 400].map((mmPerPx) => stepFor('mm', mmPerPx))).toEqual([1, 5, 10, 50, 100]);
  expect([0.2, 1, 9].map((mmPerPx) => stepFor('in', mmPerPx) / 25.4)).toEqual([1 / 16, 1 / 4, 2]);
});
