/** Moving what is around the header, the ends of a bar or cylinder, the faces of a box, a plane along its normal. mm. */
import { shiftedSurrounding } from '../../shared/design/edit';
import type { Design, Surrounding } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { add, addScaled, distance, dot, norm, sub, unit } from '../vector';

/** A box keeps this much thickness, and a cylinder this much length, while it is pulled, mm: past it, sides would swap their names. */
const LEAST_THICKNESS = 1;

export function moveSurrounding(design: Design, id: string, by: Vec3): Design {
  if (norm(by) === 0) return design;
  return withSurrounding(design, id, (s) => shiftedSurrounding(s, by));
}

export function moveCapsuleEnd(design: Design, id: string, end: 'a' | 'b', by: Vec3): Design {
  if (norm(by) === 0) return design;
  return withSurrounding(design, id, (s) => {
    if (s.shape !== 'capsule' && s.shape !== 'cylinder') return s;
    const moved = add(s[end], by);
    const other = end === 'a' ? s.b : s.a;
    // Flat ends need an axis to be square to; a bar of no length is a ball.
    if (s.shape === 'capsule' || distance(moved, other) >= LEAST_THICKNESS) return { ...s, [end]: moved };
    return { ...s, [end]: addScaled(other, unit(sub(s[end], other)), LEAST_THICKNESS) };
  });
}

/** A plane has nowhere to go along itself: it moves by the part of the way that goes along its normal. */
export function movePlane(design: Design, id: string, by: Vec3): Design {
  return withSurrounding(design, id, (s) => {
    if (s.shape !== 'plane') return s;
    const way = unit(s.normal);
    const along = dot(by, way);
    return along === 0 ? s : { ...s, position: addScaled(s.position, way, along) };
  });
}

/** @param axis 0, 1 or 2 for X, Y, Z @param side the face at the lower or the upper end of it */
export function moveBoxFace(design: Design, id: string, axis: 0 | 1 | 2, side: 'min' | 'max', by: number): Design {
  if (by === 0) return design;
  return withSurrounding(design, id, (s) => {
    if (s.shape !== 'box') return s;
    const low = Math.min(s.min[axis], s.max[axis]);
    const high = Math.max(s.min[axis], s.max[axis]);
    const at = side === 'min' ? Math.min(low + by, high - LEAST_THICKNESS) : Math.max(high + by, low + LEAST_THICKNESS);
    // Corners may come in any order: the one that is the lower (or upper) on this axis moves.
    const corner = s.min[axis] <= s.max[axis] === (side === 'min') ? 'min' : 'max';
    const moved = s[corner].map((x, i) => (i === axis ? at : x)) as unknown as Vec3;
    return { ...s, [corner]: moved };
  });
}

function withSurrounding(design: Design, id: string, change: (s: Surrounding) => Surrounding): Design {
  const { surroundings = [] } = design;
  return { ...design, surroundings: surroundings.map((s) => (s.id === id ? change(s) : s)) };
}
