/**
 * Flow between a pipe and a large room through a hole in a plate on its plane: isentropic to the throat, the throat at the downstream
 * static pressure or choked, either way round; stagnation enthalpy is kept. What lies behind the hole in the pipe fills the whole
 * plane again, at the throat's pressure while it is not choked. With the whole plane open this is the open end.
 * SI units. In a nozzle the ratio of heats stays what it is at the upstream end: the room's, or the pipe's.
 * Each way is one equation in one unknown, chosen so that it is smooth where the flow stops, solved by Newton's method in brackets.
 */
import { writeEntering, writeLeaving, writeWall } from './flux';
import type { Planes } from './planes';
import type { Wave } from './wave';

/** Of the unknown: after a step as small as this the next would be lost in rounding. */
const CLOSE = 1e-8;
const MOST = 60;

/** The gas in the room, at rest. */
export class Room {
  pressure = Number.NaN;
  temperature = Number.NaN;
  gamma = Number.NaN;
  gasConstant = Number.NaN;
  enthalpy = Number.NaN;
  constructor(readonly fractions: Float64Array) {}

  fill(planes: Planes, pressure: number, temperature: number): void {
    const { gas } = planes;
    this.pressure = pressure;
    this.temperature = temperature;
    this.gamma = gas.gamma(temperature, this.fractions, 0, 1);
    this.gasConstant = gas.gasConstant(this.fractions, 0, 1);
    this.enthalpy = gas.enthalpy(temperature, this.fractions, 0, 1);
  }
}

/** @param share effective area of the hole / area of the plane, 0 to 1 */
export function passHole(planes: Planes, wave: Wave, room: Room, share: number): void {
  wave.meet();
  if (share > 0) {
    wave.behind(room.pressure);
    if (wave.u !== 0) {
      if (wave.u > 0) leaveThrough(planes, wave, room.pressure, share);
      else enterThrough(planes, wave, room, share);
      return;
    }
  }
  wave.atVelocity(0);
  writeWall(planes, wave);
}

/** Unknown: the speed in the throat while it is not choked, then the pressure on the plane. */
function enterThrough(planes: Planes, wave: Wave, room: Room, share: number): void {
  const { gamma, gasConstant, temperature } = room;
  const heat = (gamma * gasConstant) / (gamma - 1);
  const power = gamma / (gamma - 1);
  const sonic = Math.sqrt(((2 * gamma) / (gamma + 1)) * gasConstant * temperature);
  // Sound and the throat's dynamic pressure alone.
  const wanted = -wave.u;
  const weight = (-wave.slope * room.pressure) / (gasConstant * temperature);
  let w = (2 * wanted) / (share + Math.sqrt(share * share + 2 * weight * wanted));
  if (!(w < sonic)) w = sonic;
  let low = 0;
  let high = sonic;
  let last = false;
  for (let n = 0; n < MOST; n++) {
    const cold = temperature - (0.5 * w * w) / heat;
    const p = room.pressure * (cold / temperature) ** power;
    const density = p / (gasConstant * cold);
    const v =
      (2 * share * w * temperature) /
      (cold + Math.sqrt(cold * cold + (2 * share * share * w * w * temperature) / heat));
    wave.behind(p);
    const excess = v + wave.u;
    if (w === sonic && excess < 0) {
      enterChoked(planes, wave, room, share, density * share * sonic, p, sonic);
      return;
    }
    const perSpeed =
      (share * temperature + (w * v) / heat - (0.5 * share * v * v) / heat) / (cold + (share * w * v) / heat);
    const step = -excess / (perSpeed - wave.slope * density * w);
    if (last || n === MOST - 1) {
      const mass = share * density * w;
      const thin = v > 0 ? mass / v : density;
      writeEntering(planes, wave.plane, mass, v, thin, p, room.enthalpy, room.fractions);
      return;
    }
    last = !(Math.abs(step) > CLOSE * w);
    if (excess < 0) low = w;
    else high = w;
    w += step;
    if (last) continue;
    if (w >= high) w = high === sonic ? sonic : 0.5 * (low + high);
    else if (w <= low) w = 0.5 * (low + high);
  }
}

function enterChoked(
  planes: Planes,
  wave: Wave,
  room: Room,
  share: number,
  mass: number,
  critical: number,
  sonic: number,
): void {
  const p = receive(wave, mass, room.temperature, room.gamma, room.gasConstant, critical, share * critical);
  const v = speedOf(mass, p, room.temperature, room.gamma, room.gasConstant);
  const speed = Math.min(v, sonic);
  writeEntering(planes, wave.plane, mass, speed, mass / speed, p, room.enthalpy, room.fractions);
}

/**
 * The plane's pressure where so much enters: the wave takes the gas at the speed that it has on the whole plane, or, at the lowest
 * pressure, at the speed of sound while a fan runs in.
 *
 * @param mass kg/(m² s)
 * @param lowest where the plane is sonic: mass × critical speed of sound / γ
 * @param start a guess
 */
export function receive(
  wave: Wave,
  mass: number,
  stagnation: number,
  gamma: number,
  gasConstant: number,
  start: number,
  lowest: number,
): number {
  wave.behind(lowest);
  if (speedOf(mass, lowest, stagnation, gamma, gasConstant) + wave.u <= 0) return lowest;
  const perHeat = (gamma - 1) / gamma;
  let low = lowest;
  let high = Infinity;
  let p = start > lowest ? start : 2 * lowest;
  for (let n = 0; n < MOST; n++) {
    const v = speedOf(mass, p, stagnation, gamma, gasConstant);
    wave.behind(p);
    const excess = v + wave.u;
    const step = excess / (v / (p + mass * v * perHeat) - wave.slope);
    if (excess > 0) low = p;
    else high = p;
    p += step;
    if (!(Math.abs(step) > CLOSE * p)) break;
    if (p <= low || p >= high) p = high < Infinity ? 0.5 * (low + high) : 2 * low;
  }
  return p;
}

/** What so much mass of this stagnation temperature must run at to pass the whole plane at this pressure. */
export function speedOf(mass: number, p: number, stagnation: number, gamma: number, gasConstant: number): number {
  const flow = mass * gasConstant * stagnation;
  const perHeat = (gamma - 1) / gamma;
  return (2 * flow) / (p + Math.sqrt(p * p + 2 * mass * flow * perHeat));
}

/** Unknown: the speed on the plane. Squares are compared, so that nothing is steep where the flow stops. */
function leaveThrough(planes: Planes, wave: Wave, outside: number, share: number): void {
  wave.leave(outside);
  if (share < 1) {
    const blind = wave.slope === 0 && wave.velocity >= wave.sound;
    if (blind) {
      wave.behind(wave.standing());
      // The hole swallows the shock: the stream stays supersonic.
      if (!(throat(wave, outside) * share * share < (wave.rho * wave.u) ** 2)) {
        wave.behind(wave.pressure);
        writeLeaving(planes, wave);
        return;
      }
    }
    findLeaving(wave, outside, share, wave.u);
  }
  writeLeaving(planes, wave);
}

function findLeaving(wave: Wave, outside: number, share: number, most: number): void {
  const { density, sound, pressure, velocity } = wave;
  const square = share * share;
  const drive = (pressure - outside) / density + sound * velocity;
  let u =
    (2 * square * drive) /
    (square * sound + Math.sqrt(square * square * sound * sound + 2 * (1 - square) * square * drive));
  let low = 0;
  let high = most;
  let last = false;
  let before = Infinity;
  if (!(u > low && u < high)) u = 0.5 * high;
  for (let n = 0; n < MOST; n++) {
    wave.atVelocity(u);
    if (last) return;
    const flow = wave.rho * u;
    const through = throat(wave, outside);
    const excess = flow * flow - square * through;
    const flowSlope = wave.rho + (u * wave.rhoSlope) / wave.slope;
    const step = -excess / (2 * flow * flowSlope - square * wave.throatSlope);
    last = !(Math.abs(step) > CLOSE * u);
    if (excess < 0) low = u;
    else high = u;
    u += step;
    // Where the throat chokes the squares have a corner, over which steps could go to and fro.
    const size = Math.abs(step);
    if (!last && (size > 0.7 * before || !(u > low && u < high))) u = 0.5 * (low + high);
    before = size;
  }
}

/**
 * The square of the mass flow in the throat, (kg/(m² s))², for the wave's last answer upstream; its derivative by that answer's
 * velocity is left in the wave's `throatSlope`, that by the pressure downstream in its `throatBack`.
 */
export function throat(wave: Wave, outside: number): number {
  const { gamma, p, u, rho } = wave;
  const power = gamma / (gamma - 1);
  const enthalpy = (power * p) / rho;
  const stagnation = enthalpy + 0.5 * u * u;
  const riseP = 1 / (wave.slope * p);
  const riseRho = wave.rhoSlope / (wave.slope * rho);
  const riseStagnation = u + enthalpy * (riseP - riseRho);
  const cooled = outside === p ? 1 : (outside / p) ** (1 / power);
  const speed = 2 * (stagnation - enthalpy * cooled);
  if (speed > (gamma - 1) * enthalpy * cooled) {
    const critical = (2 / (gamma + 1)) * (stagnation / enthalpy);
    const density = rho * critical ** (1 / (gamma - 1));
    const square = density * density * (gamma - 1) * critical * enthalpy;
    const rise = riseStagnation / stagnation;
    wave.throatSlope = square * (2 * (riseRho + (rise - (riseP - riseRho)) / (gamma - 1)) + rise);
    wave.throatBack = 0;
    return square;
  }
  const density = outside / ((p / rho) * cooled);
  const heating = riseP / gamma - riseRho;
  wave.throatSlope = 2 * density * density * (riseStagnation - enthalpy * cooled * heating - speed * heating);
  wave.throatBack = (2 * density * density * speed) / (gamma * outside) - 2 * density;
  return density * density * speed;
}
