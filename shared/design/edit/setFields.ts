/** Sets single fields of a design, or takes optional ones away; several at once, as one edit. */

import type { Design } from '../types';
import { checked, type Edited } from './edited';
import type { Segments } from './things';

/** `undefined` takes the field away. */
export type Change = readonly [where: Segments, value: unknown];

export const setFields = (design: Design, changes: readonly Change[]): Edited =>
  checked(changes.reduce<Design>((so, [where, value]) => setAt(so, where, value) as Design, design));

/** A copy with the value at the end of the way, making objects on it where there are none yet. Nothing else is copied. */
function setAt(holder: unknown, [key, ...rest]: Segments, value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(holder)) {
    const list: unknown[] = [...holder];
    const next = setAt(list[key as number], rest, value);
    if (next === undefined) list.splice(key as number, 1);
    else list[key as number] = next;
    return list;
  }
  const { [key]: own, ...others } = (holder ?? {}) as Record<string, unknown>;
  const before = holder && Object.hasOwn(holder, key) ? own : undefined;
  const next = setAt(before, rest, value);
  // Taking away what is not there makes nothing on the way.
  if (next === undefined) return holder === undefined ? undefined : others;
  // Replaced in its place, so that the file's order of fields stays.
  return before === undefined ? { ...others, [key]: next } : { ...(holder as object), [key]: next };
}
