/**
 * How far a set of factors leaves the model from what was measured, and what each factor would do about it. Speeds that could not be
 * followed at first tell nothing, and stay out for good. N m.
 */
import type { EngineSetup } from '../../engine/types';
import type { SpeedAnswer, TorqueCurve } from '../types';
import type { Linear } from './boundedStep';
import { SPREAD } from './factors';
import { isAnswer } from './followed';
import type { Measured } from './measured';

/** Of the highest torque: what a measured point may be off by. Common practice for repeated runs. */
export const NOISE = 0.01;

/** Torques of a set of factors beside those measured. */
export type Tried = {
  readonly x: readonly number[];
  readonly curve: TorqueCurve;
  readonly residuals: readonly number[];
  /** ∂torque/∂friction: exact, as torque falls by as much as friction rises, and the gas knows nothing of it. */
  readonly dragged: readonly number[];
  readonly cost: number;
};

/** ∂torque/∂flow and ∂torque/∂heat at each speed. */
export type Slopes = readonly (readonly [flow: number, heat: number])[];

export type Judge = {
  readonly used: number;
  /** Null where a speed that was followed before could not be. */
  judged(x: readonly number[], curve: TorqueCurve): Tried | null;
  /** Torque of the speeds used, of one of the first curves. */
  torques(curve: TorqueCurve): number[];
  linearAt(at: Tried, slopes: Slopes): Linear;
};

/** @param first curves of which a speed must be in each to be used */
export function judge(
  points: readonly Measured[],
  { cylinders, bore, stroke }: EngineSetup,
  first: readonly TorqueCurve[],
): Judge {
  const noise = NOISE * Math.max(...points.map(({ torque }) => torque));
  /** N m a Pa: displacement / 4π. */
  const perPressure = (cylinders.length * bore ** 2 * stroke) / 16;
  const places = points.flatMap((_, i) => (first.every((curve) => isAnswer(curve[i]!)) ? [i] : []));
  const each = (curve: TorqueCurve, of: (answer: SpeedAnswer, measured: number) => number): number[] | null => {
    const values = places.flatMap((i) => {
      const answer = curve[i]!;
      return isAnswer(answer) ? [of(answer, points[i]!.torque)] : [];
    });
    return values.length === places.length ? values : null;
  };
  return {
    used: places.length,
    torques: (curve) => each(curve, ({ torque }) => torque)!,
    judged(x, curve) {
      const residuals = each(curve, ({ torque }, measured) => torque - measured);
      const dragged = each(curve, ({ fmep }) => (-fmep * perPressure) / x[1]!);
      if (!residuals || !dragged) return null;
      const held = x.reduce((sum, value, k) => sum + ((value - 1) / SPREAD[k]!) ** 2, 0);
      return { x, curve, residuals, dragged, cost: residuals.reduce((sum, r) => sum + (r / noise) ** 2, held) };
    },
    linearAt: ({ x, residuals, dragged }, slopes) => ({
      residuals,
      slopes: slopes.map(([flow, heat], i) => [flow, dragged[i]!, heat]),
      from: x,
      noise,
    }),
  };
}

/**
 * Slopes that a further try has told more of: changed as little as can be so that they foretell it (Broyden, Mathematics of Computation 19
 * (1965) 577, from memory), what friction did taken off first.
 */
export function learnt(slopes: Slopes, from: Tried, to: Tried): Slopes {
  const [flow, friction, heat] = to.x.map((value, k) => value - from.x[k]!) as [number, number, number];
  // In parts of their spread, or the wider of the two would take all of the blame.
  const [a, b] = [flow / SPREAD[0], heat / SPREAD[2]];
  const square = a * a + b * b;
  if (square < 1e-12) return slopes;
  return slopes.map(([byFlow, byHeat], i) => {
    const foretold = byFlow * flow + byHeat * heat + to.dragged[i]! * friction;
    const missed = (to.residuals[i]! - from.residuals[i]! - foretold) / square;
    return [byFlow + (missed * a) / SPREAD[0], byHeat + (missed * b) / SPREAD[2]] as const;
  });
}
