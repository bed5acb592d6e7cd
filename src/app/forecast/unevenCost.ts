/** What a millimetre between the longest and the shortest primary costs, from a run with equal lengths and one without. */
import type { Display } from '../../../shared/design/types';
import { settlingNoise } from '../../pulse/forecast/noise';
import { gainsOf } from './gains';
import { UNEVEN } from './kinds';
import { numberText, wordsFor } from './quantities';
import { answerAt, type Run } from './runs';

/** A sentence; null until every speed of both is followed. */
export function unevenWords(equal: Run, uneven: Run, display: Display): string | null {
  const lost = gainsOf(equal, uneven);
  if (lost.length === 0 || lost.length < equal.speeds.length) return null;
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const cost = mean(lost.map(({ torque }) => torque));
  const torque = mean(equal.speeds.map((rpm) => answerAt(equal, rpm)!.torque));
  const { unit, factor } = wordsFor('torque', display);
  const open = settlingNoise(torque);
  if (Math.abs(cost) <= open)
    return `${UNEVEN} mm between longest and shortest cost no more than settling leaves open, ${numberText(open * factor, 1)} ${unit} in the mean.`;
  const each = `${numberText(Math.abs(cost / UNEVEN) * factor, 3)} ${unit} in the mean of the speeds`;
  return `Each millimetre between longest and shortest ${cost > 0 ? 'costs' : 'gains'} ${each}.`;
}
