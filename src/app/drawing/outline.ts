/**
 * The lines that show what is being drawn, in the design: its base, and the outline of what it would be if it ended here. Pure;
 * mm. Round things are drawn by their rims and by the two lines along them that the eye sees last.
 */
import { add, addScaled, anySquareTo, cross, dot, lerp, norm, scale, sub, unit } from '../../../geometry';
import type { PlacedShape } from '../../../shared/design/edit';
import type { Vec3 } from '../../../shared/vec3';
import type { Base } from './base';
import { facing } from './shapes';
import { type DrawState, draftOf } from './stroke';

/** `base`: what the first stroke set; `body`: the rest of it; `mark`: where it would begin. */
export type Lines = { readonly kind: 'base' | 'body' | 'mark'; readonly lines: readonly (readonly Vec3[])[] };

const ROUND = 48;

/** @param toEye the way to the eye from a place @param mmPerPx about where it is drawn: marks keep their size on the picture */
export function outlineOf(state: DrawState, toEye: (at: Vec3) => Vec3, mmPerPx: number): readonly Lines[] {
  if (state.phase === 'ready') {
    const { base, at } = state;
    return base && at ? [{ kind: 'mark', lines: markAt(base, at, 14 * mmPerPx) }] : [];
  }
  const { shape, base, a, b } = state;
  const draft = draftOf(state);
  if (shape === 'plane') {
    const [patch, arrow] = planeLines(a, facing(state), 70 * mmPerPx);
    return [
      { kind: 'base', lines: arrow! },
      { kind: 'body', lines: patch! },
    ];
  }
  const begun = { kind: 'base', lines: baseLines(shape, base, a, b) } as const;
  return draft ? [begun, { kind: 'body', lines: bodyLines(draft, toEye) }] : [begun];
}

/** A small square in the base with a cross through it, so that it is seen which way the base lies. */
function markAt({ u, v }: Base, at: Vec3, half: number): Vec3[][] {
  const p = (x: number, y: number): Vec3 => addScaled(addScaled(at, u, x * half), v, y * half);
  return [
    [p(-1, -1), p(1, -1), p(1, 1), p(-1, 1), p(-1, -1)],
    [p(-1.6, 0), p(1.6, 0)],
    [p(0, -1.6), p(0, 1.6)],
  ];
}

function baseLines(shape: 'box' | 'capsule' | 'cylinder', base: Base, a: Vec3, b: Vec3): Vec3[][] {
  if (shape === 'capsule') return [[a, b]];
  const off = sub(b, a);
  if (shape === 'cylinder') return [circle(a, base.u, base.v, norm(off)), [a, b]];
  const corner = addScaled(a, base.u, dot(off, base.u));
  return [[a, corner, b, sub(b, sub(corner, a)), a]];
}

function bodyLines(body: PlacedShape, toEye: (at: Vec3) => Vec3): Vec3[][] {
  switch (body.shape) {
    case 'box': {
      const { min, max } = body;
      const p = (n: number): Vec3 => [(n & 1 ? max : min)[0], (n & 2 ? max : min)[1], (n & 4 ? max : min)[2]];
      return [0, 1, 2, 3, 4, 5, 6, 7].flatMap((n) => [1, 2, 4].filter((k) => !(n & k)).map((k) => [p(n), p(n | k)]));
    }
    case 'cylinder': {
      const { a, b, radius } = body;
      const axis = unit(sub(b, a));
      const u = anySquareTo(axis);
      const v = cross(axis, u);
      return [circle(a, u, v, radius), circle(b, u, v, radius), ...sides(a, b, radius, toEye)];
    }
    case 'capsule': {
      const { a, b, radius } = body;
      const balls = [a, b].map((p) => {
        const back = toEye(p);
        const u = anySquareTo(back);
        return circle(p, u, cross(back, u), radius);
      });
      return [[a, b], ...balls, ...sides(a, b, radius, toEye)];
    }
    case 'plane':
      return [];
  }
}

function circle(middle: Vec3, u: Vec3, v: Vec3, radius: number): Vec3[] {
  return Array.from({ length: ROUND + 1 }, (_, k) => {
    const turn = (2 * Math.PI * k) / ROUND;
    return add(middle, add(scale(u, radius * Math.cos(turn)), scale(v, radius * Math.sin(turn))));
  });
}

/** The two lines along a round body where it turns away from the eye; none where the eye looks along it. */
function sides(a: Vec3, b: Vec3, radius: number, toEye: (at: Vec3) => Vec3): Vec3[][] {
  const across = cross(unit(sub(b, a)), toEye(lerp(a, b, 0.5)));
  if (norm(across) < 1e-3) return [];
  const off = scale(unit(across), radius);
  return [
    [add(a, off), add(b, off)],
    [sub(a, off), sub(b, off)],
  ];
}

/** A square of the plane with strokes on its solid side, and an arrow to its open one. */
function planeLines(at: Vec3, way: Vec3, half: number): [patch: Vec3[][], arrow: Vec3[][]] {
  const u = anySquareTo(way);
  const v = cross(way, u);
  const p = (x: number, y: number, z = 0): Vec3 =>
    addScaled(addScaled(addScaled(at, u, x * half), v, y * half), way, z * half);
  const corners = [p(-1, -1), p(1, -1), p(1, 1), p(-1, 1)] as const;
  const strokes = corners.flatMap((from, k) => {
    const edge = sub(corners[(k + 1) % 4]!, from);
    return [1, 2, 3, 4, 5, 6].map((i) => {
      const start = addScaled(from, edge, i / 6);
      return [start, addScaled(addScaled(start, way, -0.16 * half), unit(edge), -0.16 * half)];
    });
  });
  const patch = [[...corners, corners[0]], ...strokes];
  const arrow = [
    [at, p(0, 0, 1)],
    [p(0.14, 0, 0.8), p(0, 0, 1), p(-0.14, 0, 0.8)],
    [p(0, 0.14, 0.8), p(0, 0, 1), p(0, -0.14, 0.8)],
  ];
  return [patch, arrow];
}
