/**
 * What differs between two documents, thing by thing: lists whose entries have ids are matched by id, whatever their
 * order; everything else by field. Vectors and other lists of plain values count as one value.
 */
import type { Design } from '../../shared/design/types';

export type Change = {
  /** Such as `runners/r1/points/2` or `merges/collector/position`. */
  readonly path: string;
  readonly kind: 'added' | 'removed' | 'changed';
  /** As in the documents; absent where it was added or removed. */
  readonly before?: unknown;
  readonly after?: unknown;
};

export const changesBetween = (before: Design, after: Design): Change[] => differing([], before, after);

function differing(path: readonly string[], before: unknown, after: unknown): Change[] {
  if (same(before, after)) return [];
  const here = path.join('/') || 'document';
  // A list that was not there had no entries: those that came are told by their ids.
  if (isNone(before) && isNamedList(after)) return after.map((entry) => came(path, entry.id, 'added', 'after', entry));
  if (isNone(after) && isNamedList(before))
    return before.map((entry) => came(path, entry.id, 'removed', 'before', entry));
  if (before === undefined) return [{ path: here, kind: 'added', after }];
  if (after === undefined) return [{ path: here, kind: 'removed', before }];
  const [a, b] = [entriesOf(before), entriesOf(after)];
  if (!a || !b) return [{ path: here, kind: 'changed', before, after }];
  const keys = [...a.keys(), ...[...b.keys()].filter((key) => !a.has(key))];
  const inside = keys.flatMap((key) => differing([...path, key], a.get(key), b.get(key)));
  // The same entries in another order.
  return inside.length > 0 ? inside : [{ path: here, kind: 'changed', before: [...a.keys()], after: [...b.keys()] }];
}

const isNone = (value: unknown): boolean => value === undefined || (Array.isArray(value) && value.length === 0);

const isNamedList = (value: unknown): value is readonly { readonly id: string }[] =>
  Array.isArray(value) && value.length > 0 && value.every((entry) => typeof entry?.id === 'string');

const came = (
  path: readonly string[],
  id: string,
  kind: 'added' | 'removed',
  side: 'before' | 'after',
  entry: unknown,
): Change => ({ path: [...path, id].join('/'), kind, [side]: entry });

/** What a value holds by name: ids, indices or fields; null for one that is taken whole. */
function entriesOf(value: unknown): ReadonlyMap<string, unknown> | null {
  if (value === null || typeof value !== 'object') return null;
  if (!Array.isArray(value)) return new Map(Object.entries(value));
  if (value.every((entry) => entry === null || typeof entry !== 'object')) return null;
  const ids = value.map((entry, i) => (entry as { id?: unknown }).id ?? String(i));
  return new Map(value.map((entry, i) => [String(ids[i]), entry]));
}

/** Deep, the order of fields aside, as the order of a document's fields means nothing. */
function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every(
    (key) => Object.hasOwn(b, key) && same((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}
