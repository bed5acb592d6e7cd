/** What unequal lengths cost, for people. mm, N m. */
import type { ImbalanceCost } from '../../../pulse/forecast/imbalance';
import { columns } from '../columns';
import { signed } from './against';

export function imbalanceLines({ steps, perMillimetre, noise, isWithinNoise }: ImbalanceCost): string[] {
  const rows = steps.map(({ imbalance, mean, cost }) => [
    String(imbalance),
    mean === null ? 'failed' : mean.toFixed(2),
    cost === null ? '' : signed(-cost, 2),
  ]);
  const table = columns([['imbalance mm', 'mean N m', 'gain N m'], ...rows], ['right', 'right', 'right']);
  if (perMillimetre === null) return [table, '  nothing can be said: not every speed was answered'];
  const cost = `  each millimetre of imbalance costs ${Number(perMillimetre.toPrecision(2))} N m of mean torque`;
  const within = `, which is within what settling leaves open (${noise.toFixed(2)} N m): no cost can be told`;
  return [table, `${cost}${isWithinNoise ? within : ''}`];
}
