/** A measured curve beside the one that was fitted to it, for people. rpm, N m. */
import { isAnswer } from '../../../pulse/forecast/curve';
import type { Fit } from '../../../pulse/forecast/fit';
import { columns } from '../columns';
import { signed } from './against';
import { rpmText } from './curve';

export function fitTable({ points, curve }: Fit): string {
  const rows = points.map(({ rpm, torque }, k) => {
    const answer = curve[k];
    const is = answer && isAnswer(answer) ? answer.torque : null;
    return [
      ...[rpmText(rpm), torque.toFixed(1)],
      ...(is === null ? ['failed', ''] : [is.toFixed(1), signed(is - torque, 1)]),
    ];
  });
  return columns([['rpm', 'measured N m', 'fitted N m', 'off by'], ...rows], ['right', 'right', 'right', 'right']);
}
