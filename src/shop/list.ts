/** Things named one after the other in a sentence: `1`, `1 and 2`, `1, 2 and 3`. */
export const list = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
