/** Which wrapped balls an arm touches, and at which stands: to weigh swings against each other. mm, radians, in the place's frame. */
import type { Near } from './local';
import { type Arm, shadow } from './swing';

export type Shadow = { readonly ball: number; readonly theta: number; readonly half: number };

/** @param wrapOnly those that wrap makes bigger */
export function shadowsOf(near: Near, arms: readonly Arm[], room: number, wrapOnly = false): Shadow[] {
  const found: Shadow[] = [];
  for (const arm of arms)
    for (let i = 0; i < near.count; i++) {
      if (wrapOnly && near.wrapped[i]! <= near.bare[i]!) continue;
      const half = shadow(arm, near.rho[i]!, near.z[i]!, near.wrapped[i]! + room);
      if (half > 0) found.push({ ball: i, theta: near.theta[i]!, half });
    }
  return found;
}

/** Between two directions, the short way round. */
export const turned = (a: number, b: number): number => {
  const off = Math.abs(a - b) % (2 * Math.PI);
  return Math.min(off, 2 * Math.PI - off);
};
