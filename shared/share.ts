/**
 * Structural sharing: a value equal to `next` that is made of the parts of `previous` wherever they are equal. What
 * crossed a thread or was rebuilt then keeps its identity, so that whoever remembers by identity has nothing to redo.
 * Plain data only.
 */
export function share<T>(previous: unknown, next: T): T {
  if (Object.is(previous, next)) return next;
  if (typeof previous !== 'object' || typeof next !== 'object' || previous === null || next === null) return next;
  if (Array.isArray(next)) return shareArray(previous, next) as T;
  if (Array.isArray(previous)) return next;
  const [old, own] = [previous as Record<string, unknown>, next as Record<string, unknown>];
  const keys = Object.keys(own);
  const before = Object.keys(old);
  const made: Record<string, unknown> = {};
  let same = before.length === keys.length;
  for (const [i, key] of keys.entries()) {
    made[key] = share(old[key], own[key]);
    same = same && before[i] === key && made[key] === old[key];
  }
  return (same ? old : made) as T;
}

function shareArray(previous: object, next: readonly unknown[]): readonly unknown[] {
  if (!Array.isArray(previous)) return next;
  const made = next.map((value, i) => share(previous[i], value));
  return made.length === previous.length && made.every((value, i) => value === previous[i]) ? previous : made;
}
