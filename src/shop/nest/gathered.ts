/** Things alike in one list each, both in the order they came. */
export function gathered<T>(things: readonly T[], key: (thing: T) => string): T[][] {
  const lists = new Map<string, T[]>();
  for (const thing of things) {
    const of = key(thing);
    const list = lists.get(of);
    if (list) list.push(thing);
    else lists.set(of, [thing]);
  }
  return [...lists.values()];
}
