/**
 * Pipes that meet at angles: momentum that is not carried over is lost. What enters does so at one static pressure pJ and mixes to a
 * stream with the velocity vector w = Σ ṁ u d / Σ ṁ. A pipe that leads away along e takes its share with the loss of the kinetic
 * energy of the difference: p = pJ + ρ v (w·e − v). So mass, stagnation enthalpy and fractions are kept as in the junction at one pressure.
 *
 * For one pipe that leads away this is the balance of momentum over an outlet of constant area, and gives the losses of converging
 * wyes, ζ = 1 + (u/uc)² − 2 Σ (Q/Qc)(u/uc) cos α; straight ahead that of a sudden enlargement (Borda, Carnot); for what divides,
 * ζ = 1 + (u/uc)² − 2 (u/uc) cos α (Idelchik, Handbook of Hydraulic Resistance, ch. 7, from memory). It is continuous where a stream
 * turns round. What it does not do: measured losses straight through a dividing branch are smaller than this, pipes that enter have
 * one static pressure whatever their angles, and swirl and the room of the junction itself are not in it.
 */
import { Junction } from './junction';
import { type End, type Planes, storesNothing } from './planes';

/** Of the mixed stream's critical speed of sound: faster, its push on a pipe has no steady answer. */
const FASTEST = 1.5;
const CLOSE = 1e-14;
const MOST = 60;

/** @param directions in which each pipe leads away from the junction; of any length but 0 */
export function lossyJunction(
  planes: Planes,
  at: readonly number[],
  directions: readonly (readonly [number, number, number])[],
): End {
  const junction = new LossyJunction(planes, at, directions);
  return storesNothing(at, false, () => junction.pass());
}

class LossyJunction extends Junction {
  /** Unit vectors away from the junction, three numbers each. */
  private readonly along: Float64Array;
  /** w and its derivative by the pressure of the junction. */
  private readonly carried = new Float64Array(3);
  private readonly carriedSlope = new Float64Array(3);

  constructor(planes: Planes, at: readonly number[], directions: readonly (readonly [number, number, number])[]) {
    super(planes, at);
    this.along = Float64Array.from(
      directions.flatMap((direction) => {
        const length = Math.hypot(...direction);
        return direction.map((part) => part / length);
      }),
    );
  }

  protected override prepare(): void {
    const { waves, planes, mixture, along, carried, carriedSlope } = this;
    carried.fill(0);
    carriedSlope.fill(0);
    for (let k = 0; k < waves.length; k++) {
      const wave = waves[k]!;
      if (!(wave.u > 0)) continue;
      const area = planes.area[wave.plane]!;
      const mass = area * wave.rho * wave.u;
      const massSlope = area * (wave.rhoSlope * wave.u + wave.rho * wave.slope);
      for (let n = 0; n < 3; n++) {
        const outward = along[3 * k + n]!;
        carried[n]! -= mass * wave.u * outward;
        carriedSlope[n]! -= (massSlope * wave.u + mass * wave.slope) * outward;
      }
    }
    for (let n = 0; n < 3; n++) {
      carried[n]! /= mixture.mass;
      carriedSlope[n] = (carriedSlope[n]! - mixture.massSlope * carried[n]!) / mixture.mass;
    }
  }

  /** Unknown: the speed. It gives the pressure by the law above, and that the speed by the pipe's wave. */
  protected override feed(k: number, junction: number): void {
    const { mixture, along, carried, carriedSlope } = this;
    const wave = this.waves[k]!;
    const { gasConstant, gamma, sonic } = mixture;
    const heat = (gamma * gasConstant) / (gamma - 1);
    let push = 0;
    let pushSlope = 0;
    for (let n = 0; n < 3; n++) {
      push += carried[n]! * along[3 * k + n]!;
      pushSlope += carriedSlope[n]! * along[3 * k + n]!;
    }
    if (Math.abs(push) > FASTEST * sonic) {
      push = Math.sign(push) * FASTEST * sonic;
      pushSlope = 0;
    }
    let low = 0;
    let high = sonic;
    let before = Infinity;
    let v = Math.min(-wave.u, sonic);
    for (let n = 0; ; n++) {
      const temperature = v < sonic ? mixture.temperatureAt(v) : mixture.sonicTemperature;
      const warm = gasConstant * temperature;
      const kept = 1 - (v * (push - v)) / warm;
      const p = junction / kept;
      wave.behind(p);
      const excess = v + wave.u;
      const perSpeed = (p / kept) * ((push - 2 * v) / warm + (v * (push - v) * v) / (warm * temperature * heat));
      const stiff = 1 + wave.slope * perSpeed;
      const step = -excess / stiff;
      const choked = v === sonic && excess < 0;
      if (choked || !(Math.abs(step) > CLOSE * sonic) || n === MOST) {
        const warming = mixture.enthalpySlope / heat;
        const atSpeed =
          1 / kept + (p / kept) * ((v * pushSlope) / warm - (v * (push - v) * warming) / (warm * temperature));
        const vSlope = choked ? 0 : (-wave.slope * atSpeed) / stiff;
        const rho = p / warm;
        const rhoSlope = rho * ((atSpeed + perSpeed * vSlope) / p - (warming - (v * vSlope) / heat) / temperature);
        this.speed[k] = v;
        this.density[k] = rho;
        this.pressure[k] = p;
        this.feedSlope = rho * vSlope + v * rhoSlope;
        return;
      }
      if (excess < 0) low = v;
      else high = v;
      const size = Math.abs(step);
      v += step;
      const slow = size > 0.7 * before && size > 1e-6 * sonic;
      if (slow || !(v > low && v < high)) v = !slow && v >= high && high === sonic ? sonic : 0.5 * (low + high);
      before = size;
    }
  }
}
