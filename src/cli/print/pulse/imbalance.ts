/** What unequal lengths cost, for people. mm, N m. */

import { isAnswer } from '../../../pulse/forecast/curve';
import type { ImbalanceCost } from '../../../pulse/forecast/imbalance';
import type { TorqueCurve } from '../../../pulse/forecast/types';
import { columns } from '../columns';
import { signed } from './against';

export function imbalanceLines({ steps, perMillimetre, noise, isWithinNoise }: ImbalanceCost): string[] {
  const rows = steps.map(({ imbalance, curve, mean, cost }) => [
    String(imbalance),
    mean === null ? 'not whole' : mean.toFixed(2),
    cost === null || imbalance === 0 ? '' : signed(cost, 2),
    unsettledText(curve),
  ]);
  const table = columns([['imbalance mm', 'mean N m', 'cost N m', ''], ...rows], ['right', 'right', 'right', 'left']);
  if (perMillimetre === null) return [table, '  nothing can be said: not every speed was answered'];
  const cost = `  each millimetre of imbalance costs ${Number(perMillimetre.toPrecision(2))} N m of mean torque${perMillimetre < 0 ? ': it gains' : ''}`;
  const within = `, which is within what settling leaves open (${noise.toFixed(2)} N m): no cost can be told`;
  return [table, `${cost}${isWithinNoise ? within : ''}`];
}

function unsettledText(curve: TorqueCurve): string {
  const count = curve.filter((point) => isAnswer(point) && !point.settled).length;
  return count > 0 ? `${count} not settled` : '';
}
