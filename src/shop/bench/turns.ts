/** How a welded tube's pieces are turned, rounded to the dial. Degrees, clockwise looking along the tube away from its start. */
import type { WeldedTube } from '../making/report';
import { toStep } from '../toStep';
import type { Steps } from './figures';

export type Turn = { readonly turn: number; readonly total: number };

/** As they are printed: totals are the sum of the turns above them, so that who adds up finds what is there. */
export function turnsOf(
  { start, joints }: Pick<WeldedTube, 'start' | 'joints'>,
  { dial }: Pick<Steps, 'dial'>,
): Turn[] {
  let total = 0;
  return [start.turn, ...joints.map(({ turn }) => turn)].map((nominal) => {
    const turn = toStep(nominal, dial);
    total += turn;
    return { turn, total: total - 360 * Math.floor(total / 360) };
  });
}
