/**
 * The room that the intake runners draw from: well mixed and adiabatic, filled from outside through one opening (throttle and filter
 * together), isentropic to its throat either way round. The runners open onto it with their full bore. SI units.
 */
import { passHole, Room } from '../ends/orifice';
import type { End, Planes } from '../ends/planes';
import { Wave } from '../ends/wave';
import { Charge } from './charge';

/** Of the time that sound through all openings needs to overrun the content. */
const SHARE = 0.5;

export type Outside = { readonly pressure: number; readonly temperature: number; readonly fractions: Float64Array };

export class Plenum implements End {
  readonly outside = true;
  readonly charge: Charge;
  /** kg that came in through the opening since the first step, and J with it. */
  drawn = 0;
  drawnEnergy = 0;

  private readonly ahead: Charge;
  private readonly tried: Charge;
  private readonly room: Room;
  private readonly air: Room;
  private readonly waves: readonly Wave[];
  private readonly open: number;
  private massRate = 0;
  private energyRate = 0;
  private readonly partialRate: Float64Array;
  /** Into it through the opening: kg/s, W, kg/s of each carried component. */
  private inMass = 0;
  private inEnergy = 0;
  private readonly inPartial: Float64Array;

  /** @param opening effective area, m² */
  constructor(
    private readonly all: Planes,
    readonly planes: readonly number[],
    private readonly volume: number,
    private readonly opening: number,
    outside: Outside,
  ) {
    const { gas } = all;
    this.charge = new Charge(gas);
    this.ahead = new Charge(gas);
    this.tried = new Charge(gas);
    this.charge.fill(volume, outside.pressure, outside.temperature, outside.fractions);
    this.room = new Room(new Float64Array(gas.carried));
    this.air = new Room(outside.fractions.slice());
    this.air.fill(all, outside.pressure, outside.temperature);
    this.waves = planes.map((plane) => new Wave(all, plane));
    this.partialRate = new Float64Array(gas.carried);
    this.inPartial = new Float64Array(gas.carried);
    this.open = opening + planes.reduce((sum, plane) => sum + all.area[plane]!, 0);
  }

  get mass(): number {
    return this.charge.mass;
  }

  get energy(): number {
    return this.charge.energy;
  }

  pass(_time: number, dt: number): void {
    const { all, ahead, charge, room } = this;
    ahead.copy(charge);
    ahead.mass += 0.5 * dt * this.massRate;
    ahead.energy += 0.5 * dt * this.energyRate;
    for (let k = 0; k < ahead.partial.length; k++) ahead.partial[k]! += 0.5 * dt * this.partialRate[k]!;
    if (!ahead.settle(this.volume)) {
      ahead.copy(charge);
      ahead.settle(this.volume);
    }
    room.fractions.set(ahead.fractions);
    room.fill(all, ahead.pressure, ahead.temperature);
    for (const wave of this.waves) passHole(all, wave, room, 1);
    this.draw();
  }

  holds(dt: number): boolean {
    const { all, tried } = this;
    tried.copy(this.charge);
    tried.mass += dt * this.inMass;
    tried.energy += dt * this.inEnergy;
    for (let k = 0; k < tried.partial.length; k++) tried.partial[k]! += dt * this.inPartial[k]!;
    for (const plane of this.planes) {
      const share = all.area[plane]! * dt;
      tried.mass += share * all.massFlux[plane]!;
      tried.energy += share * all.energyFlux[plane]!;
      for (let k = 0; k < tried.partial.length; k++)
        tried.partial[k]! += share * all.partialFlux[plane + k * all.count]!;
    }
    return tried.settle(this.volume);
  }

  take(dt: number): void {
    const { charge, tried, partialRate } = this;
    this.massRate = (tried.mass - charge.mass) / dt;
    this.energyRate = (tried.energy - charge.energy) / dt;
    for (let k = 0; k < partialRate.length; k++) partialRate[k] = (tried.partial[k]! - charge.partial[k]!) / dt;
    this.drawn += dt * this.inMass;
    this.drawnEnergy += dt * this.inEnergy;
    charge.copy(tried);
  }

  longestStep(): number {
    const { charge, all } = this;
    const perKelvin = all.gas.gasConstant(charge.fractions, 0, 1);
    const sound = Math.sqrt(all.gas.gamma(charge.temperature, charge.fractions, 0, 1) * perKelvin * charge.temperature);
    return (SHARE * this.volume) / (this.open * sound);
  }

  /** Goes on from where another one stands. */
  follow(other: Plenum): void {
    this.charge.copy(other.charge);
    this.massRate = other.massRate;
    this.energyRate = other.energyRate;
    this.partialRate.set(other.partialRate);
    this.drawn = other.drawn;
    this.drawnEnergy = other.drawnEnergy;
  }

  /** What the opening lets in now. */
  private draw(): void {
    const { air, room } = this;
    const isIn = air.pressure >= room.pressure;
    const from = isIn ? air : room;
    const mass = (isIn ? 1 : -1) * this.opening * nozzleFlow(from, (isIn ? room : air).pressure);
    this.inMass = mass;
    this.inEnergy = mass * from.enthalpy;
    for (let k = 0; k < this.inPartial.length; k++) this.inPartial[k] = mass * from.fractions[k]!;
  }
}

/** kg/(s m²) from a room at rest through a throat at this pressure, choked where it is lower than the critical one. */
export function nozzleFlow({ pressure, temperature, gamma, gasConstant }: Room, behind: number): number {
  const critical = (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  const ratio = Math.max(behind / pressure, critical);
  const expanded = ratio ** ((gamma - 1) / gamma);
  const speed = Math.sqrt(Math.max(0, ((2 * gamma) / (gamma - 1)) * gasConstant * temperature * (1 - expanded)));
  return (pressure / (gasConstant * temperature)) * ratio ** (1 / gamma) * speed;
}
