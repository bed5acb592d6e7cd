/** What the Make leaf changes in the design, each as one step of history. */
import { setFields } from '../../../shared/design/edit';
import type { Way } from '../../shop/making/report';
import { act } from '../room/edits';
import { WAY_NAMES } from './words';

/** A rule may hold for one way only, such as the straight that a clamp needs: the header is then balanced again. */
export const chooseWay = (tube: string, way: Way): void =>
  act(
    (now) => setFields(now, [[['tooling', tube, 'making'], way]]),
    `Make tube ${tube}: ${WAY_NAMES[way].toLowerCase()}`,
  );

/** Of every piece, in mm as said in `words`; null: all that stock has. */
export const chooseLegs = (longestLeg: number | null, words: string): void =>
  act(
    (now) => setFields(now, [[['workshop', 'longestLeg'], longestLeg ?? undefined]]),
    `Longest leg of pieces: ${words}`,
  );

/** @param bends counted from 1; none: made of one tube */
export function splitRunner(runner: string, bends: readonly number[]): void {
  const sorted = [...new Set(bends)].sort((a, b) => a - b);
  const label = sorted.length > 0 ? `Split ${runner} before bend ${sorted.join(', ')}` : `Make ${runner} of one tube`;
  act((now) => {
    const at = now.runners.findIndex(({ id }) => id === runner);
    return at < 0
      ? { ok: true, design: now }
      : setFields(now, [[['runners', at, 'splits'], sorted.length > 0 ? sorted : undefined]]);
  }, label);
}
