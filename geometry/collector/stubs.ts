/**
 * The tubes of a collector, from its inlets to where they have met: each square at its inlet and cut along the planes it
 * shares with the others and across its end. Two tubes of one size whose axes lie in one plane share exactly a plane, the
 * one as far from both. mm; the collector's frame, and each tube's own: z along it, y away from the collector's axis.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Pose } from '../header/merge';
import { fromFrame, partFrame, toFrame } from '../parts/place';
import { type CutPlane, type CutTubeShape, cutTube, cutTubeVolume } from '../solid/cutTube';
import { add, dot, reject, scale, unit } from '../vector';
import type { CollectorInlet } from './inlets';
import type { PiecePlan } from './piece';
import type { CollectorPlan } from './plan';
import { sharedPlane } from './sharedPlane';

export type Stub = {
  /** From 1, as its inlet. */
  readonly number: number;
  /** Its frame in the collector's. */
  readonly frame: Pose;
  readonly shape: CutTubeShape;
};

/** None where inlets end at a plate that lies on them. */
export function stubs(plan: CollectorPlan): Stub[] {
  if (!(plan.tubesEnd > 0)) return [];
  return plan.inlets.map((inlet, k) => {
    const frame = stubFrame(inlet);
    const gap = plan.weldGap / 2;
    const shared = plan.inlets.flatMap((other) => {
      const plane = other === inlet ? null : sharedPlane(inlet, other);
      return plane?.meet ? [{ ...plane, offset: plane.offset - gap }] : [];
    });
    const end: CutPlane = { normal: [0, 0, 1], offset: plan.tubesEnd };
    return {
      number: k + 1,
      frame,
      shape: {
        outsideDiameter: 2 * plan.tubeRadius,
        wall: plan.wall,
        start: plan.weldGap,
        planes: [...shared, end].map((plane) => seenFrom(frame, plane)),
      },
    };
  });
}

export const stubFrame = ({ position, direction, outward }: CollectorInlet): Pose => ({
  position,
  direction,
  up: unit(reject(outward, direction)),
});

function seenFrom(frame: Pose, { normal, offset }: CutPlane): CutPlane {
  const axes = partFrame(frame);
  const own = toFrame([axes[0], axes[1], axes[2], [0, 0, 0]], normal);
  return { normal: own, offset: offset - dot(normal, frame.position) };
}

/** A frame that lies in another, in what the other lies in. */
export function poseWithin(outer: Pose, inner: Pose): Pose {
  const frame = partFrame(outer);
  const turned = (v: Vec3): Vec3 => add(add(scale(frame[0], v[0]), scale(frame[1], v[1])), scale(frame[2], v[2]));
  return { position: fromFrame(frame, inner.position), direction: turned(inner.direction), up: turned(inner.up) };
}

export const stubPieces = (plan: CollectorPlan): PiecePlan[] =>
  stubs(plan).map(({ number, frame, shape }) => ({
    kind: 'stub',
    name: `stub ${number}`,
    pose: poseWithin(plan.pose, frame),
    make: () => ({ ...cutTube(shape), volume: cutTubeVolume(shape) }),
  }));
