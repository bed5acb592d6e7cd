/** One collector with one runner into it, as many inlets, pattern and lean as asked. */
import {
  addScaled,
  anySquareTo,
  centerline,
  cross,
  type Header,
  type Mesh,
  resolveHeader,
  tubeSolid,
} from '../../../geometry';
import type { Design, Merge } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';

export function collectorHeader(change: Partial<Merge> = {}): Header {
  const merge: Merge = {
    id: 'm1',
    inlets: 4,
    pattern: 'ring',
    position: [150, 250, -350],
    axis: [0.1, 0.3, -1],
    up: [1, 0, 0.2],
    pitch: 42.4,
    convergence: 8,
    outletDiameter: 60.3,
    length: 160,
    ...change,
  };
  const design: Design = {
    format: 'evenrun-design',
    version: 1,
    ports: [
      {
        id: 'p1',
        cylinder: 1,
        position: [0, 0, 0],
        direction: [0, 1, 0],
        up: [0, 0, 1],
        opening: { shape: 'round', diameter: 36 },
      },
    ],
    tubes: { primary: { outsideDiameter: 42.4, wall: 1.5, material: 'stainless-304' } },
    tooling: {
      primary: {
        centerlineRadius: 63.6,
        firstStraight: 20,
        betweenStraight: 0,
        lastStraight: 20,
        maxBendAngle: 170,
        maxBends: 4,
      },
    },
    merges: [merge],
    runners: [{ id: 'r1', tube: 'primary', from: { port: 'p1' }, to: { merge: 'm1' } }],
    groups: {},
  };
  return resolveHeader(design);
}

export const PATTERNS = ['ring', 'line'] as const;
export const JOINTS = ['slip', 'band-clamp', 'flange', 'flexible', 'weld'] as const;

/** A straight tube, finely cut, for a kernel of meshes. */
export function tubeBetween(from: Vec3, direction: Vec3, length: number, outer: number, inner: number): Mesh {
  const line = centerline([from, addScaled(from, direction, length)], []);
  return tubeSolid(line, { outsideDiameter: 2 * outer, wall: outer - inner, chordError: 0.002 });
}

/** A straight bar likewise. */
export function barBetween(from: Vec3, direction: Vec3, length: number, radius: number): Mesh {
  const sides = 360;
  const x = anySquareTo(direction);
  const y = cross(direction, x);
  const end = addScaled(from, direction, length);
  const ring = (centre: Vec3) =>
    Array.from({ length: sides }, (_, i) => {
      const a = (2 * Math.PI * i) / sides;
      return addScaled(addScaled(centre, x, radius * Math.cos(a)), y, radius * Math.sin(a));
    });
  const positions = Float64Array.from([...ring(from), ...ring(end), from, end].flat());
  const triangles = Array.from({ length: sides }, (_, i) => {
    const j = (i + 1) % sides;
    return [i, j, sides + j, i, sides + j, sides + i, j, i, 2 * sides, sides + i, sides + j, 2 * sides + 1];
  });
  return { positions, triangles: Uint32Array.from(triangles.flat()) };
}
