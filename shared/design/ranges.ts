/**
 * What a single number of a design may be: the ranges that shape.ts enforces and that the app's fields show beside the
 * number. One place, so that what is said is what is held. mm, degrees, rpm or plain, as the field says.
 */
import { MAX_CYLINDERS, MAX_INLETS, MAX_LENGTH, MAX_POINTS, MAX_VECTOR } from './limits';

export type Range = {
  readonly least: number;
  readonly most: number;
  /** `least` itself is not allowed. */
  readonly above?: true;
  /** `most` itself is not allowed. */
  readonly below?: true;
  readonly whole?: true;
};

export const LENGTH: Range = { least: 0, most: MAX_LENGTH, above: true };
export const DISTANCE: Range = { least: 0, most: MAX_LENGTH };
export const COORDINATE: Range = { least: -MAX_LENGTH, most: MAX_LENGTH };
/** A component of a direction, which needs no unit length. */
export const COMPONENT: Range = { least: -MAX_VECTOR, most: MAX_VECTOR };
/** Crank degrees from top dead centre of the exhaust stroke. */
export const CRANK: Range = { least: -720, most: 720 };
export const BEND_ANGLE: Range = { least: 0, most: 360, above: true };
export const CONVERGENCE: Range = { least: 0, most: 80 };
/** Of an outline's edge: tan(turn / 4), so that 1 is half a circle. */
export const BULGE: Range = { least: -20, most: 20 };
export const TILT: Range = { least: 0, most: 180 };
/** The engine's roll either way, degrees. */
export const ROCK: Range = { least: -30, most: 30 };
/** °C */
export const TEMPERATURE: Range = { least: -50, most: 1200 };
export const LAYERS: Range = { least: 1, most: 20, whole: true };
/** Round a tube, degrees. */
export const CLOCK: Range = { least: -360, most: 360 };
/** How many of something lie on the shelf. */
export const COUNT: Range = { least: 0, most: 10_000, whole: true };
/** Money, and minutes. */
export const PRICE: Range = { least: 0, most: 10_000_000 };
export const MINUTES: Range = { least: 0, most: 10_000 };
/** How much longer a bend comes out, percent of its arc. */
export const STRETCH: Range = { least: 0, most: 50 };
/** Of a dial, degrees. */
export const DIAL: Range = { least: 0, most: 45, above: true };
export const SPEED: Range = { least: 0, most: 100_000, above: true };
export const COMPRESSION: Range = { least: 1, most: 50, above: true };
/** Where a valve's lift is measured, mm, and of a valve on a flow bench: lift over diameter. */
export const LIFT: Range = { least: 0, most: 100 };
export const LIFT_OVER_DIAMETER: Range = { least: 0, most: 1 };
/** Of the curtain area. */
export const FLOW: Range = { least: 0, most: 1, above: true };
/** Crank degrees of a cycle. */
export const FIRING: Range = { least: 0, most: 720 };
/** cm³; 0: none. */
export const PLENUM: Range = { least: 0, most: 100_000 };
/** Air over what the fuel needs: beyond these nothing burns that is lit by a spark (from memory: petrol about 0.5 to 1.5). */
export const LAMBDA: Range = { least: 0.5, most: 1.6 };
/** Crank degrees after top dead centre at which half of the heat is released. */
export const BURN_MIDDLE: Range = { least: -30, most: 90 };
export const BURN_DURATION: Range = { least: 10, most: 180 };
export const SHARE: Range = { least: 0, most: 1, above: true };
/** Of the air outside, hPa: from the highest roads to more than any weather. */
export const AIR_PRESSURE: Range = { least: 500, most: 1100 };
/** °C */
export const AIR_TEMPERATURE: Range = { least: -50, most: 60 };
/** Factors that a measured curve may put on the usual values: beyond them something else is wrong. */
export const FITTED_FLOW: Range = { least: 0.8, most: 1.2 };
export const FITTED_FRICTION: Range = { least: 0.5, most: 1.8 };
export const FITTED_HEAT: Range = { least: 0.5, most: 2 };
/** Of a measured curve: rpm, N m, percent. */
export const MEASURED_SPEED: Range = { least: 100, most: 30_000 };
export const TORQUE: Range = { least: 0, most: 10_000, above: true };
export const LOSS: Range = { least: 0, most: 50 };
/** Stagnation pressure lost over the dynamic pressure. */
export const RESISTANCE: Range = { least: 0, most: 1000 };
/** Height of what a casting's skin is rough by, mm. */
export const ROUGHNESS: Range = { least: 0, most: 5 };
export const VALVES: Range = { least: 1, most: 8, whole: true };
export const CYLINDERS: Range = { least: 1, most: MAX_CYLINDERS, whole: true };
export const INLETS: Range = { least: 1, most: MAX_INLETS, whole: true };
export const BENDS: Range = { least: 0, most: MAX_POINTS, whole: true };

/** Whether a number lies in a range. */
export const isWithin = (value: number, { least, most, above, below, whole }: Range): boolean =>
  (above ? value > least : value >= least) &&
  (below ? value < most : value <= most) &&
  (!whole || Number.isInteger(value));

/** A range made narrower by what another field owes it, such as a wall by its tube. */
export function narrowed(range: Range, by: Partial<Range>): Range {
  const low = by.least !== undefined && by.least >= range.least ? by : range;
  const high = by.most !== undefined && by.most <= range.most ? by : range;
  return {
    least: low.least!,
    most: high.most!,
    ...(low.above && { above: true }),
    ...(high.below && { below: true }),
    ...(range.whole && { whole: true }),
  };
}
