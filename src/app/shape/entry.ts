/**
 * Exact entry beside the pointer: what is typed while something is held. A distance goes the way the hand has pulled;
 * X, Y, Z set their part of the move; a turn has its angle. Whichever was typed last counts. mm, radians.
 */
import { norm, RADIANS, reject, scale, unit } from '../../../geometry';
import { parseLength } from '../../../shared/units';
import type { Vec3 } from '../../../shared/vec3';
import { type Amount, byOf, type Grip } from './grip';
import { AXIS_WAYS, type Axis } from './pointer';

export type Field = 'distance' | 'x' | 'y' | 'z' | 'angle';

export type Entry = {
  readonly fields: readonly Field[];
  readonly at: number;
  readonly texts: Readonly<Partial<Record<Field, string>>>;
  /** What is wrong with the text that was typed last; null while it can be used. */
  readonly problem: string | null;
};

export function openEntry(grip: Grip, text = ''): Entry {
  const { motion } = grip;
  const fields: readonly Field[] =
    motion.kind === 'turn' ? ['angle'] : motion.kind === 'line' ? ['distance'] : ['distance', 'x', 'y', 'z'];
  return { fields, at: 0, texts: text ? { [fields[0]!]: text } : {}, problem: null };
}

export const fieldOf = (entry: Entry): Field => entry.fields[entry.at]!;

export const stepField = (entry: Entry, step: 1 | -1): Entry => ({
  ...entry,
  at: (entry.at + step + entry.fields.length) % entry.fields.length,
});

/** A distance and its parts say the same thing twice: typing one clears the other. */
export function withText(entry: Entry, field: Field, text: string): Entry {
  const others = field === 'distance' ? {} : { ...entry.texts, distance: undefined };
  const texts = Object.fromEntries(Object.entries({ ...others, [field]: text }).filter(([, t]) => t !== undefined));
  return { ...entry, at: Math.max(0, entry.fields.indexOf(field)), texts };
}

/**
 * @param pulled what the hand had moved it by, for the direction and for the parts that are not typed
 * @returns the amount typed, or what cannot be read in it; null where nothing is typed
 */
export function readEntry(
  entry: Entry,
  grip: Grip,
  pulled: Amount,
  lock: Axis | null,
): Amount | { problem: string } | null {
  const typed = Object.entries(entry.texts).filter(([, text]) => text.trim() !== '') as [Field, string][];
  if (typed.length === 0) return null;
  let by: Vec3 = byOf(pulled);
  for (const [field, text] of typed) {
    if (field === 'angle') return readAngle(text);
    const answer = parseLength(text, grip.display);
    if (!answer.ok) return { problem: answer.problem };
    by = field === 'distance' ? scale(wayFor(grip, by, lock), answer.mm) : withPart(by, field, answer.mm);
  }
  return { kind: 'move', by };
}

function wayFor(grip: Grip, by: Vec3, lock: Axis | null): Vec3 {
  if (lock) return AXIS_WAYS[lock];
  if (grip.motion.kind === 'line') return grip.motion.way;
  return norm(by) > 0 ? unit(by) : grip.along;
}

const withPart = (by: Vec3, field: Axis, mm: number): Vec3 =>
  by.map((x, i) => (i === 'xyz'.indexOf(field) ? mm : x)) as unknown as Vec3;

/** Degrees; sums as in lengths. */
function readAngle(text: string): Amount | { problem: string } {
  const bare = text.replace(/°|deg(rees)?/gi, '');
  if (/[a-z"']/i.test(bare)) return { problem: `"${text}" is not an angle: type degrees, such as 22.5.` };
  const answer = parseLength(bare, 'mm');
  if (!answer.ok)
    return { problem: answer.problem.replace('Type a length, such as 42.4 or 1 5/8 in.', 'Type degrees.') };
  if (Math.abs(answer.mm) > 360) return { problem: 'That is more than a whole turn.' };
  return { kind: 'turn', angle: answer.mm * RADIANS };
}

/** A move kept to one axis. */
export const lockedTo = (by: Vec3, lock: Axis): Vec3 => {
  const aside = reject(by, AXIS_WAYS[lock]);
  return [by[0] - aside[0], by[1] - aside[1], by[2] - aside[2]];
};
