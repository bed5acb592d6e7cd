/** Where a followed wave all but stands still: the gas streams against it nearly as fast as sound. SI units, crank degrees. */
import type { WavePath } from './wavePath';

/** Slower over ground than this share of the mean speed of sound counts as standing. Our own choice. */
const SLOW = 0.1;
/** Shorter waits are not told, crank degrees. */
const LEAST = 10;

export type Wait = { readonly pipe: string; readonly degrees: number };

/** The pipe that it stands in longest on its way back, and for how long; null where it stands nowhere. */
export function waitOf({ legs, sound }: Pick<WavePath, 'legs' | 'sound'>, rpm: number): Wait | null {
  // Metres in a crank degree.
  const slow = (SLOW * sound) / (6 * rpm);
  let longest: Wait | null = null;
  for (const { pipe, direction, angles, x } of legs) {
    if (direction > 0) continue;
    let degrees = 0;
    for (let k = 1; k < angles.length; k++) {
      const turned = angles[k]! - angles[k - 1]!;
      if (Math.abs(x[k]! - x[k - 1]!) < slow * turned) degrees += turned;
    }
    if (degrees >= LEAST && degrees > (longest?.degrees ?? 0)) longest = { pipe, degrees };
  }
  return longest;
}
