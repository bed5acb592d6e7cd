/** A collector's inlets in its own frame: z along the flow from the inlet plane, y along its up. mm, radians; unit vectors. */
import type { Vec3 } from '../../shared/vec3';
import type { Pose } from '../header/merge';
import { partFrame, toFrame } from '../parts/place';
import { LENGTH_TOLERANCE } from '../tolerance';
import { unit } from '../vector';

export type CollectorInlet = {
  readonly position: Vec3;
  /** Of travel, into the collector. */
  readonly direction: Vec3;
  /** Unit, from the axis toward the inlet, square to the axis; y for an inlet at the centre. */
  readonly outward: Vec3;
  /** From the axis. */
  readonly offset: number;
};

export function inletIn(pose: Pose, { position, direction }: Pose): CollectorInlet {
  const frame = partFrame(pose);
  const [x, y] = toFrame(frame, position);
  const offset = Math.hypot(x, y);
  const [u, v, w] = toFrame([frame[0], frame[1], frame[2], [0, 0, 0]], direction);
  return {
    position: [x, y, 0],
    direction: unit([u, v, w]),
    outward: offset > 0 ? [x / offset, y / offset, 0] : [0, 1, 0],
    offset,
  };
}

export const isLine = (inlets: readonly CollectorInlet[]): boolean =>
  inlets.every(({ position: [x, y] }) => {
    const [a, b] = inlets[0]!.position;
    return Math.abs(x * b - y * a) < LENGTH_TOLERANCE * inlets[0]!.offset * Math.max(1, Math.hypot(x, y));
  });

/** Inlets that stand side by side: in a ring each and the next, in a line likewise without the last and the first. */
export function neighbours(inlets: readonly CollectorInlet[]): (readonly [CollectorInlet, CollectorInlet])[] {
  const pairs = inlets.slice(1).map((inlet, k) => [inlets[k]!, inlet] as const);
  return inlets.length > 2 && !isLine(inlets) ? [...pairs, [inlets.at(-1)!, inlets[0]!]] : pairs;
}

/** How far the square end of a leaning tube reaches past the plane of the inlets, mm. */
export const reachPastPlane = (tubeRadius: number, convergence: number): number => tubeRadius * Math.sin(convergence);

/** Least metal between two bores of a plate, mm: common practice. */
export const LEAST_BRIDGE = 1;
