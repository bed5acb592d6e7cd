/** What a hand holds while it shapes the header; everything else follows. */
import { placesOf, withPlaces } from '../../shared/design/edit';
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { LENGTH_TOLERANCE } from '../tolerance';
import { distance, lerp, sub, unit } from '../vector';

/** Points are counted as in the document, the start being 0. */
export type Held =
  | { readonly kind: 'points'; readonly runner: string; readonly points: readonly number[] }
  | { readonly kind: 'merge' | 'port' | 'surrounding'; readonly id: string };

/** How far a direction's tip is from what it turns, for weighing turns beside moves, mm. */
const LEVER = 150;

/** The places that say where the held thing is, in the same order for the same thing. */
function heldPlaces(design: Design, held: Held): readonly Vec3[] {
  switch (held.kind) {
    case 'points': {
      const points = pointsOf(design, held.runner);
      return held.points.every((i) => i in points) ? held.points.map((i) => points[i]!) : [];
    }
    case 'merge': {
      const merge = design.merges.find((m) => m.id === held.id);
      return merge ? [merge.position, tip(merge.position, merge.axis), tip(merge.position, merge.up)] : [];
    }
    case 'port': {
      const port = design.ports.find((p) => p.id === held.id);
      return port ? [port.position, tip(port.position, port.direction)] : [];
    }
    case 'surrounding': {
      const s = design.surroundings?.find((one) => one.id === held.id);
      return s ? placesOf(s) : [];
    }
  }
}

const pointsOf = (design: Design, runner: string): readonly Vec3[] =>
  design.runners.find((r) => r.id === runner)?.points ?? [];

const tip = (position: Vec3, direction: Vec3): Vec3 => {
  const d = unit(direction);
  return [position[0] + LEVER * d[0], position[1] + LEVER * d[1], position[2] + LEVER * d[2]];
};

/** How far the held thing stands in `found` from where it is in `asked`, mm. */
export function shortfall(asked: Design, found: Design, held: Held): number {
  const wanted = heldPlaces(asked, held);
  const had = heldPlaces(found, held);
  return Math.max(0, ...wanted.map((p, i) => (had[i] ? distance(p, had[i]) : 0)));
}

/**
 * The held thing `part` of the way from where it is in `from` to where it is in `to`; all else as in `to`. Null where the
 * two are not the same thing moved, such as a runner with a bend more.
 */
export function partWay(from: Design, to: Design, held: Held, part: number): Design | null {
  const [a, b] = [heldPlaces(from, held), heldPlaces(to, held)];
  if (a.length !== b.length || a.length === 0) return null;
  if (held.kind === 'points' && pointsOf(from, held.runner).length !== pointsOf(to, held.runner).length) return null;
  const at = a.map((p, i) => lerp(p, b[i]!, part));
  // A direction that is not being turned keeps its very numbers.
  const turned = (i: number, given: Vec3): Vec3 => {
    const [before, after] = [sub(a[i]!, a[0]!), sub(b[i]!, b[0]!)];
    return distance(before, after) > LENGTH_TOLERANCE ? unit(sub(at[i]!, at[0]!)) : given;
  };
  switch (held.kind) {
    case 'points':
      return {
        ...to,
        runners: to.runners.map((r) => {
          if (r.id !== held.runner || !r.points) return r;
          const points = r.points.map((p, i) => (held.points.includes(i) ? at[held.points.indexOf(i)]! : p));
          return { ...r, points };
        }),
      };
    case 'merge':
      return {
        ...to,
        merges: to.merges.map((m) =>
          m.id === held.id ? { ...m, position: at[0]!, axis: turned(1, m.axis), up: turned(2, m.up) } : m,
        ),
      };
    case 'port':
      return {
        ...to,
        ports: to.ports.map((p) =>
          p.id === held.id ? { ...p, position: at[0]!, direction: turned(1, p.direction) } : p,
        ),
      };
    case 'surrounding':
      return {
        ...to,
        surroundings: (to.surroundings ?? []).map((s) => (s.id === held.id ? withPlaces(s, at) : s)),
      };
  }
}
