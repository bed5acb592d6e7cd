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

export const list = <T extends z.ZodType>(entry: T, most: number, what: string) => {
  const allowed = `a list of at most ${most} ${what}`;
  return z.array(entry, allowed).max(most, allowed);
};

/** Fields that are not known pass: a later program may know them. */
export const object = <T extends z.ZodRawShape>(shape: T) =>
  z.looseObject(
    shape,
    `an object with ${Object.keys(shape).slice(0, 4).join(', ')}${Object.keys(shape).length > 4 ? ' …' : ''}`,
  );

/** May be left out, but is never null. */
export const maybe = z.exactOptional;
