/**
 * What a torque curve measured on this engine tells of it: factors on flow, friction and heat, found by least squares within bounds and
 * held back toward 1, so that what the points cannot tell stays as usual. Deterministic: the same points give the same factors, in
 * whatever order a team answers. N m, rpm.
 */
import { boundedStep, leftUnknown } from './fit/boundedStep';
import { asFactors, BOUNDS, FACTORS, type Factor, type Factors, SPREAD } from './fit/factors';
import { type Base, followAll, isAnswer } from './fit/followed';
import { judge, learnt, type Slopes } from './fit/judge';
import { type Measured, thinned } from './fit/measured';
import { failureOf, fitWords } from './fit/words';
import type { Team } from './job';
import type { TorqueCurve } from './types';

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
  /** Why the factors are nothing to go by; null where they are. */
  readonly failure: string | null;
  readonly message: string;
};

export type FitFailure = { readonly failed: string };

/** Speeds followed so far, and how many there will be about. */
export type FitProgress = { readonly done: number; readonly likely: number };

/** Before any is followed. */
export const fitOutlook = (all: readonly Measured[]): FitProgress => ({
  done: 0,
  likely: thinned(all).length * (3 + LIKELY_ROUNDS),
});

const USUAL = [1, 1, 1];
/** For the slopes of flow and heat, from 1. Friction's is exact: torque falls by as much as friction rises. */
const NUDGE = { flow: 0.03, heat: 0.2 } as const;
const MOST_ROUNDS = 6;
const LIKELY_ROUNDS = 4;
/** Of its spread: a step shorter than this is none. */
const SHORT = 0.02;
/** Of the way, tried where the whole way makes it worse. */
const WAYS = [1, 0.5, 0.25] as const;
const FEWEST = 3;

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
  let done = 0;
  const { likely } = fitOutlook(all);
  const count = (): void => {
    done++;
    tell({ done, likely: Math.max(likely, done) });
  };
  const follow = (sets: readonly (readonly number[])[]) =>
    followAll(base, sets.map(asFactors), speeds, team, count, stopped);

  const first = await follow([USUAL, [1 + NUDGE.flow, 1, 1], [1, 1, 1 + NUDGE.heat]]);
  if (!first) return { failed: 'Stopped before the engine was followed once at every measured speed.' };
  const { used, judged, torques, linearAt } = judge(points, base.engine, first);
  if (used < FEWEST) {
    const why = first.flat().find((one) => !isAnswer(one)) as { failed: string };
    return { failed: `Fewer than ${FEWEST} of the measured speeds can be followed: ${why.failed}` };
  }
  const start = judged(USUAL, first[0]!)!;
  const [usual, flowing, heated] = first.map(torques) as [number[], number[], number[]];
  let slopes: Slopes = usual.map((torque, i) => [
    (flowing[i]! - torque) / NUDGE.flow,
    (heated[i]! - torque) / NUDGE.heat,
  ]);
  let best = start;
  let cut = false;

  rounds: for (let round = 0; round < MOST_ROUNDS; round++) {
    const to = boundedStep(linearAt(best, slopes), SPREAD, BOUNDS);
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

  const left = leftUnknown(linearAt(best, slopes), SPREAD);
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
  const failure = failureOf(fit);
  return { ...fit, failure, message: fitWords({ ...fit, failure }, all.length, used) };
}

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
