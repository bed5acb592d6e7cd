/** Where a bank's ports look: its direction dropped by the port's angle, away from its up. A unit vector. */
import type { EngineForm } from '../../../../shared/engine/form';
import type { Vec3 } from '../../../../shared/vec3';

export function directionOf({ banks, port }: EngineForm, bank: number): Vec3 {
  const { direction, up } = banks[bank]!;
  const turn = (port.angle * Math.PI) / 180;
  return direction.map((d, i) => Math.cos(turn) * d - Math.sin(turn) * up[i]!) as unknown as Vec3;
}
