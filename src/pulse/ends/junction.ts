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
const MOST = 60;

export function equalPressureJunction(planes: Planes, at: readonly number[]): End {
  const junction = new Junction(planes, at);
  return storesNothing(at, false, () => junction.pass());
}

class Junction {
  private readonly waves: Wave[];
  private readonly mixture: Mixture;
  /** kg/(m² s), m/s and kg/m³ into each pipe, where it is one that the junction feeds. */
  private readonly flow: Float64Array;
  private readonly speed: Float64Array;
  private readonly density: Float64Array;
  /** kg/s that the junction feeds, and kg/s by which more enters. */
  private fed = Number.NaN;
  private excess = Number.NaN;
  private slope = Number.NaN;

  constructor(
    private readonly planes: Planes,
    at: readonly number[],
  ) {
    this.waves = at.map((plane) => new Wave(planes, plane));
    this.mixture = new Mixture(planes);
    this.flow = new Float64Array(at.length);
    this.speed = new Float64Array(at.length);
    this.density = new Float64Array(at.length);
  }

  pass(): void {
    const { waves } = this;
    for (let k = 0; k < waves.length; k++) waves[k]!.meet();
    let p = this.guess();
    let low = 0;
    let high = Infinity;
    for (let n = 0; n < MOST; n++) {
      this.balance(p);
      const { excess } = this;
      if (excess === 0) break;
      const step = -excess / this.slope;
      if (!(Math.abs(step) > CLOSE * p)) break;
      if (excess > 0) low = p;
      else high = p;
      p += step;
      if (!(p > low && p < high)) p = high < Infinity ? 0.5 * (low + high) : 2 * low;
    }
    this.write(p);
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
    const { waves, planes, mixture, flow, speed, density } = this;
    mixture.empty();
    for (let k = 0; k < waves.length; k++) {
      const wave = waves[k]!;
      wave.leave(p);
      flow[k] = 0;
      if (wave.u > 0) mixture.add(wave, planes.area[wave.plane]!);
    }
    const feeds = mixture.mass > 0;
    if (feeds) mixture.mix();
    let fed = 0;
    let fedSlope = 0;
    for (let k = 0; k < waves.length; k++) {
      const wave = waves[k]!;
      if (!(wave.u < 0)) continue;
      let v = -wave.u;
      let vSlope = -wave.slope;
      let rho = wave.rho;
      let rhoSlope = wave.rhoSlope;
      if (feeds) {
        let temperature = mixture.sonicTemperature;
        if (v > mixture.sonic) {
          v = mixture.sonic;
          vSlope = 0;
        } else temperature = mixture.temperatureAt(v);
        rho = p / (mixture.gasConstant * temperature);
        const heat = (mixture.gamma * mixture.gasConstant) / (mixture.gamma - 1);
        rhoSlope = rho / p + (rho * (v * vSlope - mixture.enthalpySlope)) / (heat * temperature);
      }
      const area = planes.area[wave.plane]!;
      flow[k] = rho * v;
      speed[k] = v;
      density[k] = rho;
      fed += area * rho * v;
      fedSlope += area * (rho * vSlope + rhoSlope * v);
    }
    this.fed = fed;
    this.excess = mixture.mass - fed;
    this.slope = mixture.massSlope - fedSlope;
  }

  /** What is left of the balance of mass is taken from what the junction feeds, so that nothing is made or lost. */
  private write(p: number): void {
    const { waves, planes, mixture, flow, speed, density, fed } = this;
    const still = !(mixture.mass > 0 && fed > 0);
    const scale = still ? 0 : mixture.mass / fed;
    for (let k = 0; k < waves.length; k++) {
      const wave = waves[k]!;
      if (still || wave.u === 0) writeWall(planes, wave);
      else if (wave.u > 0) writeLeaving(planes, wave);
      else {
        const mass = flow[k]! * scale;
        writeEntering(planes, wave.plane, mass, speed[k]!, density[k]!, p, mixture.enthalpy, mixture.fractions);
      }
    }
  }
}
