/** How findings on a plate name places. */
import type { Say } from '../check/words';
import type { Point2 } from '../plane/loop';

/** As the drawing has them. */
export const at = ([x, y]: Point2, say: Say): string => `x ${say(x)}, y ${say(y)} from the plate's first port`;

export const upper = (words: string): string => words[0]!.toUpperCase() + words.slice(1);
