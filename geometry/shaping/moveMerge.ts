/** Moving and turning collectors and moving ports, their runners' ends with them. mm, radians. */
import type { Design, Merge, Port } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { ANGLE_TOLERANCE } from '../tolerance';
import { add, angleBetween, norm, rotate, unit } from '../vector';
import { reseat } from './reseat';

/** Moves a collector; the ends of its runners, and of what leaves it, move with it. */
export function moveMerge(design: Design, id: string, by: Vec3): Design {
  if (norm(by) === 0) return design;
  return withMerge(design, id, (m) => ({ ...m, position: add(m.position, by) }));
}

/**
 * Turns a collector about an axis through the centre of its inlet plane: about its own axis a twist, about any other a tilt.
 * The axis that a `placement` measures its tilt from is written down before the first tilt, so that tilts cannot add up.
 * @param about need not be a unit vector @param angle right-handed
 */
export function turnMerge(design: Design, id: string, about: Vec3, angle: number): Design {
  if (angle === 0) return design;
  const axis = unit(about);
  return withMerge(design, id, (m) => {
    const along = angleBetween(axis, m.axis);
    const twists = Math.min(along, Math.PI - along) <= ANGLE_TOLERANCE;
    const kept =
      m.placement?.tilt !== undefined && !m.placement.axis && !twists
        ? { placement: { ...m.placement, axis: m.axis } }
        : {};
    return { ...m, axis: twists ? m.axis : rotate(m.axis, axis, angle), up: rotate(m.up, axis, angle), ...kept };
  });
}

/** Moves a port; its runner's start moves with it, its flange's fasteners stay. */
export function movePort(design: Design, id: string, by: Vec3): Design {
  if (norm(by) === 0) return design;
  const moved = (p: Port): Port => (p.id === id ? { ...p, position: add(p.position, by) } : p);
  return reseat(design, { ...design, ports: design.ports.map(moved) });
}

function withMerge(design: Design, id: string, change: (merge: Merge) => Merge): Design {
  return reseat(design, { ...design, merges: design.merges.map((m) => (m.id === id ? change(m) : m)) });
}
