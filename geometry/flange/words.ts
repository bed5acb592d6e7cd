/** How findings on a plate name places. */
import type { Say } from '../check/words';
import type { Point2 } from '../plane/loop';

/** As the drawing has them. */
export const at = ([x, y]: Point2, say: Say): string => `x ${say(x)}, y ${say(y)} from the plate's first port`;

export const upper = (words: string): string => words[0]!.toUpperCase() + words.slice(1);

/** `1, 2 and 5` */
export const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
