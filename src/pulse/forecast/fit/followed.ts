/** Several sets of factors on the same speeds, followed in one go, so that all cores have work. N m, rpm. */
import type { EngineSetup } from '../../engine/types';
import type { GasPath } from '../../path/types';
import { USUAL_CELL } from '../cells';
import type { Team } from '../job';
import type { SpeedAnswer, SpeedFailure, TorqueCurve } from '../types';
import { type Factors, withFactors } from './factors';

export type Base = { readonly engine: EngineSetup; readonly path: GasPath };

/** m: three factors of a whole curve need no fine waves. */
export const FIT_CELL = 2 * USUAL_CELL;

/**
 * One curve for each set of factors; null where it was stopped before all were followed.
 *
 * @param tell once for each job that is done
 */
export async function followAll(
  { engine, path }: Base,
  sets: readonly Factors[],
  speeds: readonly number[],
  team: Team,
  tell: () => void,
  stopped: () => boolean,
): Promise<TorqueCurve[] | null> {
  if (stopped()) return null;
  const jobs = sets.flatMap((factors) => {
    const fitted = withFactors(engine, factors);
    return speeds.map((rpm) => ({ engine: fitted, path, rpm, cell: FIT_CELL }));
  });
  const answers = new Array<SpeedAnswer | SpeedFailure | undefined>(jobs.length).fill(undefined);
  await team.follow(
    jobs,
    (index, answer) => {
      answers[index] = answer;
      tell();
    },
    stopped,
  );
  if (answers.includes(undefined)) return null;
  const whole = answers as (SpeedAnswer | SpeedFailure)[];
  return sets.map((_, k) => whole.slice(k * speeds.length, (k + 1) * speeds.length));
}

export const isAnswer = (answer: SpeedAnswer | SpeedFailure): answer is SpeedAnswer => !('failed' in answer);
