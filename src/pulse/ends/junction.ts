/**
 * Pipes that meet at one static pressure: what enters mixes, what leaves carries the mixed stagnation enthalpy and fractions, mass
 * balances. One equation, the balance of mass, in one unknown, the pressure; each pipe's velocity follows from it by its own wave.
 * A pipe out of which the stream is sonic or faster keeps its own pressure; one into which it would be faster stays sonic. SI units.
 */
import { writeEntering, writeLeaving, writeWall } from './flux';
import { Mixture } from './mixing';
import { type End, type Planes, storesNothing } from './planes';
import { Wave } from './wave';

/** Of the pressure: a smaller step leaves nothing to be gained. */
const CLOSE = 1e-13;
/** Of the step before: more than that, and the balance has a corner between (a stream that turns round), so the bracket is halved. */
const SHRINKS = 0.7;
const COARSE = 1e-6;
const MOST = 100;

export function equalPressureJunction(planes: Planes, at: readonly number[]): End {
  const junction = new Junction(planes, at);
  return storesNothing(at, false, () => junction.pass());
}

export class Junction {
  protected readonly waves: readonly Wave[];
  protected readonly mixture: Mixture;
  /** m/s, kg/m³ and Pa of what enters each pipe that the junction feeds. */
  protected readonly speed: Float64Array;
  protected readonly density: Float64Array;
  protected readonly pressure: Float64Array;
  /** What `feed` leaves: kg/(m² s Pa), mass flow into the pipe by the pressure of the junction. */
  protected feedSlope = Number.NaN;
  /** kg/s that the junction feeds, and kg/s by which more enters. */
  private fed = Number.NaN;
  private excess = Number.NaN;
  private slope = Number.NaN;

  constructor(
    protected readonly planes: Planes,
    at: readonly number[],
  ) {
    this.waves = at.map((plane) => new Wave(planes, plane));
    this.mixture = new Mixture(planes);
    this.speed = new Float64Array(at.length);
    this.density = new Float64Array(at.length);
    this.pressure = new Float64Array(at.length);
  }

  pass(): void {
    const { waves } = this;
    for (let k = 0; k < waves.length; k++) waves[k]!.meet();
    let p = this.guess();
    let low = 0;
    let high = Infinity;
    let before = Infinity;
    for (let n = 0; n < MOST; n++) {
      this.balance(p);
      const { excess } = this;
      if (excess === 0) break;
      const step = -excess / this.slope;
      if (!(Math.abs(step) > CLOSE * p)) break;
      if (excess > 0) low = p;
      else high = p;
      const size = Math.abs(step);
      p += step;
      const slow = size > SHRINKS * before && size > COARSE * p && high < Infinity;
      if (slow || !(p > low && p < high)) p = high < Infinity ? 0.5 * (low + high) : 2 * low;
      before = size;
    }
    this.write();
  }

  /** Once all that enters is mixed. */
  protected prepare(): void {}

  /** What the mixture sends into pipe k while the junction is at this pressure; the pipe's wave has been asked for the same. */
  protected feed(k: number, p: number): void {
    const { mixture } = this;
    const wave = this.waves[k]!;
    let v = -wave.u;
    let vSlope = -wave.slope;
    let temperature = mixture.sonicTemperature;
    if (v > mixture.sonic) {
      v = mixture.sonic;
      vSlope = 0;
    } else temperature = mixture.temperatureAt(v);
    const rho = p / (mixture.gasConstant * temperature);
    const heat = (mixture.gamma * mixture.gasConstant) / (mixture.gamma - 1);
    const rhoSlope = rho / p + (rho * (v * vSlope - mixture.enthalpySlope)) / (heat * temperature);
    this.speed[k] = v;
    this.density[k] = rho;
    this.pressure[k] = p;
    this.feedSlope = rho * vSlope + rhoSlope * v;
  }

  /** Of small waves; exactly the pipes' own where all are at rest at one pressure. */
  private guess(): number {
    const { waves, planes } = this;
    const base = waves[0]!.pressure;
    let weights = 0;
    let sum = 0;
    for (let k = 0; k < waves.length; k++) {
      const { plane, pressure, density, velocity, sound } = waves[k]!;
      const weight = planes.area[plane]! / sound;
      weights += weight;
      sum += weight * (pressure - base + density * sound * velocity);
    }
    const p = base + sum / weights;
    return Math.max(p, 0.1 * base);
  }

  private balance(p: number): void {
    const { waves, planes, mixture, speed, density } = this;
    mixture.empty();
    for (let k = 0; k < waves.length; k++) {
      const wave = waves[k]!;
      wave.leave(p);
      if (wave.u > 0) mixture.add(wave, planes.area[wave.plane]!);
    }
    const feeds = mixture.mass > 0;
    if (feeds) {
      mixture.mix();
      this.prepare();
    }
    let fed = 0;
    let fedSlope = 0;
    for (let k = 0; k < waves.length; k++) {
      const wave = waves[k]!;
      if (!(wave.u < 0)) continue;
      const area = planes.area[wave.plane]!;
      if (feeds) {
        this.feed(k, p);
        fed += area * density[k]! * speed[k]!;
        fedSlope += area * this.feedSlope;
      } else {
        // Nothing enters at so high a pressure: the pipe's own gas stands for what would.
        fed -= area * wave.rho * wave.u;
        fedSlope -= area * (wave.rho * wave.slope + wave.rhoSlope * wave.u);
      }
    }
    this.fed = fed;
    this.excess = mixture.mass - fed;
    this.slope = mixture.massSlope - fedSlope;
  }

  /** What is left of the balance of mass is taken from what the junction feeds, so that nothing is made or lost. */
  private write(): void {
    const { waves, planes, mixture, speed, density, pressure, fed } = this;
    const still = !(mixture.mass > 0 && fed > 0);
    const scale = still ? 0 : mixture.mass / fed;
    for (let k = 0; k < waves.length; k++) {
      const wave = waves[k]!;
      if (wave.u > 0 && !still) writeLeaving(planes, wave);
      else if (wave.u < 0 && !still) {
        const mass = density[k]! * speed[k]! * scale;
        const { enthalpy, fractions } = mixture;
        writeEntering(planes, wave.plane, mass, speed[k]!, density[k]!, pressure[k]!, enthalpy, fractions);
      } else writeWall(planes, wave);
    }
  }
}
