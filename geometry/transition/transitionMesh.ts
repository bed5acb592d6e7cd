/**
 * A port transition as a hollow, closed mesh inscribed in its surfaces, with plane annular ends. Half of the chord error
 * goes to the arcs of its sections, half to the steps along it, as with tubes. mm; z along the port's direction.
 */
import type { Vec3 } from '../../shared/vec3';
import { chordCount } from '../curve/pointAt';
import type { LoftedSurface } from '../nurbs/loft';
import type { Mesh } from '../solid/mesh';
import { connectRings } from '../solid/rings';
import { LEAST_MESH_STEP } from '../tolerance';
import { distance, lerp } from '../vector';
import { arcParameter } from './sectionCurve';
import { type TransitionShape, type TransitionSurfaces, transitionSections } from './surfaces';

/** More steps than any wall needs that can be formed; a broken surface must not run on. */
const MOST_STEPS = 64;

/** And pairs of points along the outlines of both ends, to draw as its weld edges. */
export type MeshedTransition = { readonly mesh: Mesh; readonly edges: Float32Array };

export function transitionMesh(
  { bore, outside }: TransitionSurfaces,
  shape: TransitionShape,
  chordError: number,
): MeshedTransition {
  const us = columns(shape, chordError / 2);
  const steps = Math.max(...[bore, outside].map((surface) => stepsAlong(surface, us, chordError / 2)));
  const rings = (surface: LoftedSurface): Vec3[][] => {
    const along = Array.from({ length: steps + 1 }, (_, k) => us.map((u) => surface.point(u, k / steps)));
    if (shape.sleeve === 0) return along;
    return [along[0]!.map(([x, y]): Vec3 => [x, y, -shape.sleeve]), ...along];
  };
  const all = [...rings(outside), ...rings(bore)];
  const standIn = Uint32Array.from(all.flatMap((ring, k) => standIns(ring).map((i) => k * us.length + i)));
  const mesh: Mesh = {
    positions: Float64Array.from(all.flat(2)),
    triangles: connectRings(all.length / 2, us.length, (all.length / 2) * us.length, standIn),
  };
  const ends = [0, all.length / 2 - 1, all.length / 2, all.length - 1].map((k) => all[k]!);
  return {
    mesh,
    edges: Float32Array.from(ends.flatMap((ring) => ring.flatMap((p, i) => [p, ring.at(i - 1)!])).flat()),
  };
}

/** Where along a section vertices lie: the ends of each side, and evenly along each corner. */
function columns(shape: TransitionShape, sagitta: number): number[] {
  const widest = Math.max(...transitionSections(shape).outer.map(({ corner }) => corner));
  const count = chordCount(widest, Math.PI / 2, sagitta);
  return [1, 3, 5, 7].flatMap((corner) => [
    corner - 1,
    ...Array.from({ length: count }, (_, i) => corner + arcParameter(i / count)),
  ]);
}

/** Even steps so that no chord along the surface strays farther from it than `sagitta`. */
function stepsAlong(surface: LoftedSurface, us: readonly number[], sagitta: number): number {
  const strays = (steps: number): boolean =>
    Array.from({ length: steps }, (_, k) => k).some((k) =>
      us.some((u) => {
        const chord = lerp(surface.point(u, k / steps), surface.point(u, (k + 1) / steps), 0.5);
        return distance(chord, surface.point(u, (k + 0.5) / steps)) > sagitta;
      }),
    );
  let steps = 1;
  while (steps < MOST_STEPS && strays(steps)) steps++;
  return steps;
}

/** Sides and corners may shrink to nothing: neighbours on a ring that lie on one another become one. */
function standIns(ring: readonly Vec3[]): number[] {
  const standIn = ring.map((_, i) => i);
  const same = (i: number, j: number) => distance(ring[i]!, ring[j]!) < LEAST_MESH_STEP;
  for (let i = 1; i < ring.length; i++) if (same(i, standIn[i - 1]!)) standIn[i] = standIn[i - 1]!;
  for (let i = ring.length - 1; i > 0 && same(i, 0); i--) standIn[i] = 0;
  return standIn;
}
