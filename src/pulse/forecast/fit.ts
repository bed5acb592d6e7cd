/**
 * What a torque curve measured on this engine tells of it: factors on flow, friction and heat, found by least squares within bounds and
 * held back toward 1, so that what the points cannot tell stays as usual. Deterministic: the same points give the same factors, in
 * whatever order a team answers. N m, rpm.
 */
import { boundedStep, type Linear, leftUnknown } from './fit/boundedStep';
import { asFactors, BOUNDS, FACTORS, type Factor, type Factors, SPREAD } from './fit/factors';
import { type Base, followAll, isAnswer } from './fit/followed';
import { type Measured, thinned } from './fit/measured';
import { fitWords } from './fit/words';
import type { Team } from './job';
import type { SpeedAnswer, TorqueCurve } from './types';

export type Fit = {
  readonly fitted: Factors;
  /** Root of the mean square by which torque is off at the speeds followed, N m: with all factors 1, and as fitted. */
  readonly before: number;
  readonly after: number;
  /** Factors that ended at a bound: something else is wrong. */
  readonly atBound: readonly Factor[];
  /** Factors of which the points tell little: they stay near 1. */
  readonly untold: readonly Factor[];
  /** As fitted, at the speeds of `points`, on coarse cells. */
  readonly curve: TorqueCurve;
  readonly points: readonly Measured[];
  /** It was stopped: the best so far. */
  readonly stopped: boolean;
  readonly message: string;
};

export type FitFailure = { readonly failed: string };

/** Speeds followed so far, and how many there will be about. */
export type FitProgress = { readonly done: number; readonly likely: number };

/** Of the highest torque: what a measured point may be off by. Common practice for repeated runs. */
const NOISE = 0.01;
/** For the slopes of flow and heat, from 1. Friction's is exact: torque falls by as much as friction rises. */
const NUDGE = { flow: 0.03, heat: 0.2 } as const;
const MOST_ROUNDS = 6;
const LIKELY_ROUNDS = 4;
/** Of its spread: a step shorter than this is none. */
const SHORT = 0.02;
/** Of the way, tried where the whole way makes it worse. */
const WAYS = [1, 0.5, 0.25] as const;
const FEWEST = 3;

/** Torques of a set of factors beside those measured. */
type Tried = {
  readonly x: readonly number[];
  readonly curve: TorqueCurve;
  readonly residuals: readonly number[];
  /** ∂torque/∂friction. */
  readonly dragged: readonly number[];
  readonly cost: number;
};

/**
 * @param base engine and path of the same cylinders; whatever factors the engine has are set aside
 * @param all torque at the crank, speeds rising: `measuredOf`
 */
export async function fitBaseline(
  base: Base,
  all: readonly Measured[],
  team: Team,
  tell: (progress: FitProgress) => void = () => {},
  stopped: () => boolean = () => false,
): Promise<Fit | FitFailure> {
  const points = thinned(all);
  if (points.length < FEWEST) return { failed: `${points.length} measured points: at least ${FEWEST} are needed` };
  const speeds = points.map(({ rpm }) => rpm);
  const noise = NOISE * Math.max(...points.map(({ torque }) => torque));
  const perPressure = (base.engine.cylinders.length * base.engine.bore ** 2 * base.engine.stroke) / 16;
  let done = 0;
  const likely = speeds.length * (3 + LIKELY_ROUNDS);
  const count = (): void => {
    done++;
    tell({ done, likely: Math.max(likely, done) });
  };
  const follow = (sets: readonly (readonly number[])[]) =>
    followAll(base, sets.map(asFactors), speeds, team, count, stopped);

  const first = await follow([
    [1, 1, 1],
    [1 + NUDGE.flow, 1, 1],
    [1, 1, 1 + NUDGE.heat],
  ]);
  if (!first) return { failed: 'Stopped before the engine was followed once at every measured speed.' };
  // Where one set could not be followed the speed tells nothing, and stays out of the fit for good.
  const used = speeds.map((_, i) => first.every((curve) => isAnswer(curve[i]!)));
  if (used.filter(Boolean).length < FEWEST) {
    const why = first.flat().find((one) => !isAnswer(one)) as { failed: string };
    return { failed: `Fewer than ${FEWEST} of the measured speeds can be followed: ${why.failed}` };
  }
  const each = <T>(curve: TorqueCurve, of: (answer: SpeedAnswer, torque: number) => T): T[] | null => {
    const values = curve.flatMap((answer, i) => (used[i] && isAnswer(answer) ? [of(answer, points[i]!.torque)] : []));
    return values.length === used.filter(Boolean).length ? values : null;
  };
  const judged = (x: readonly number[], curve: TorqueCurve): Tried | null => {
    const residuals = each(curve, ({ torque }, measured) => torque - measured);
    const dragged = each(curve, ({ fmep }) => (-fmep * perPressure) / x[1]!);
    if (!residuals || !dragged) return null;
    const held = x.reduce((sum, value, k) => sum + ((value - 1) / SPREAD[k]!) ** 2, 0);
    return { x, curve, residuals, dragged, cost: residuals.reduce((sum, r) => sum + (r / noise) ** 2, held) };
  };

  const start = judged([1, 1, 1], first[0]!)!;
  const torques = first.map((curve) => each(curve, ({ torque }) => torque)!);
  /** ∂torque/∂flow and ∂torque/∂heat. */
  let slopes = torques[0]!.map((torque, i): [number, number] => [
    (torques[1]![i]! - torque) / NUDGE.flow,
    (torques[2]![i]! - torque) / NUDGE.heat,
  ]);
  const linearAt = (at: Tried): Linear => ({
    residuals: at.residuals,
    slopes: slopes.map(([flow, heat], i) => [flow, at.dragged[i]!, heat]),
    from: at.x,
    noise,
  });
  let best = start;
  let cut = false;

  rounds: for (let round = 0; round < MOST_ROUNDS; round++) {
    const to = boundedStep(linearAt(best), SPREAD, BOUNDS);
    if (to.every((value, k) => Math.abs(value - best.x[k]!) < SHORT * SPREAD[k]!)) break;
    for (const way of WAYS) {
      const x = best.x.map((value, k) => (way === 1 ? to[k]! : value + way * (to[k]! - value)));
      const curves = await follow([x]);
      if (!curves) {
        cut = true;
        break rounds;
      }
      const tried = judged(x, curves[0]!);
      if (!tried) continue;
      slopes = learnt(slopes, best, tried);
      if (tried.cost >= best.cost) continue;
      best = tried;
      continue rounds;
    }
    break;
  }

  const left = leftUnknown(linearAt(best), SPREAD);
  const fit = {
    fitted: asFactors(best.x.map((value) => Math.round(1e4 * value) / 1e4)),
    before: rms(start.residuals),
    after: rms(best.residuals),
    atBound: FACTORS.filter((_, k) => best.x[k] === BOUNDS[k]!.least || best.x[k] === BOUNDS[k]!.most),
    untold: FACTORS.filter((_, k) => left[k]! > 0.7),
    curve: best.curve,
    points,
    stopped: cut,
  };
  return { ...fit, message: fitWords(fit, all.length, used.filter(Boolean).length) };
}

/**
 * Slopes that a further try has told more of: changed as little as can be so that they foretell it (Broyden, Mathematics of Computation 19
 * (1965) 577, from memory), what friction did taken off first.
 */
function learnt(slopes: readonly (readonly [number, number])[], from: Tried, to: Tried): [number, number][] {
  const [flow, friction, heat] = to.x.map((value, k) => value - from.x[k]!) as [number, number, number];
  // In parts of their spread, or the wider of the two would take all of the blame.
  const [a, b] = [flow / SPREAD[0], heat / SPREAD[2]];
  const square = a * a + b * b;
  if (square < 1e-12) return slopes.map(([x, y]) => [x, y]);
  return slopes.map(([byFlow, byHeat], i) => {
    const foretold = byFlow * flow + byHeat * heat + to.dragged[i]! * friction;
    const missed = (to.residuals[i]! - from.residuals[i]! - foretold) / square;
    return [byFlow + (missed * a) / SPREAD[0], byHeat + (missed * b) / SPREAD[2]];
  });
}

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
