/**
 * An arm that turns about an axis, against balls: the stands at which it touches one, in closed form. All stands are told apart
 * in equal steps, so fine that the tip of a long handle moves less than 3 mm from one to the next. mm, radians.
 */

import { LENGTH_TOLERANCE } from '../tolerance';

/** A round bar from the axis outward. */
export type Arm = {
  /** Where it leaves the axis. */
  readonly height: number;
  /** Above the plane square to the axis. */
  readonly rise: number;
  readonly length: number;
  /** Half its width, where it is flat. */
  readonly radius: number;
  /** Half its height, where it is flat: then it lies level. */
  readonly flat?: number;
};

/** Stands all round. At 250 mm the tip moves 2.7 mm between two. */
export const STANDS = 576;
export const STAND = (2 * Math.PI) / STANDS;

/**
 * Half the angle on either side of a ball's own direction within which the arm comes nearer to its middle than `ball`; 0 where it
 * never does, π where it does at every stand.
 *
 * @param rho, z the ball's middle: from the axis, and along it
 * @param ball its radius, and what must stay free between
 */
export function shadow(arm: Arm, rho: number, z: number, ball: number): number {
  const up = z - arm.height;
  if (arm.flat !== undefined) {
    const over = Math.max(0, Math.abs(up) - arm.flat);
    return over >= ball ? 0 : cone(rho, 0, 0, arm.length, arm.radius + Math.sqrt(ball * ball - over * over));
  }
  const reach = ball + arm.radius;
  // A level arm sees nothing that is far above or below it.
  if (arm.rise === 0 && Math.abs(up) >= reach) return 0;
  return cone(rho, up, arm.rise, arm.length, reach);
}

/**
 * A segment from the origin at an elevation: how far along it the foot of the point lies grows as it turns toward the point, and
 * the distance falls all the while, so one limit of the foot tells.
 */
function cone(rho: number, up: number, rise: number, length: number, reach: number): number {
  const squared = rho * rho + up * up - reach * reach;
  if (squared < 0) return Math.PI;
  const touching = Math.sqrt(squared);
  const foot = touching <= length ? touching : (squared + length * length) / (2 * length);
  const cosine = (foot - up * Math.sin(rise)) / (Math.max(rho, LENGTH_TOLERANCE) * Math.cos(rise));
  if (cosine >= 1) return 0;
  return cosine <= -1 ? Math.PI : Math.acos(cosine);
}

/** Calls `at` for every stand that the shadow covers. */
export function eachStand(theta: number, half: number, at: (stand: number) => void): void {
  if (half <= 0) return;
  if (half >= Math.PI) {
    for (let k = 0; k < STANDS; k++) at(k);
    return;
  }
  const last = Math.floor((theta + half) / STAND);
  for (let k = Math.ceil((theta - half) / STAND); k <= last; k++) at(((k % STANDS) + STANDS) % STANDS);
}

export type Run = { readonly first: number; readonly count: number };

/** Runs of free stands, as they follow each other round; one that has no end counts all. */
export function freeRuns(taken: Uint8Array): Run[] {
  const start = taken.indexOf(1);
  if (start < 0) return [{ first: 0, count: STANDS }];
  const runs: Run[] = [];
  let count = 0;
  for (let k = 1; k <= STANDS; k++) {
    const stand = (start + k) % STANDS;
    if (!taken[stand]) count++;
    else {
      if (count > 0) runs.push({ first: (stand - count + STANDS) % STANDS, count });
      count = 0;
    }
  }
  return runs;
}

/** Stands from the first to the last of a swing. */
export const standsOf = (swing: number): number => Math.ceil(swing / STAND - 1e-9) + 1;
