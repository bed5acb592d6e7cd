/**
 * A plane behind which all is solid: a square of it before the header, hatched along its edges on the solid side as a section
 * is on a drawing. mm.
 */
import { useMemo } from 'react';
import { BufferAttribute, BufferGeometry } from 'three';
import { add, addScaled, anySquareTo, cross, dot, reject, scale, sub, unit } from '../../../../geometry';
import type { Plane } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import { useSession } from '../../session';
import type { Ball } from '../camera/fit';
import { emphasisOf } from '../emphasis';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import { type GhostProps, Glass } from './Glass';

/** Half the square's side: this, or so many times the header's radius. */
const LEAST_HALF = 240;
const REACH = 0.8;
/** Strokes of the hatching along an edge. */
const STROKES = 36;

type Square = { readonly corners: readonly Vec3[]; readonly normal: Vec3; readonly stroke: number };

function squareOf({ position, normal }: Plane, around: Ball): Square {
  const n = unit(normal);
  const half = Math.max(LEAST_HALF, around.radius * REACH);
  const middle = addScaled(around.at, n, dot(sub(position, around.at), n));
  // One side level where the plane is not.
  const level = reject([0, 0, 1], n);
  const v = Math.abs(n[2]) > 0.999 ? anySquareTo(n) : unit(level);
  const u = cross(v, n);
  const corner = (x: number, y: number): Vec3 => add(middle, add(scale(u, x * half), scale(v, y * half)));
  return {
    corners: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)],
    normal: n,
    stroke: (2 * half) / STROKES,
  };
}

/** @param off how far along the normal */
function face({ corners, normal }: Square, off: number): BufferGeometry {
  const at = corners.map((p) => addScaled(p, normal, off));
  const made = new BufferGeometry();
  const soup = [0, 1, 2, 0, 2, 3].flatMap((k) => at[k]!);
  made.setAttribute('position', new BufferAttribute(Float32Array.from(soup), 3));
  made.setAttribute('normal', new BufferAttribute(Float32Array.from([0, 1, 2, 3, 4, 5].flatMap(() => normal)), 3));
  return made;
}

/** From each edge back into the solid, all at 45°. */
function hatching({ corners, normal, stroke }: Square): Float32Array {
  const pairs: number[] = [];
  corners.forEach((from, k) => {
    const edge = sub(corners[(k + 1) % 4]!, from);
    const step = scale(edge, 1 / STROKES);
    for (let i = 0; i < STROKES; i++) {
      const start = addScaled(from, step, i + 1);
      const end = addScaled(addScaled(start, normal, -0.7 * stroke), unit(edge), -0.7 * stroke);
      pairs.push(...start, ...end);
    }
  });
  return Float32Array.from(pairs);
}

export function GhostPlane({ around, ...props }: GhostProps<Plane> & { readonly around: Ball }) {
  const { surrounding, palette, strength } = props;
  const clearance = surrounding.clearance ?? 0;
  const square = useMemo(() => squareOf(surrounding, around), [surrounding, around]);
  const geometry = useOwned(() => face(square, 0), [square]);
  const halo = useOwned(() => face(square, clearance), [square, clearance]);
  const strokes = useMemo(() => hatching(square), [square]);
  const lit = useSession(
    (s) => emphasisOf({ kind: 'surrounding', id: surrounding.id }, s.selection, s.hovered) !== 'none',
  );
  return (
    <group>
      <Glass {...props} geometry={geometry} halo={clearance > 0 ? halo : null} flat />
      <Lines
        pairs={strokes}
        colour={lit ? palette.accent : palette.ghost}
        width={1}
        opacity={lit ? 0.7 : palette.ghostEdge * Math.max(strength, 0.55)}
      />
    </group>
  );
}
