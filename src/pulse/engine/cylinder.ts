/**
 * A cylinder as an end of its pipes: one zone of well-mixed gas under a moving piston, with valves into its pipes, heat release after
 * Wiebe and heat to the walls after Woschni. What passes the valves is `orifice.ts`'s law at the state half a step ahead; the step
 * itself is the midpoint rule, so everything is of second order in time. Angles are its own, −360 to 360. SI units.
 */
import { passHole, Room } from '../ends/orifice';
import type { End, Planes } from '../ends/planes';
import { Wave } from '../ends/wave';
import { type Burning, burningOf } from './burning';
import { Charge } from './charge';
import { type Counts, noCounts } from './counts';
import { type Crank, crankOf, meanPistonSpeed } from './crank';
import type { EngineSetup } from './types';
import { type ValveLaw, valveLaw } from './valve';
import { burntShare, HALF_BURNT } from './wiebe';
import { EXCHANGING, SHUT, speedByFire, woschni } from './woschni';

/** Of the time that sound through an open valve needs to overrun the content. */
const SHARE = 0.5;
/** The longest step in crank degrees: combustion and the valves' edges are followed well by it. */
const LONGEST = 1.5;
/** Of the content: a component may be short of nothing by as much. */
const ROUNDING = 1e-9;
/** Gas that is compressed without fire, p Vⁿ constant: usual for a mixture of air and petrol that loses some heat. */
const UNFIRED = 1.32;

/** Where burnt gas is among the carried components. */
const BURNT = 0;

/** A pipe's plane at the cylinder, and the share of that side's valves that open onto it. */
export type Port = { readonly plane: number; readonly share: number };

type Door = Port & { readonly law: ValveLaw; readonly wave: Wave; readonly isExhaust: boolean };

export class Cylinder implements End {
  readonly planes: readonly number[];
  readonly outside = false;
  readonly crank: Crank;
  readonly intake: ValveLaw;
  readonly exhaust: ValveLaw;
  readonly burning: Burning;
  readonly charge: Charge;
  readonly counts: Counts = noCounts();
  /** When the intake valve last shut: burnt share of what was trapped, kg of it. */
  residual = Number.NaN;
  trapped = Number.NaN;
  /** Pa, of the last cycle that came to its blow-down. */
  peak = Number.NaN;
  /** kg/s out through the exhaust valves and in through the intake valves in the last step. */
  exhaustFlow = 0;
  intakeFlow = 0;

  private readonly ahead: Charge;
  private readonly tried: Charge;
  private readonly room: Room;
  private readonly doors: readonly Door[];
  private readonly perSecond: number;
  private readonly pistonSpeed: number;
  private readonly burnStart: number;
  /** When the intake valve last shut: Pa, m³, K. */
  private readonly shut = { pressure: Number.NaN, volume: Number.NaN, temperature: Number.NaN };
  /** Of the last step: kg/s, W and kg/s of each carried component through all valves; W to the walls. */
  private massRate = 0;
  private energyRate = 0;
  private readonly partialRate: Float64Array;
  private wallRate = 0;
  private highest = 0;
  /** The step last looked at. */
  private begin = 0;
  private burnt = 0;

  /** @param fires crank degrees of the engine at which it fires */
  constructor(
    private readonly all: Planes,
    private readonly setup: EngineSetup,
    private readonly fires: number,
    rpm: number,
    exhausts: readonly Port[],
    intakes: readonly Port[],
  ) {
    const { gas } = all;
    this.crank = crankOf(setup);
    this.intake = valveLaw(setup.intakeValve, setup.flowFactor);
    this.exhaust = valveLaw(setup.exhaustValve, setup.flowFactor);
    this.burning = burningOf(gas, setup.fuel, setup.burn);
    this.perSecond = 6 * rpm;
    this.pistonSpeed = meanPistonSpeed(setup.stroke, rpm);
    this.burnStart = setup.burn.middle - HALF_BURNT * setup.burn.duration;
    this.planes = [...exhausts, ...intakes].map(({ plane }) => plane);
    const door = (port: Port, isExhaust: boolean): Door => ({
      ...port,
      isExhaust,
      law: isExhaust ? this.exhaust : this.intake,
      wave: new Wave(all, port.plane),
    });
    this.doors = [...exhausts.map((port) => door(port, true)), ...intakes.map((port) => door(port, false))];
    this.charge = new Charge(gas);
    this.ahead = new Charge(gas);
    this.tried = new Charge(gas);
    this.room = new Room(new Float64Array(gas.carried));
    this.partialRate = new Float64Array(gas.carried);
    this.guess();
  }

  get mass(): number {
    return this.charge.mass;
  }

  get energy(): number {
    return this.charge.energy;
  }

  /** Its own crank angle, −360 to below 360. @param time s from the cycle's start */
  angleAt(time: number): number {
    return wrapped(this.perSecond * time - this.fires - 360);
  }

  pass(time: number, dt: number): void {
    const { all, charge, ahead, room, crank } = this;
    this.begin = time;
    const angle = this.angleAt(time);
    const middle = angle + 0.5 * dt * this.perSecond;
    const [volume, then] = [crank.volume(angle), crank.volume(middle)];
    const fresh = this.burnsIn(charge, angle, middle);
    ahead.copy(charge);
    ahead.mass += 0.5 * dt * this.massRate;
    ahead.energy +=
      0.5 * dt * (this.energyRate - this.wallRate) - charge.pressure * (then - volume) + fresh * this.burning.raised;
    for (let k = 0; k < ahead.partial.length; k++) ahead.partial[k]! += 0.5 * dt * this.partialRate[k]!;
    ahead.partial[BURNT]! += fresh;
    // Rates that would empty it are not followed; the step that comes of it has to hold by itself.
    if (!ahead.settle(then)) {
      ahead.copy(charge);
      ahead.settle(then);
    }
    room.fractions.set(ahead.fractions);
    room.fill(all, ahead.pressure, ahead.temperature);
    for (const { law, share, plane, wave } of this.doors) {
      const open = (law.areaAt(wrapped(middle)) * share) / all.area[plane]!;
      passHole(all, wave, room, Math.min(open, 1));
    }
  }

  holds(dt: number): boolean {
    const { all, charge, ahead, tried, crank } = this;
    const angle = this.angleAt(this.begin);
    const turned = angle + dt * this.perSecond;
    const before = crank.volume(angle);
    const after = crank.volume(turned);
    this.burnt = this.burnsIn(charge, angle, turned);
    tried.copy(charge);
    for (const { plane } of this.doors) {
      const share = all.area[plane]! * dt;
      tried.mass += share * all.massFlux[plane]!;
      tried.energy += share * all.energyFlux[plane]!;
      for (let k = 0; k < tried.partial.length; k++)
        tried.partial[k]! += share * all.partialFlux[plane + k * all.count]!;
    }
    const heat = this.heatTo(angle + 0.5 * dt * this.perSecond);
    tried.energy += this.burnt * this.burning.raised - heat * dt - ahead.pressure * (after - before);
    tried.partial[BURNT]! += this.burnt;
    tried.temperature = ahead.temperature;
    const room = ROUNDING * tried.mass;
    for (let k = 0; k < tried.partial.length; k++)
      if (!(tried.partial[k]! >= -room && tried.partial[k]! <= tried.mass + room)) return false;
    return tried.settle(after);
  }

  take(dt: number): void {
    const { counts, charge, tried, ahead, crank } = this;
    const angle = this.angleAt(this.begin);
    const turn = dt * this.perSecond;
    const work = ahead.pressure * (crank.volume(angle + turn) - crank.volume(angle));
    this.wallRate = this.heatTo(angle + 0.5 * turn);
    counts.work += work;
    if (Math.abs(wrapped(angle + 0.5 * turn)) < 180) counts.exchange += work;
    counts.walled += this.wallRate * dt;
    counts.released += this.burnt * this.burning.released;
    this.countFlows(dt);
    charge.copy(tried);
    this.highest = Math.max(this.highest, charge.pressure);
    if (passes(this.intake.closes, angle, turn)) {
      this.residual = charge.fractions[BURNT]!;
      this.trapped = charge.mass;
      this.shutWith(crank.volume(angle + turn));
    }
    if (passes(this.exhaust.opens, angle, turn)) {
      this.peak = this.highest;
      this.highest = 0;
    }
    this.begin += dt;
  }

  longestStep(): number {
    const { charge, all } = this;
    const angle = this.angleAt(this.begin);
    const perKelvin = all.gas.gasConstant(charge.fractions, 0, 1);
    const sound = Math.sqrt(all.gas.gamma(charge.temperature, charge.fractions, 0, 1) * perKelvin * charge.temperature);
    const turn = LONGEST / this.perSecond;
    let open = 0;
    for (const { law, share } of this.doors)
      open += share * Math.max(law.areaAt(angle), law.areaAt(wrapped(angle + LONGEST)));
    return Math.min(turn, (SHARE * this.crank.volume(angle)) / (open * sound));
  }

  /** Goes on from where another one stands, which may have other cells around it. */
  follow(other: Cylinder): void {
    this.charge.copy(other.charge);
    Object.assign(this.counts, other.counts);
    Object.assign(this.shut, other.shut);
    this.partialRate.set(other.partialRate);
    this.massRate = other.massRate;
    this.energyRate = other.energyRate;
    this.wallRate = other.wallRate;
    this.highest = other.highest;
    this.peak = other.peak;
    this.residual = other.residual;
    this.trapped = other.trapped;
    this.begin = 0;
  }

  /** kg of a charge that burn between two angles. */
  private burnsIn(charge: Charge, from: number, to: number): number {
    const { duration } = this.setup.burn;
    const begun = (wrapped(from + 360) - this.burnStart) / duration;
    const x0 = burntShare(begun);
    const x1 = burntShare(begun + (to - from) / duration);
    if (!(x1 > x0)) return 0;
    const fresh = charge.mass - charge.partial[BURNT]!;
    return fresh > 0 ? (fresh * (x1 - x0)) / (1 - x0) : 0;
  }

  /** W to the walls at the state half a step ahead. */
  private heatTo(angle: number): number {
    const { ahead, setup, crank, shut } = this;
    const own = wrapped(angle);
    const isOpen = this.exhaust.areaAt(own) > 0 || this.intake.areaAt(own) > 0;
    let speed = (isOpen ? EXCHANGING : SHUT) * this.pistonSpeed;
    if (!isOpen && wrapped(own + 360) > this.burnStart) {
      const above = ahead.pressure - shut.pressure * (shut.volume / crank.volume(own)) ** UNFIRED;
      if (above > 0) speed += speedByFire(crank.swept, shut, above);
    }
    const { temperature, factor } = setup.walls;
    const per = factor * woschni(setup.bore, ahead.pressure, ahead.temperature, speed);
    return per * crank.wall(own) * (ahead.temperature - temperature);
  }

  private countFlows(dt: number): void {
    const { all, counts, ahead } = this;
    this.massRate = 0;
    this.energyRate = 0;
    this.partialRate.fill(0);
    this.exhaustFlow = 0;
    this.intakeFlow = 0;
    for (const { plane, isExhaust } of this.doors) {
      const area = all.area[plane]!;
      const mass = area * all.massFlux[plane]!;
      const energy = area * all.energyFlux[plane]!;
      const burnt = area * all.partialFlux[plane + BURNT * all.count]!;
      this.massRate += mass;
      this.energyRate += energy;
      for (let k = 0; k < this.partialRate.length; k++)
        this.partialRate[k]! += area * all.partialFlux[plane + k * all.count]!;
      if (isExhaust) {
        this.exhaustFlow -= mass;
        counts.lost -= (mass - burnt) * dt;
        counts.left -= mass * dt;
        counts.leftEnergy -= energy * dt;
        if (mass < 0) {
          counts.blown -= mass * dt;
          counts.blownEnthalpy -= mass * dt * all.gas.enthalpy(ahead.temperature, ahead.fractions, 0, 1);
        }
      } else {
        this.intakeFlow += mass;
        counts.fresh += (mass - burnt) * dt;
        if (burnt < 0) counts.backed -= burnt * dt;
      }
    }
  }

  private shutWith(volume: number): void {
    this.shut.pressure = this.charge.pressure;
    this.shut.volume = volume;
    this.shut.temperature = this.charge.temperature;
  }

  /** Something to begin with, which some cycles make right: outside air compressed, the same four times as hot, or open to it. */
  private guess(): void {
    const { setup, crank, charge } = this;
    const { pressure, temperature } = setup.air;
    const angle = this.angleAt(0);
    const largest = crank.swept + crank.clearance;
    const squeezed = largest / crank.volume(angle);
    const isShut = angle >= this.intake.closes || angle <= this.exhaust.opens;
    const isFired = angle < 0 && angle >= -360;
    const burnt = Float64Array.of(isFired ? 1 : 0);
    const hot = isFired ? 4 : 1.15;
    const power = isShut ? squeezed ** 0.3 : 1;
    const lifted = isShut ? squeezed * power * (isFired ? 3.5 : 1) : 1;
    charge.fill(crank.volume(angle), pressure * lifted, temperature * hot * power, burnt);
    this.shut.pressure = pressure;
    this.shut.volume = crank.volume(this.intake.closes);
    this.shut.temperature = 1.15 * temperature;
    this.highest = charge.pressure;
  }
}

/** −360 to below 360 */
function wrapped(angle: number): number {
  return angle - 720 * Math.floor((angle + 360) / 720);
}

/** Whether an angle lies within a turn: beyond where it starts, up to its end. */
function passes(event: number, from: number, turn: number): boolean {
  const ahead = event - from;
  const after = ahead - 720 * Math.floor(ahead / 720);
  return (after > 0 && after <= turn) || (after === 0 && turn >= 720);
}
