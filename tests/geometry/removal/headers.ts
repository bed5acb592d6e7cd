/** Small headers to be taken off, and an outside judge of their ways: points all over the metal, moved in small steps. mm. */
import { flangePlan, type Header, pointAt, type RemovalPose, resolveHeader, sampleLoop } from '../../../geometry';
import type { Design, Fastener, Flange, Port, Runner, Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { header } from '../check/header';

const stud = (x: number): Fastener => ({ position: [x, 0, 0], kind: 'stud', thread: 'M8', length: 35, hole: 9 });

/** Tip of a stud: its length stands out of the head's face; and one millimetre past it. */
export const OFF_STUDS = 35 + 1;

/** Two runners out along +y, then down into a collector; one plate on three studs, the middle one between them. */
export function twin(surroundings: readonly Surrounding[], flange: Partial<Flange> = {}): Design {
  const plate: Flange = {
    id: 'f1',
    ports: ['p1', 'p2'],
    thickness: 10,
    gasket: 1.5,
    fasteners: [stud(-85), stud(50), stud(185)],
    ...flange,
  };
  return { ...header({ spacing: 200, surroundings }), flanges: [plate] };
}

/** One straight tube of 440 mm along +y, collector included. */
export function rod(surroundings: readonly Surrounding[]): Design {
  const design = header({ surroundings });
  const { inlet: _, ...to } = { merge: 'm1', inlet: 1 };
  return {
    ...design,
    ports: [{ ...design.ports[0]!, position: [0, 0, 0] }],
    flanges: [{ id: 'f1', ports: ['p1'], thickness: 10, fasteners: [stud(-30), stud(30)] }],
    merges: [
      {
        ...design.merges[0]!,
        inlets: 1,
        position: [0, 400, 0],
        axis: [0, 1, 0],
        up: [0, 0, 1],
        outletDiameter: 38,
        length: 40,
      },
    ],
    runners: [
      {
        ...design.runners[0]!,
        to: { ...to, inlet: 1 },
        points: [
          [0, 0, 0],
          [0, 400, 0],
        ],
      },
    ],
  };
}

/** Two banks that face 90° apart, each with one runner into one collector below. */
export function vee(): Design {
  const design = header();
  const s = Math.SQRT1_2;
  const port = (n: 1 | 2, side: 1 | -1): Port => ({
    ...design.ports[0]!,
    id: `p${n}`,
    cylinder: n,
    position: [100 * side, 0, 0],
    direction: [s * side, 0, -s],
    up: [0, 1, 0],
  });
  const runner = (n: 1 | 2, side: 1 | -1): Runner => ({
    ...design.runners[0]!,
    id: `r${n}`,
    from: { port: `p${n}` },
    to: { merge: 'm1', inlet: n },
    points: [
      [100 * side, 0, 0],
      [200 * side, 0, -100],
      [25 * side, 0, -300],
      [25 * side, 0, -500],
    ],
  });
  const flange = (n: 1 | 2, side: 1 | -1): Flange => ({
    id: `f${n}`,
    ports: [`p${n}`],
    thickness: 10,
    fasteners: [-30, 30].map((y) => ({ ...stud(0), position: [100 * side, y, 0] })),
  });
  return {
    ...design,
    ports: [port(1, -1), port(2, 1)],
    flanges: [flange(1, -1), flange(2, 1)],
    merges: [{ ...design.merges[0]!, position: [0, 0, -500], axis: [0, 0, -1], up: [0, 1, 0] }],
    runners: [runner(1, -1), runner(2, 1)],
  };
}

export const box = (id: string, min: Vec3, max: Vec3): Surrounding => ({ id, shape: 'box', min, max });

/** Points on the skin of everything that one piece is made of. @param heights of plates' points: 0 is the outer face, 1 the one on the head */
export function skin(
  design: Design,
  runners: readonly string[],
  merges: readonly string[],
  flanges: readonly string[],
  heights: readonly number[] = [0, 0.5, 1],
): Vec3[] {
  const h: Header = resolveHeader(design);
  const points: Vec3[] = [];
  const ring = (c: Vec3, t: Vec3, r: number): void => {
    const helper: Vec3 = Math.abs(t[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0];
    const u = normalised(crossed(t, helper));
    const v = crossed(t, u);
    for (let a = 0; a < 2 * Math.PI; a += Math.PI / 15)
      points.push([0, 1, 2].map((k) => c[k]! + r * (Math.cos(a) * u[k]! + Math.sin(a) * v[k]!)) as unknown as Vec3);
  };
  for (const r of h.runners.filter((x) => runners.includes(x.runner.id)))
    for (let i = 0, count = Math.ceil(r.centerline!.length / 4); i <= count; i++) {
      const { position, tangent } = pointAt(r.centerline!, (i / count) * r.centerline!.length);
      ring(position, tangent, r.tubeRadius);
    }
  for (const id of merges) {
    const { position, axis, length, startRadius, endRadius } = h.merges.get(id)!.body;
    for (let i = 0; i <= 30; i++) {
      const t = i / 30;
      ring(
        [0, 1, 2].map((k) => position[k]! + t * length * axis[k]!) as unknown as Vec3,
        axis,
        startRadius + t * (endRadius - startRadius),
      );
    }
  }
  for (const flange of design.flanges!.filter((f) => flanges.includes(f.id)))
    for (const { pose, outline, thickness } of flangePlan(h, flange).plates) {
      const x = crossed(pose.up, pose.direction);
      for (const [a, b] of closely(sampleLoop(outline, 0.01)))
        for (const z of heights.map((part) => -part * thickness))
          points.push(
            [0, 1, 2].map(
              (k) => pose.position[k]! + a * x[k]! + b * pose.up[k]! + z * pose.direction[k]!,
            ) as unknown as Vec3,
          );
    }
  return points;
}

/** A closed polygon's points no farther apart than 4 mm. */
function closely(polygon: readonly (readonly [number, number])[]): [number, number][] {
  return polygon.flatMap(([x, y], i) => {
    const [u, v] = polygon[(i + 1) % polygon.length]!;
    const count = Math.max(1, Math.ceil(Math.hypot(u - x, v - y) / 4));
    return Array.from({ length: count }, (_, k): [number, number] => [
      x + (k / count) * (u - x),
      y + (k / count) * (v - y),
    ]);
  });
}

/** The least distance of any of the points to any of the boxes, all along the path in steps of about two millimetres. */
export function leastAlong(points: readonly Vec3[], path: readonly RemovalPose[], all: readonly Surrounding[]): number {
  const boxes = all.map((o) => {
    if (o.shape !== 'box') throw new Error('the judge knows boxes only');
    return o;
  });
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const far = Math.hypot(...sum(a.move, b.move, -1)) + 500 * Math.hypot(...sum(a.turn, b.turn, -1));
    const steps = Math.max(1, Math.ceil(far / 2));
    for (let s = 0; s <= steps; s++) {
      const t = s / steps;
      const turn = sum(a.turn, sum(b.turn, a.turn, -1), t);
      const move = sum(a.move, sum(b.move, a.move, -1), t);
      const rows = [turned([1, 0, 0], turn), turned([0, 1, 0], turn), turned([0, 0, 1], turn)];
      for (const [px, py, pz] of points) {
        const x = rows[0]![0] * px + rows[1]![0] * py + rows[2]![0] * pz + move[0];
        const y = rows[0]![1] * px + rows[1]![1] * py + rows[2]![1] * pz + move[1];
        const z = rows[0]![2] * px + rows[1]![2] * py + rows[2]![2] * pz + move[2];
        for (const { min, max } of boxes) {
          const dx = Math.max(min[0] - x, x - max[0]);
          const dy = Math.max(min[1] - y, y - max[1]);
          const dz = Math.max(min[2] - z, z - max[2]);
          const most = Math.max(dx, dy, dz);
          if (most >= least) continue;
          const out = most > 0 ? Math.sqrt(Math.max(0, dx) ** 2 + Math.max(0, dy) ** 2 + Math.max(0, dz) ** 2) : most;
          if (out < least) least = out;
        }
      }
    }
  }
  return least;
}

/** By quaternions, which the kernel does not use. */
function turned(v: Vec3, turn: Vec3): Vec3 {
  const angle = Math.hypot(...turn);
  const k = angle > 0 ? Math.sin(angle / 2) / angle : 0;
  const q: Vec3 = [k * turn[0], k * turn[1], k * turn[2]];
  const inner = sum(crossed(q, v), v, Math.cos(angle / 2));
  return sum(v, crossed(q, inner), 2);
}

/** a + k·b */
const sum = (a: Vec3, b: Vec3, k: number): Vec3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];

const crossed = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const normalised = (a: Vec3): Vec3 => {
  const n = Math.hypot(...a);
  return [a[0] / n, a[1] / n, a[2] / n];
};
