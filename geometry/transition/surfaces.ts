/**
 * Bore and outside of a port transition as NURBS surfaces: sections from the opening to the tube's bore, evenly spaced and
 * of evenly changing area, lofted; the outside everywhere the wall farther out. Areas and volume are integrated over the
 * surfaces themselves. The wall is measured across the port's direction: where a wall leans, its metal is thinner by the cosine of
 * that, 13 % at most. z along the port's direction from the flange's outer face. mm, mm², mm³.
 */
import { type LoftedSurface, loft } from '../nurbs/loft';
import type { Verb } from '../nurbs/verb';
import { between, circleSection, offsetSection, type Section } from './section';
import { SECTION_DEGREE, SECTION_KNOTS, SPANS, sectionCurve } from './sectionCurve';

export type TransitionShape = {
  readonly opening: Section;
  /** Of the tube. */
  readonly bore: number;
  readonly length: number;
  /** At the opening. */
  readonly wall: number;
  /** Where it meets the tube: the tube's own. */
  readonly tubeWall: number;
  /** How far a straight sleeve reaches into the flange's step. */
  readonly sleeve: number;
};

export type TransitionSurfaces = { readonly bore: LoftedSurface; readonly outside: LoftedSurface };

/** Twelve steps: the area then strays from the straight line by less than 0.001 % for the openings that the tests have. */
const SECTIONS = 13;

const SHARES = Array.from({ length: SECTIONS }, (_, k) => k / (SECTIONS - 1));

/** Evenly spaced from the opening to the tube, both ends among them. */
export function transitionSections({ opening, bore, wall, tubeWall }: Omit<TransitionShape, 'length' | 'sleeve'>) {
  const inner = SHARES.map((t) => between(opening, circleSection(bore), t));
  const outer = inner.map((section, k) => offsetSection(section, wall + SHARES[k]! * (tubeWall - wall)));
  return { inner, outer };
}

export function transitionSurfaces(verb: Verb, shape: TransitionShape): TransitionSurfaces {
  const { inner, outer } = transitionSections(shape);
  const lofted = (sections: readonly Section[]) =>
    loft(verb, {
      degree: SECTION_DEGREE,
      knots: SECTION_KNOTS,
      controlPoints: sections.map((section, k) => sectionCurve(section, SHARES[k]! * shape.length)),
    });
  return { bore: lofted(inner), outside: lofted(outer) };
}

/** Gauss and Legendre's five points on [0, 1]. Source: Abramowitz and Stegun, table 25.4. */
const HALF_NODES = [0, 0.538469310105683, 0.906179845938664] as const;
const GAUSS = [
  [HALF_NODES[0], 0.568888888888889],
  [HALF_NODES[1], 0.478628670499366],
  [-HALF_NODES[1], 0.478628670499366],
  [HALF_NODES[2], 0.236926885056189],
  [-HALF_NODES[2], 0.236926885056189],
].map(([x, w]) => [(1 + x!) / 2, w! / 2] as const);

function integral(from: number, to: number, f: (x: number) => number): number {
  return GAUSS.reduce((sum, [x, w]) => sum + w * f(from + x * (to - from)), 0) * (to - from);
}

/** Enclosed by the surface at v: half of ∮ (x dy − y dx). */
export function areaAt(surface: LoftedSurface, v: number): number {
  const swept = (u: number): number => {
    const { point, du } = surface.along(u, v);
    return (point[0] * du[1] - point[1] * du[0]) / 2;
  };
  let area = 0;
  for (let side = 0; side < SPANS; side += 2) {
    // Along a straight this is constant; along an arc it is no polynomial, so that is taken by halves.
    area += swept(side + 0.5);
    area += integral(side + 1, side + 1.5, swept) + integral(side + 1.5, side + 2, swept);
  }
  return area;
}

/** Of the metal: between bore and outside, and in the sleeve. */
export function transitionVolume({ bore, outside }: TransitionSurfaces, { length, sleeve }: TransitionShape): number {
  const annulus = (v: number) => areaAt(outside, v) - areaAt(bore, v);
  const breaks = bore.breaksV;
  const along = breaks.slice(1).reduce((sum, v, k) => sum + integral(breaks[k]!, v, annulus), 0);
  // z runs evenly with v: sections are evenly spaced in both.
  return length * along + sleeve * annulus(0);
}
