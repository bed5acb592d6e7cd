/** The first layout that holds, round by round: better ones are not waited for. */
import type { Layout, Router } from '../../../geometry';

export function firstLayout(lay: Router, rounds: number): Layout | null {
  let first: Layout | null = null;
  const see = (layout: Layout): void => {
    first ??= layout;
  };
  for (let n = 0; n < rounds && !first; n++) lay.round(n, see, () => first !== null);
  return first;
}
