/** The three factors that a measured curve can tell, their bounds, and how sure one may be of the usual values without any curve. */
import { FITTED_FLOW, FITTED_FRICTION, FITTED_HEAT } from '../../../../shared/design/ranges';
import { frictionTimes, wallsTimes } from '../../engine/setup/burning';
import type { EngineSetup } from '../../engine/types';

export type Factor = 'flow' | 'friction' | 'heat';
export type Factors = { readonly [K in Factor]: number };

/** The order in which they stand in a matrix. */
export const FACTORS: readonly Factor[] = ['flow', 'friction', 'heat'];

export const BOUNDS = [FITTED_FLOW, FITTED_FRICTION, FITTED_HEAT] as const;

/**
 * Standard deviations of what is usual: a flow coefficient within about 0.07 of 0.6, friction within 20 %, heat to the walls within 30 %
 * (bands of the reference values that the usual numbers come from). What the points cannot tell stays within these of 1.
 */
export const SPREAD = [0.1, 0.2, 0.3] as const;

export const asFactors = ([flow, friction, heat]: readonly number[]): Factors => ({
  flow: flow!,
  friction: friction!,
  heat: heat!,
});

/** The same engine with these factors, whichever it had. */
export const withFactors = (engine: EngineSetup, { flow, friction, heat }: Factors): EngineSetup => ({
  ...engine,
  flowFactor: flow,
  friction: frictionTimes(friction),
  walls: wallsTimes(heat),
});
