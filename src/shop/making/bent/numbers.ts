/** Bends are counted from 1 along the runner, whichever end they are bent from and behind a split too, as splits and heights count them. */
import type { BentTube } from '../report';

/** In the order of the rows from that end. */
export function bendNumbers({ fromStart, thinned }: Pick<BentTube, 'fromStart' | 'thinned'>, end: 'start' | 'end') {
  const first = thinned[0]?.bend ?? 1;
  const along = fromStart.slice(0, -1).map((_, i) => first + i);
  return end === 'start' ? along : along.reverse();
}
