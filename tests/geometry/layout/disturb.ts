/** Moves every bend point of a routed design by one distance in random directions: a header that nearly fits. */
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';

export function disturb(design: Design, distance: number, seed: number): Design {
  const next = random(seed);
  const moved = (p: Vec3): Vec3 => {
    const d = [next.between(-1, 1), next.between(-1, 1), next.between(-1, 1)] as const;
    const k = distance / Math.hypot(...d);
    return [p[0] + k * d[0], p[1] + k * d[1], p[2] + k * d[2]];
  };
  return {
    ...design,
    runners: design.runners.map((r) => {
      if (!r.points) return r;
      const last = r.points.length - 1;
      return { ...r, points: r.points.map((p, i) => (i === 0 || i === last ? p : moved(p))) };
    }),
  };
}
