/** Areas and volumes of the lofted surfaces against the sections' closed forms. */
import { describe, expect, test } from 'vitest';
import { loadVerb } from '../../../geometry/nurbs/verb';
import { between, circleSection, openingSection, sectionArea } from '../../../geometry/transition/section';
import { arcParameter, sectionCurve } from '../../../geometry/transition/sectionCurve';
import { areaAt, transitionSurfaces, transitionVolume } from '../../../geometry/transition/surfaces';
import { openingArea } from '../../../shared/engine/openingArea';
import { CASES, type Case, OVAL, outsideOf, RECTANGLE, ROUND } from './sections';

const verb = await loadVerb();
const LENGTH = 20;
const shapeOf = ({ opening, bore, wall }: Case, more: { wall?: number; sleeve?: number } = {}) => ({
  opening: openingSection(opening),
  bore,
  length: LENGTH,
  wall,
  tubeWall: wall,
  sleeve: 0,
  ...more,
});

describe.each(CASES)('$name', (of) => {
  const shape = shapeOf(of);
  const surfaces = transitionSurfaces(verb, shape);
  const [from, to] = [openingArea(of.opening), (Math.PI / 4) * of.bore ** 2];

  test('its area goes evenly from the opening to the bore, everywhere', () => {
    for (let k = 0; k <= 40; k++) {
      const even = from + (k / 40) * (to - from);
      expect(Math.abs(areaAt(surfaces.bore, k / 40) / even - 1), `at ${k}/40`).toBeLessThan(1e-4);
    }
  });

  test('its outside is everywhere the wall farther out than its bore', () => {
    for (let k = 0; k <= 24; k++)
      for (let u = 0; u < 8; u += 0.19) {
        const [x, y] = surfaces.outside.point(u, k / 24);
        const inner = between(shape.opening, circleSection(of.bore), k / 24);
        // A sharp corner turns into a round one at once, and a cubic cannot quite.
        expect(outsideOf(inner, x, y)).toBeCloseTo(of.wall, 2);
      }
  });

  /** Of an annulus of even thickness: outline × wall + π wall². By Simpson's rule over the law, not the surface. */
  test('its volume of metal is that of the law', () => {
    const annulus = (t: number): number => {
      const { width, height, corner } = between(shape.opening, circleSection(of.bore), t);
      return (2 * (width + height) - (8 - 2 * Math.PI) * corner) * of.wall + Math.PI * of.wall ** 2;
    };
    const steps = 2000;
    let sum = annulus(0) + annulus(1);
    for (let k = 1; k < steps; k++) sum += (k % 2 ? 4 : 2) * annulus(k / steps);
    expect(transitionVolume(surfaces, shape) / ((LENGTH * sum) / (3 * steps))).toBeCloseTo(1, 5);
  });
});

test('round to round, in closed form: r² runs evenly, so ∫ r dz = 2 (r₁³ − r₀³) L / 3 (r₁² − r₀²)', () => {
  const shape = shapeOf(ROUND);
  const surfaces = transitionSurfaces(verb, shape);
  const [r0, r1] = [18, 19.7];
  const meanRadius = (2 * (r1 ** 3 - r0 ** 3)) / (3 * (r1 ** 2 - r0 ** 2));
  const metal = Math.PI * LENGTH * (2 * meanRadius * ROUND.wall + ROUND.wall ** 2);
  expect(Math.abs(transitionVolume(surfaces, shape) / metal - 1)).toBeLessThan(1e-7);
  const sleeved = transitionVolume(surfaces, { ...shape, sleeve: 5 });
  expect(sleeved - metal).toBeCloseTo(5 * Math.PI * (19.5 ** 2 - 18 ** 2), 3);
});

test('a wall of its own runs evenly into that of the tube', () => {
  const surfaces = transitionSurfaces(verb, shapeOf(ROUND, { wall: 3 }));
  const outside = (v: number) => Math.hypot(...surfaces.outside.point(1.3, v).slice(0, 2));
  const inside = (v: number) => Math.hypot(...surfaces.bore.point(1.3, v).slice(0, 2));
  for (const v of [0, 0.25, 0.5, 1]) expect(outside(v) - inside(v)).toBeCloseTo(3 - 1.5 * v, 5);
});

describe('sections', () => {
  test.each([ROUND, RECTANGLE, OVAL])('of $name have the area that the document gives its opening', ({ opening }) => {
    expect(sectionArea(openingSection(opening))).toBeCloseTo(openingArea(opening), 9);
  });

  test('are eight spans of two control points a span, closed', () => {
    const points = sectionCurve(openingSection(RECTANGLE.opening), 3);
    expect(points).toHaveLength(17);
    expect(points.at(-1)).toEqual(points[0]);
  });

  test('arcs are walked by angle', () => {
    const { bore } = transitionSurfaces(verb, shapeOf(ROUND));
    for (const share of [0, 0.2, 0.5, 0.9, 1]) {
      const [x, y] = bore.point(1 + arcParameter(share), 0);
      expect(Math.atan2(y, x)).toBeCloseTo((share * Math.PI) / 2, 9);
    }
  });
});
