/**
 * A plate with a hole between two pipes: isentropic from the upstream plane to the throat, which is at the downstream plane's static
 * pressure or choked; stagnation enthalpy is kept, either way round. At rest it is a wall with two sides. SI units.
 * The downstream pressure is the one at which that pipe's wave takes what comes, and that leaves one equation in the upstream
 * velocity; squares of mass flows are compared, so that nothing is steep where the flow stops. The ratio of heats is the upstream one.
 */
import type { Opening } from './areaLaw';
import { stagnationEnthalpy, writeEntering, writeLeaving, writeWall } from './flux';
import { receive, speedOf, throat } from './orifice';
import { type End, type Planes, storesNothing } from './planes';
import { Wave } from './wave';

/** Of the velocity: after a step as small as this the next would be lost in rounding. */
const CLOSE = 1e-8;
const MOST = 60;

/** @param hole effective area; where it is larger than the smaller pipe's, that of the pipe counts */
export function restrictionEnd(planes: Planes, at: readonly number[], hole: Opening): End {
  const first = new Wave(planes, at[0]!);
  const second = new Wave(planes, at[1]!);
  const fractions = new Float64Array(planes.gas.carried);
  return storesNothing(at, false, (time, dt) => {
    first.meet();
    second.meet();
    first.atVelocity(0);
    second.atVelocity(0);
    const open = Math.min(hole.mean(time, time + dt), planes.area[at[0]!]!, planes.area[at[1]!]!);
    if (open > 0 && first.p > second.p) passOn(planes, first, second, open, fractions);
    else if (open > 0 && second.p > first.p) passOn(planes, second, first, open, fractions);
    else {
      writeWall(planes, first);
      writeWall(planes, second);
    }
  });
}

/** No faster than sonic, or than what is left behind a shock that stands on the plane. */
function fastest(up: Wave, supersonic: boolean): void {
  if (supersonic) up.behind(up.standing());
  else {
    up.leaveSonic();
    // The same state, with its slopes.
    if (up.u > 0) up.atVelocity(up.u);
  }
}

function passOn(planes: Planes, up: Wave, down: Wave, open: number, fractions: Float64Array): void {
  const area = planes.area[up.plane]!;
  const spread = area / planes.area[down.plane]!;
  const share = open / area;
  const square = share * share;
  const { gamma, gasConstant, density, sound } = up;
  const heat = (gamma * gasConstant) / (gamma - 1);

  const supersonic = up.velocity >= sound;
  fastest(up, supersonic);
  const most = up.u;
  if (!(most > 0)) {
    // Both run away from the plate faster than they can follow.
    up.atVelocity(0);
    writeWall(planes, up);
    writeWall(planes, down);
    return;
  }
  let u = most;
  let p = down.p;
  let low = 0;
  let high = most;
  let last = false;
  let before = Infinity;
  if (!supersonic) {
    const drive =
      up.pressure - down.pressure + density * sound * up.velocity - down.density * down.sound * down.velocity;
    const drag = density * sound + spread * down.density * down.sound;
    const guess = (2 * drive) / (drag + Math.sqrt(drag * drag + 2 * density * (1 / square - 1) * drive));
    if (guess < most) u = guess > 0 ? guess : 0.5 * most;
  }
  for (let n = 0; n < MOST; n++) {
    if (u < most) up.atVelocity(u);
    const flow = up.rho * u;
    const onward = spread * flow;
    const stagnation = (up.p / up.rho) * (1 / gasConstant) + (0.5 * u * u) / heat;
    const sonic = Math.sqrt(((2 * gamma) / (gamma + 1)) * gasConstant * stagnation);
    p = receive(down, onward, stagnation, gamma, gasConstant, p, (onward * sonic) / gamma);
    const through = throat(up, p);
    const excess = flow * flow - square * through;
    if (last || (u === most && !(excess > 0))) break;
    const flowSlope = up.rho + (u * up.rhoSlope) / up.slope;
    const v = speedOf(onward, p, stagnation, gamma, gasConstant);
    const stiff = v / (p + (onward * v * (gamma - 1)) / gamma) - down.slope;
    const back = (spread * flowSlope * (v / onward)) / stiff;
    const step = -excess / (2 * flow * flowSlope - square * (up.throatSlope + up.throatBack * back));
    last = !(Math.abs(step) > CLOSE * u);
    if (excess < 0) low = u;
    else high = u;
    u += step;
    // Where the throat chokes the squares have a corner, over which steps could go to and fro.
    const slow = Math.abs(step) > 0.7 * before;
    before = Math.abs(step);
    if (!last && (slow || !(u > low && u < high))) u = !slow && u >= high && high === most ? most : 0.5 * (low + high);
    if (u === most) fastest(up, supersonic);
  }
  // The hole swallows the shock: the stream stays supersonic up to the plate.
  if (supersonic && u === most) up.behind(up.pressure);

  const enthalpy = stagnationEnthalpy(planes, up);
  const onward = spread * up.rho * up.u;
  const stagnation = (up.p / up.rho) * (1 / gasConstant) + (0.5 * up.u * up.u) / heat;
  const sonic = Math.sqrt(((2 * gamma) / (gamma + 1)) * gasConstant * stagnation);
  const v = Math.min(speedOf(onward, p, stagnation, gamma, gasConstant), sonic);
  for (let k = 0, at = up.plane; k < fractions.length; k++, at += planes.count) fractions[k] = planes.fractions[at]!;
  writeLeaving(planes, up);
  writeEntering(planes, down.plane, onward, v, onward / v, p, enthalpy, fractions);
}
