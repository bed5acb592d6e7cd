/** Names of mirrored parts: a cylinder's number in an id becomes that of the cylinder opposite; else "mirrored" follows. */
import { sameId } from '../../shared/design/ids';
import { MAX_ID } from '../../shared/design/limits';
import { describe, type Refusal } from '../../shared/design/refusal';

const SUFFIX = ' mirrored';

/** `s1-5` with 1 → 2 and 5 → 6 is `s2-6`; `flange` is `flange mirrored`. */
export function mirroredName(id: string, opposite: ReadonlyMap<number, number>): string {
  const renumbered = id.replace(/\d+/g, (digits) => String(opposite.get(Number(digits)) ?? digits));
  return renumbered === id ? id.slice(0, MAX_ID - SUFFIX.length) + SUFFIX : renumbered;
}

/** The name itself where it is free; else the old one with "mirrored" after it, numbered from 2 where it must be. */
export function freeName(name: string, id: string, used: ReadonlySet<string>): string {
  if (!used.has(sameId(name))) return name;
  for (let n = 1; ; n++) {
    const suffix = n === 1 ? SUFFIX : `${SUFFIX} ${n}`;
    const other = id.slice(0, MAX_ID - suffix.length) + suffix;
    if (!used.has(sameId(other))) return other;
  }
}

/** A new id that something of its kind has already: where, and how to choose another. */
export function takenNames(
  list: string,
  there: readonly { readonly id: string }[],
  renamed: ReadonlyMap<string, string>,
): Refusal[] {
  const taken = new Set(there.map(({ id }) => sameId(id)));
  return [...renamed].flatMap(([from, to]): Refusal[] => {
    if (!taken.has(sameId(to))) {
      taken.add(sameId(to));
      return [];
    }
    const found = `${describe(to)} for its mirror image, which is there already`;
    return [
      { path: `${list}/${from}`, found, allowed: `a new name: say which for ${describe(from)}, or remove the other` },
    ];
  });
}
