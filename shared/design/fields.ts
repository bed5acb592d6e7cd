/** Fields of a document that carry the words which tell what is allowed there. */
import { z } from 'zod';
import type { Range } from './ranges';

/** A number in a range, its words said once. */
export const ranged = ({ least, most, above, whole }: Range, unit = '') => {
  const what = whole ? 'a whole number' : 'a number';
  const reach = above ? `above ${least}, at most ${most}` : `from ${least} to ${most}`;
  const allowed = `${what} ${reach}${unit && ` ${unit}`}`;
  const number = whole ? z.number(allowed).int(allowed) : z.number(allowed);
  return (above ? number.gt(least, allowed) : number.min(least, allowed)).max(most, allowed);
};

/** One of a few names, all of them named. */
export const oneOf = <const T extends readonly string[]>(...names: T) =>
  z.enum(names, `one of ${names.map((n) => `"${n}"`).join(', ')}`);
