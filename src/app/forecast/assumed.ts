/** What nobody gave, of several runs together. */
import type { Assumed } from '../../pulse/engine/types';

/** Several may lie at one path, as what an engine's walls and its heat law are: the path alone does not tell them apart. */
export const assumedKey = ({ path, name }: Pick<Assumed, 'path' | 'name'>): string => `${path} ${name}`;

/** Each once, the last of what is said twice. */
export const eachOnce = (assumed: readonly Assumed[]): readonly Assumed[] => [
  ...new Map(assumed.map((a) => [assumedKey(a), a])).values(),
];
