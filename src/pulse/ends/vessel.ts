/**
 * A uniform, adiabatic room behind an opening on a pipe's plane: the law is `orifice.ts`'s, the opening counts by its mean over the
 * step. It holds mass, internal energy (sensible) and partial masses, and takes in exactly what passed. For second order in time
 * the flow is found with the content half a step ahead, at the rates of the last step. SI units.
 */
import { bulkOf } from '../equations/bulk';
import type { Gas } from '../equations/gas';
import type { Opening } from './areaLaw';
import { passHole, Room } from './orifice';
import type { End, Planes } from './planes';
import { Wave } from './wave';

/** Of the time that sound through the whole plane needs to overrun the content. */
const SHARE = 0.5;
/** Of the content: a component may be short of nothing, or over all, by as much. */
const ROUNDING = 1e-9;

export type Filling = {
  readonly volume: number;
  readonly pressure: number;
  readonly temperature: number;
  /** Of the carried components. */
  readonly fractions: Float64Array;
};

/** @param hole the opening's effective area; where it is larger than the pipe's own, that of the pipe counts */
export function vesselEnd(planes: Planes, plane: number, filling: Filling, hole: Opening): End {
  return new Vessel(planes, plane, filling, hole);
}

class Vessel implements End {
  readonly planes: readonly number[];
  readonly outside = false;
  mass: number;
  energy: number;
  private readonly partial: Float64Array;
  private massRate = 0;
  private energyRate = 0;
  private readonly partialRate: Float64Array;
  private readonly wave: Wave;
  private readonly room: Room;
  private readonly volume: number;
  /** The step last looked at. */
  private begin = 0;
  private until = 0;

  constructor(
    private readonly all: Planes,
    private readonly plane: number,
    filling: Filling,
    private readonly hole: Opening,
  ) {
    const { gas } = all;
    const { volume, pressure, temperature, fractions } = filling;
    const [density, internal] = bulkOf(gas, pressure, temperature, fractions);
    this.planes = [plane];
    this.volume = volume;
    this.mass = density * volume;
    this.energy = internal * volume;
    this.partial = fractions.map((share) => share * this.mass);
    this.partialRate = new Float64Array(gas.carried);
    this.wave = new Wave(all, plane);
    this.room = new Room(fractions.slice());
    this.room.fill(all, pressure, temperature);
  }

  pass(time: number, dt: number): void {
    this.begin = time;
    this.until = time + dt;
    this.ahead(0.5 * dt);
    const share = this.hole.mean(time, time + dt) / this.all.area[this.plane]!;
    passHole(this.all, this.wave, this.room, Math.min(share, 1));
  }

  holds(dt: number): boolean {
    const { area, massFlux, energyFlux, partialFlux, count } = this.all;
    const share = area[this.plane]! * dt;
    const mass = this.mass + share * massFlux[this.plane]!;
    const energy = this.energy + share * energyFlux[this.plane]!;
    if (!(mass > 0 && energy > 0)) return false;
    for (let k = 0; k < this.partial.length; k++) {
      const partial = this.partial[k]! + share * partialFlux[this.plane + k * count]!;
      if (!(partial >= -ROUNDING * mass && partial <= (1 + ROUNDING) * mass)) return false;
    }
    return true;
  }

  take(dt: number): void {
    const { area, massFlux, energyFlux, partialFlux, count } = this.all;
    const a = area[this.plane]!;
    this.massRate = a * massFlux[this.plane]!;
    this.energyRate = a * energyFlux[this.plane]!;
    this.mass += this.massRate * dt;
    this.energy += this.energyRate * dt;
    for (let k = 0; k < this.partial.length; k++) {
      const rate = a * partialFlux[this.plane + k * count]!;
      this.partialRate[k] = rate;
      this.partial[k]! += rate * dt;
    }
    this.begin = this.until;
  }

  longestStep(): number {
    const { room, wave } = this;
    const inside = Math.sqrt(room.gamma * room.gasConstant * room.temperature);
    // Before its first step the wave has met nothing yet.
    const sound = Number.isNaN(wave.sound) ? inside : Math.max(wave.sound, inside);
    const longest = (SHARE * this.volume) / (this.all.area[this.plane]! * sound);
    if (this.hole.largest(this.begin, this.begin + longest) > 0) return longest;
    // Shut for longer than that: as far as it stays so, lest a step leaps into the middle of an opening.
    return this.hole.shutUntil(this.begin) - this.begin;
  }

  /** Fills the room with what it will hold after so long; with what it holds now where the rates would empty it. */
  private ahead(dt: number): void {
    const { room, all, partial, partialRate } = this;
    let mass = this.mass + dt * this.massRate;
    let energy = this.energy + dt * this.energyRate;
    let ahead = dt;
    if (!(mass > 0 && energy > 0)) {
      mass = this.mass;
      energy = this.energy;
      ahead = 0;
    }
    for (let k = 0; k < partial.length; k++) {
      const share = (partial[k]! + ahead * partialRate[k]!) / mass;
      room.fractions[k] = share > 0 ? Math.min(share, 1) : 0;
    }
    const temperature = temperatureOf(all.gas, energy / mass, room);
    room.fill(all, (mass * room.gasConstant * temperature) / this.volume, temperature);
  }
}

/** K, from J/kg of internal energy: Newton's method from the room's last temperature; one step for a perfect gas. */
function temperatureOf(gas: Gas, energy: number, room: Room): number {
  const { fractions } = room;
  const gasConstant = gas.gasConstant(fractions, 0, 1);
  room.gasConstant = gasConstant;
  let temperature = room.temperature;
  for (let n = 0; n < 20; n++) {
    const held = gas.enthalpy(temperature, fractions, 0, 1) - gasConstant * temperature;
    const heat = gasConstant / (gas.gamma(temperature, fractions, 0, 1) - 1);
    const step = (energy - held) / heat;
    const next = temperature + step;
    temperature = next > 0 ? next : 0.5 * temperature;
    if (!(Math.abs(step) > 1e-13 * temperature)) break;
  }
  return temperature;
}
