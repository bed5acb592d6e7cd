/**
 * The one exact wave that joins a pipe's interior to its plane: the shock or the rarefaction of the Riemann problem that runs into
 * the pipe (Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, ch. 4), with the ratio of heats that the interior has.
 * SI units; velocities are positive out of the pipe, so a higher pressure lets less out. One object for each plane; the answer of
 * the last question stands in `p`, `u`, `rho`, `slope`, `rhoSlope`. Fields begin as NaN so that they are kept as doubles.
 */
import type { Planes } from './planes';

/** Of the interior's pressure: what stands for no pressure at all where gas runs away faster than it can follow. */
const VACUUM = 1e-12;

export class Wave {
  /** The interior. */
  density = Number.NaN;
  velocity = Number.NaN;
  pressure = Number.NaN;
  gamma = Number.NaN;
  /** Its speed of sound. */
  sound = Number.NaN;
  /** J/(kg K) */
  gasConstant = Number.NaN;

  /** Behind the wave, or on the plane after `leave`. */
  p = Number.NaN;
  u = Number.NaN;
  rho = Number.NaN;
  /** du/dp and dρ/dp; 0 where the plane no longer feels what lies outside. */
  slope = Number.NaN;
  rhoSlope = Number.NaN;
  /** What `throat` leaves beside its answer. */
  throatSlope = Number.NaN;
  throatBack = Number.NaN;

  constructor(
    private readonly planes: Planes,
    readonly plane: number,
  ) {}

  /** Takes in what lies just inside now. */
  meet(): void {
    const { density, velocity, pressure, gamma, fractions, gas, count } = this.planes;
    const i = this.plane;
    this.density = density[i]!;
    this.velocity = velocity[i]!;
    this.pressure = pressure[i]!;
    this.gamma = gamma[i]!;
    this.sound = Math.sqrt((this.gamma * this.pressure) / this.density);
    this.gasConstant = gas.gasConstant(fractions, i, count);
  }

  /** Behind a wave to this pressure. */
  behind(p: number): void {
    const { pressure, density, gamma, sound } = this;
    const ratio = p / pressure;
    this.p = p;
    if (ratio > 1) {
      const share = (gamma - 1) / (gamma + 1);
      const rise = p - pressure;
      const back = p + share * pressure;
      const per = Math.sqrt(2 / ((gamma + 1) * density * back));
      const below = share * ratio + 1;
      this.u = this.velocity - rise * per;
      this.slope = -per * (1 - (0.5 * rise) / back);
      this.rho = (density * (ratio + share)) / below;
      this.rhoSlope = (density * (1 - share * share)) / (pressure * below * below);
    } else if (ratio < 1) {
      const less = gamma - 1;
      this.fan(p, sound * (ratio > 0 ? ratio ** (less / (2 * gamma)) : 0));
    } else this.same();
  }

  /** Behind the wave that brings the gas to this velocity; where none can, at next to no pressure. */
  atVelocity(u: number): void {
    const { pressure, density, gamma, sound } = this;
    const slower = this.velocity - u;
    if (slower > 0) {
      const share = (gamma - 1) / (gamma + 1);
      const per = 2 / ((gamma + 1) * density);
      const rise = (slower * (slower + Math.sqrt(slower * slower + 4 * per * (1 + share) * pressure))) / (2 * per);
      this.behind(pressure + rise);
      this.u = u;
    } else if (slower < 0) {
      const less = gamma - 1;
      const cooled = 1 + (0.5 * less * slower) / sound;
      const ratio = cooled > 0 ? cooled ** ((2 * gamma) / less) : 0;
      if (ratio > VACUUM) {
        this.fan(pressure * ratio, sound * cooled);
        this.u = u;
      } else {
        this.behind(pressure * VACUUM);
        this.u = u;
      }
    } else this.same();
  }

  /**
   * The plane where gas leaves against this pressure: at that pressure, unless the interior's own wave cannot run in. Then it is
   * sonic inside the fan, or the interior itself where that is supersonic, and feels nothing of what lies outside.
   */
  leave(p: number): void {
    const { velocity, sound, gamma } = this;
    if (velocity >= sound && p <= this.standing()) {
      this.same();
      this.slope = 0;
      this.rhoSlope = 0;
      return;
    }
    this.behind(p);
    if (p < this.pressure && this.u > 0 && this.u * this.u * this.rho > gamma * p) this.leaveSonic();
  }

  /** The plane where the fan of a slower interior is sonic; at 0 or less where the interior runs away too fast for one. */
  leaveSonic(): void {
    const { velocity, sound, gamma, pressure } = this;
    const a = (2 * sound + (gamma - 1) * velocity) / (gamma + 1);
    if (a > 0) this.fan(pressure * (a / sound) ** ((2 * gamma) / (gamma - 1)), a);
    this.u = a;
    this.slope = 0;
    this.rhoSlope = 0;
  }

  /** The pressure behind a shock that stands on the plane; below the interior's where that is subsonic. */
  standing(): number {
    const mach = this.velocity / this.sound;
    return this.pressure * (1 + ((2 * this.gamma) / (this.gamma + 1)) * (mach * mach - 1));
  }

  private fan(p: number, a: number): void {
    this.p = p;
    this.u = this.velocity + (2 * (this.sound - a)) / (this.gamma - 1);
    this.rho = (this.gamma * p) / (a * a);
    this.slope = -a / (this.gamma * p);
    this.rhoSlope = 1 / (a * a);
  }

  private same(): void {
    this.p = this.pressure;
    this.u = this.velocity;
    this.rho = this.density;
    this.slope = -1 / (this.density * this.sound);
    this.rhoSlope = 1 / (this.sound * this.sound);
  }
}
