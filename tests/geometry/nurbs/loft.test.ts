/** Lofted surfaces against sections and solids that are known exactly, and beside verb's own loft. */
import { describe, expect, test } from 'vitest';
import { type Homogeneous, loft } from '../../../geometry/nurbs/loft';
import { loadVerb } from '../../../geometry/nurbs/verb';
import { between, circleSection, type Section } from '../../../geometry/transition/section';
import { SECTION_DEGREE, SECTION_KNOTS, sectionCurve } from '../../../geometry/transition/sectionCurve';
import { outsideOf } from '../transition/sections';

const verb = await loadVerb();
const LENGTH = 20;
const opening: Section = { width: 30, height: 60, corner: 3 };
const at = (k: number): Section => between(opening, circleSection(48), k / 12);
const sections = Array.from({ length: 13 }, (_, k) => sectionCurve(at(k), (LENGTH * k) / 12));
const lofted = (controlPoints: readonly (readonly Homogeneous[])[]) =>
  loft(verb, { degree: SECTION_DEGREE, knots: SECTION_KNOTS, controlPoints });
const us = Array.from({ length: 81 }, (_, i) => i / 10);

describe('a loft', () => {
  test('meets every section, and each v lies in one plane', () => {
    const surface = lofted(sections);
    for (let k = 0; k <= 12; k++) {
      for (const u of us) {
        const [x, y, z] = surface.point(u, k / 12);
        expect(Math.abs(outsideOf(at(k), x, y))).toBeLessThan(1e-10);
        expect(z).toBeCloseTo((LENGTH * k) / 12, 10);
        const v = (k + 0.4) / 13;
        expect(surface.point(u, v)[2]).toBeCloseTo(LENGTH * v, 10);
      }
    }
  });

  test('through equal circles is a cylinder, everywhere', () => {
    const surface = lofted(Array.from({ length: 5 }, (_, k) => sectionCurve(circleSection(40), 5 * k)));
    for (const u of us)
      for (const v of [0, 0.13, 0.5, 0.77, 1]) {
        const [x, y, z] = surface.point(u, v);
        expect(Math.hypot(x, y)).toBeCloseTo(20, 10);
        expect(z).toBeCloseTo(20 * v, 10);
      }
  });

  test('needs four sections', () => {
    expect(() => lofted(sections.slice(0, 3))).toThrow(/4 sections, not 3/);
  });
});

// Why verb's own is not used. Where this no longer fails, ours can go.
test("verb's own loft strays from these sections, and its lines of one v are not plane", () => {
  const curves = sections.map((points) => new verb.core.NurbsCurveData(SECTION_DEGREE, SECTION_KNOTS, points));
  const surface = verb.eval.Make.loftedSurface(curves, 3);
  const { Eval } = verb.eval;
  const atHeight = (u: number, z: number): number[] => {
    let [low, high] = [0, 1];
    for (let i = 0; i < 60; i++) {
      const v = (low + high) / 2;
      if (Eval.rationalSurfacePoint(surface, u, v)[2]! < z) low = v;
      else high = v;
    }
    return Eval.rationalSurfacePoint(surface, u, low);
  };
  let strays = 0;
  let bent = 0;
  for (let k = 1; k < 12; k++) {
    const heights = us.map((u) => Eval.rationalSurfacePoint(surface, u, k / 12)[2]!);
    bent = Math.max(bent, Math.max(...heights) - Math.min(...heights));
    for (const u of us) {
      const [x, y] = atHeight(u, (LENGTH * k) / 12) as [number, number];
      strays = Math.max(strays, Math.abs(outsideOf(at(k), x, y)));
    }
  }
  expect(strays).toBeGreaterThan(1e-3);
  expect(bent).toBeGreaterThan(1e-3);
});
