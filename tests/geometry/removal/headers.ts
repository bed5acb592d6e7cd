/** Small headers to be taken off, and an outside judge of their ways: points all over the metal, moved in small steps. mm. */
import { flangePlan, type Header, pointAt, type RemovalPose, resolveHeader, sampleLoop } from '../../../geometry';
import type { Design, Fastener, Flange, Port, Runner, Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { header } from '../check/header';

const stud = (x: number): Fastener => ({ position: [x, 0, 0], kind: 'stud', thread: 'M8', length: 35, hole: 9 });

/** Tip of a stud: 35 less 1.5 diameters in the head; and one millimetre past it. */
export const OFF_STUDS = 35 - 12 + 1;

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
    for (let a = 0; a < 2 * Math.PI; a += Math.PI / 10)
      points.push([0, 1, 2].map((k) => c[k]! + r * (Math.cos(a) * u[k]! + Math.sin(a) * v[k]!)) as unknown as Vec3);
  };
  for (const r of h.runners.filter((x) => runners.includes(x.runner.id)))
    for (let s = 0; s <= r.centerline!.length; s += 4) {
      const { position, tangent } = pointAt(r.centerline!, s);
      ring(position, tangent, r.tubeRadius);
    }
  for (const id of merges) {
    const { position, axis, length, startRadius, endRadius } = h.merges.get(id)!.body;
    for (let t = 0; t <= 1; t += 0.05)
      ring(
        [0, 1, 2].map((k) => position[k]! + t * length * axis[k]!) as unknown as Vec3,
        axis,
        startRadius + t * (endRadius - startRadius),
      );
  }
  for (const flange of design.flanges!.filter((f) => flanges.includes(f.id)))
    for (const { pose, outline, thickness } of flangePlan(h, flange).plates) {
      const x = crossed(pose.up, pose.direction);
      for (const [a, b] of sampleLoop(outline, 0.01))
        for (const z of heights.map((part) => -part * thickness))
          points.push(
            [0, 1, 2].map(
              (k) => pose.position[k]! + a * x[k]! + b * pose.up[k]! + z * pose.direction[k]!,
            ) as unknown as Vec3,
          );
    }
  return points;
}

/** The least distance of any of the points to any of the boxes, all along the path in steps of about a millimetre. */
export function leastAlong(points: readonly Vec3[], path: readonly RemovalPose[], all: readonly Surrounding[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const far =
      Math.hypot(...a.move.map((x, k) => x - b.move[k]!)) + 600 * Math.hypot(...a.turn.map((x, k) => x - b.turn[k]!));
    const steps = Math.max(1, Math.ceil(far));
    for (let s = 0; s <= steps; s++) {
      const t = s / steps;
      const mix = (p: Vec3, q: Vec3): Vec3 => p.map((x, k) => x + t * (q[k]! - x)) as unknown as Vec3;
      const turn = mix(a.turn, b.turn);
      const move = mix(a.move, b.move);
      const angle = Math.hypot(...turn);
      const n: Vec3 = angle > 0 ? [turn[0] / angle, turn[1] / angle, turn[2] / angle] : [0, 0, 1];
      const [c, si] = [Math.cos(angle), Math.sin(angle)];
      for (const p of points) {
        const along = p[0] * n[0] + p[1] * n[1] + p[2] * n[2];
        const w = crossed(n, p);
        const q = [0, 1, 2].map((k) => c * p[k]! + si * w[k]! + (1 - c) * along * n[k]! + move[k]!);
        for (const o of all) {
          if (o.shape !== 'box') throw new Error('the judge knows boxes only');
          const d = q.map((x, k) => Math.max(o.min[k]! - x, x - o.max[k]!));
          const out = Math.hypot(...d.map((x) => Math.max(0, x)));
          least = Math.min(least, out > 0 ? out : Math.max(...d));
        }
      }
    }
  }
  return least;
}

const crossed = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const normalised = (a: Vec3): Vec3 => {
  const n = Math.hypot(...a);
  return [a[0] / n, a[1] / n, a[2] / n];
};
