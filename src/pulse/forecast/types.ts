/**
 * What following an engine on its gas path answers: numbers of one speed, traces over a cycle, waves in every pipe. Plain data
 * that passes between threads and into JSON. SI units; crank degrees from top dead centre of the exhaust stroke.
 */
import type { PipePicture } from '../report';

/** Shares of the fuel's heat; they and `unaccounted` add up to 1. */
export type EnergyShares = {
  readonly brake: number;
  readonly friction: number;
  /** Of the cylinders' walls. */
  readonly coolant: number;
  /** Of the exhaust ports in the head. */
  readonly port: number;
  /** Sensible heat and kinetic energy that leave the head with the exhaust, above the surroundings' temperature. */
  readonly exhaust: number;
  /** Fuel that could not burn: for want of air, by incomplete burning, or lost with fresh charge. */
  readonly unburnt: number;
  readonly unaccounted: number;
};

export type CylinderAnswer = {
  readonly cylinder: number;
  /** Mean effective pressures, Pa: net work of the whole cycle; of the gas exchange alone (below 0: it costs). */
  readonly imep: number;
  readonly pmep: number;
  /** Air taken in with the fresh gas / what the swept volume would hold of outside air. */
  readonly volumetricEfficiency: number;
  /** Burnt share of what is trapped when the intake valve shuts. */
  readonly residual: number;
  /** Of the fresh gas taken in: what left through the exhaust valve. */
  readonly lost: number;
  /** Burnt gas that went into the intake / all that is trapped. */
  readonly reversion: number;
  /** Pa */
  readonly peakPressure: number;
  /** Mean of what leaves, by heat, K. */
  readonly exhaustTemperature: number;
};

/** One cylinder over the cycle from −360 to 360 crank degrees of its own, a row each degree. */
export type CylinderTrace = {
  readonly cylinder: number;
  readonly angle: Float32Array;
  readonly pressure: Float32Array;
  readonly temperature: Float32Array;
  readonly volume: Float32Array;
  /** In the pipes beside the valves: Pa. */
  readonly exhaustPort: Float32Array;
  readonly intakePort: Float32Array;
  /** kg/s out of the cylinder through the exhaust valves; into it through the intake valves. */
  readonly exhaustFlow: Float32Array;
  readonly intakeFlow: Float32Array;
  /** m */
  readonly exhaustLift: Float32Array;
  readonly intakeLift: Float32Array;
};

/** Waves in all pipes over a cycle of the cylinder that fires first, from −360 to 360 of its crank degrees. */
export type WavePicture = { readonly angles: Float32Array; readonly pipes: readonly PipePicture[] };

/** Why an answer deserves less trust. */
export type Doubt = {
  readonly kind: 'unsettled' | 'hot' | 'sonic' | 'fast' | 'coarse';
  readonly message: string;
};

export type SpeedAnswer = {
  readonly rpm: number;
  /** N m and W at the crank. */
  readonly torque: number;
  readonly power: number;
  /** Pa */
  readonly bmep: number;
  readonly imep: number;
  readonly pmep: number;
  readonly fmep: number;
  readonly volumetricEfficiency: number;
  readonly residual: number;
  readonly lost: number;
  readonly reversion: number;
  readonly exhaustTemperature: number;
  readonly peakPressure: number;
  readonly shares: EnergyShares;
  readonly cylinders: readonly CylinderAnswer[];
  /** Followed in all; those on the cells asked for; whether torque settled within 0.1 %; how far the last cycle moved it. */
  readonly cycles: number;
  readonly fineCycles: number;
  readonly settled: boolean;
  readonly drift: number;
  /** m, longest cell. */
  readonly cell: number;
  readonly cellUpdates: number;
  readonly doubts: readonly Doubt[];
  readonly traces: readonly CylinderTrace[] | null;
  readonly waves: WavePicture | null;
};

/** Speeds where nothing could be answered keep their place. */
export type SpeedFailure = { readonly rpm: number; readonly failed: string };

export type TorqueCurve = readonly (SpeedAnswer | SpeedFailure)[];
