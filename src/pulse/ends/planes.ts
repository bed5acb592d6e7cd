/**
 * Where pipes meet their ends: the start of pipe k is plane 2k, its finish plane 2k + 1. Velocities and fluxes are positive OUT of
 * the pipe at either side. The scheme writes what lies just inside; the ends write what passes. SI units.
 */
import type { Gas } from '../equations/gas';

export type Planes = {
  readonly count: number;
  readonly gas: Gas;
  /** m² */
  readonly area: Float64Array;

  /** Just inside the pipe, at the middle of the step. */
  readonly density: Float64Array;
  readonly velocity: Float64Array;
  readonly pressure: Float64Array;
  readonly gamma: Float64Array;
  readonly fractions: Float64Array;

  /** What passes, per m² of plane: kg/(m² s), p + ρu² in Pa, W/m², and kg/(m² s) of each carried component. */
  readonly massFlux: Float64Array;
  readonly momentumFlux: Float64Array;
  readonly energyFlux: Float64Array;
  readonly partialFlux: Float64Array;

  /** The state on the plane itself in this step; where gas enters the pipe, that of the entering gas. Written by the ends. */
  readonly planeDensity: Float64Array;
  readonly planeVelocity: Float64Array;
  readonly planePressure: Float64Array;
  readonly planeFractions: Float64Array;

  /** The same of the last step that stood, for the slopes beside it: a step that fails leaves no trace here. */
  readonly lastDensity: Float64Array;
  readonly lastVelocity: Float64Array;
  readonly lastPressure: Float64Array;
  readonly lastFractions: Float64Array;
};

/** One end of a rig, over one or several planes. Quasi-steady but for what it stores. Nothing is allocated once it is made. */
export interface End {
  readonly planes: readonly number[];
  /** Sets what passes through each of its planes in the step from `time` to `time + dt`. Changes nothing else. */
  pass(time: number, dt: number): void;
  /** Whether what it stores would still be a gas had the step passed stood. Only vessels store. */
  holds(dt: number): boolean;
  /** The step stands: what it passed is taken in. */
  take(dt: number): void;
  /** The longest step that it can follow from where it is, s; Infinity for ends that store nothing. */
  longestStep(): number;
  /** kg and J stored in it; 0 where nothing is. */
  readonly mass: number;
  readonly energy: number;
  /** True where what passes is lost to or won from the surroundings. */
  readonly outside: boolean;
}

export function createPlanes(pipes: number, gas: Gas): Planes {
  const count = 2 * pipes;
  const column = () => new Float64Array(count);
  const carried = () => new Float64Array(count * gas.carried);
  return {
    count,
    gas,
    area: column(),
    density: column(),
    velocity: column(),
    pressure: column(),
    gamma: column(),
    fractions: carried(),
    massFlux: column(),
    momentumFlux: column(),
    energyFlux: column(),
    partialFlux: carried(),
    planeDensity: column(),
    planeVelocity: column(),
    planePressure: column(),
    planeFractions: carried(),
    lastDensity: column(),
    lastVelocity: column(),
    lastPressure: column(),
    lastFractions: carried(),
  };
}

/** What lies on the planes now is what the next slopes lean on. */
export function keepPlanes(planes: Planes): void {
  planes.lastDensity.set(planes.planeDensity);
  planes.lastVelocity.set(planes.planeVelocity);
  planes.lastPressure.set(planes.planePressure);
  planes.lastFractions.set(planes.planeFractions);
}

/** An end without a memory. */
export function storesNothing(planes: readonly number[], outside: boolean, pass: End['pass']): End {
  return {
    planes,
    outside,
    pass,
    holds: () => true,
    take: () => {},
    longestStep: () => Infinity,
    mass: 0,
    energy: 0,
  };
}
