/**
 * The plane that a flange is drawn in, as its plate lies: from the first of its ports, square to the ports' mean direction,
 * x = up × direction across, y = up; so it is seen from where the tubes are. mm.
 */
import { DesignError, oneOf } from '../../shared/design/refusal';
import type { Design, Flange, Port } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { resolveHeader } from '../header/resolve';
import type { Point2 } from '../plane/loop';
import { RADIANS } from '../tolerance';
import { addScaled, dot, sub, unit } from '../vector';
import { plateFrame } from './plateFrame';

export type FlangeFrame = {
  readonly origin: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  /** Out of the head. */
  readonly z: Vec3;
};

export type FramedFlange = {
  readonly flange: Flange;
  readonly frame: FlangeFrame;
  /** In the flange's order. */
  readonly ports: readonly { readonly port: Port; readonly at: Point2 }[];
  readonly fasteners: readonly Point2[];
};

export const intoFrame = ({ origin, x, y }: FlangeFrame, p: Vec3): Point2 => {
  const d = sub(p, origin);
  return [dot(d, x), dot(d, y)];
};

/** @param out along the ports' direction, from the first port's face */
export const outOfFrame = ({ origin, x, y, z }: FlangeFrame, [a, b]: Point2, out: number): Vec3 =>
  addScaled(addScaled(addScaled(origin, x, a), y, b), z, out);

/** Ports of one plate look one way, and lie in one plane, to within this. */
const SAME_WAY = Math.cos(1 * RADIANS);
const SAME_PLANE = 1;

/** @throws DesignError where there is no such flange, or its ports lie in no one plane */
export function framedFlange(design: Design, id: string): FramedFlange {
  const flange = design.flanges?.find((f) => f.id === id);
  if (!flange)
    throw new DesignError([
      { path: `flanges/${id}`, found: 'no such flange', allowed: oneOf((design.flanges ?? []).map((f) => f.id)) },
    ]);
  const ports = flange.ports.flatMap((p) => design.ports.find((port) => port.id === p) ?? []);
  const [first] = ports;
  if (!first) throw new DesignError([{ path: `flanges/${id}/ports`, found: 'no ports', allowed: 'at least one port' }]);
  const known = resolveHeader(design).ports;
  const [x, y, z, origin] = plateFrame(ports.map((port) => known.get(port.id)!)).axes;
  const frame = { origin, x, y, z };
  for (const port of ports) {
    if (dot(unit(port.direction), z) < SAME_WAY || Math.abs(dot(sub(port.position, first.position), z)) > SAME_PLANE)
      throw new DesignError([
        {
          path: `ports/${port.id}`,
          found: `a port that is not in the plane of ${first.id}`,
          allowed: 'ports of one flange in one plane, looking one way; give it a flange of its own',
        },
      ]);
  }
  return {
    flange,
    frame,
    ports: ports.map((port) => ({ port, at: intoFrame(frame, port.position) })),
    fasteners: (flange.fasteners ?? []).map((f) => intoFrame(frame, f.position)),
  };
}
