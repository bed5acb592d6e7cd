/**
 * The named views. Front is the end of the engine that cylinders are counted from; left and right are those of someone
 * who sits behind it, looking forward. Angles in radians as in `View`.
 */
import { add, dot, type Header, RADIANS, type ResolvedPort, scale } from '../../../../geometry';
import { rememberedByParts } from '../../../../shared/remember';
import type { Vec3 } from '../../../../shared/vec3';
import type { ViewPreset } from '../../session';

export type EngineSides = {
  /** +1 where the front of the engine is toward +X, −1 toward −X. */
  readonly front: 1 | -1;
  /** Level direction out of the head: the mean of the ports'. */
  readonly out: Vec3;
};

/** Cylinders are counted from the front; without a clue, the front is toward −X. The very same while the ports stay. */
export const engineSides = (header: Header | null): EngineSides => sidesOf(header ? [...header.ports.values()] : []);

const sidesOf = rememberedByParts((ports: readonly ResolvedPort[]) => ports, toldByPorts);

function toldByPorts(ports: readonly ResolvedPort[]): EngineSides {
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / (values.length || 1);
  const x = mean(ports.map((p) => p.pose.position[0]));
  const c = mean(ports.map((p) => p.port.cylinder));
  const trend = mean(ports.map((p) => (p.pose.position[0] - x) * (p.port.cylinder - c)));
  const sum = ports.map((p) => p.pose.direction).reduce(add, [0, 0, 0] as Vec3);
  const level = Math.hypot(sum[0], sum[1]);
  // Two banks that face apart cancel out: then bank 1's own side, +Y.
  const out: Vec3 = level > 0.3 * ports.length ? scale([sum[0], sum[1], 0], 1 / level) : [0, 1, 0];
  return { front: trend < 0 ? 1 : -1, out };
}

/** From behind a corner the ports, the sweep and the collector all show. */
const CORNER_TURN = 34 * RADIANS;
const CORNER_PITCH = 24 * RADIANS;

export function presetAngles(preset: ViewPreset, { front, out }: EngineSides): { yaw: number; pitch: number } {
  const forward = front > 0 ? 0 : Math.PI;
  const outward = Math.atan2(out[1], out[0]);
  switch (preset) {
    case 'front':
      return { yaw: forward, pitch: 0 };
    case 'back':
      return { yaw: forward + Math.PI, pitch: 0 };
    case 'right':
      return { yaw: forward - Math.PI / 2, pitch: 0 };
    case 'left':
      return { yaw: forward + Math.PI / 2, pitch: 0 };
    // Seen from above or below, the head's ports point down the page or up it, as on a drawing.
    case 'top':
      return { yaw: outward, pitch: Math.PI / 2 };
    case 'bottom':
      return { yaw: outward, pitch: -Math.PI / 2 };
    case 'corner': {
      const toFront: Vec3 = [front, 0, 0];
      const handed = Math.sign(dot([-out[1], out[0], 0], toFront)) || 1;
      return { yaw: outward + handed * CORNER_TURN, pitch: CORNER_PITCH };
    }
  }
}
