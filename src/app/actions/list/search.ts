/** Finding an action by words: each word typed must begin a word of its name, its other words or its group. */
import type { Action } from './action';

const wordsOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** How well one word fits, the least the best; null: not at all. */
function costOf(word: string, action: Action): number | null {
  const name = wordsOf(action.name);
  if (name[0]?.startsWith(word)) return 0;
  if (name.some((w) => w.startsWith(word))) return 1;
  if (wordsOf(action.also ?? '').some((w) => w.startsWith(word))) return 2;
  return wordsOf(action.group).some((w) => w.startsWith(word)) ? 3 : null;
}

/** All of them, in their own order, while nothing is typed; else those that fit, the best first. */
export function searchActions(actions: readonly Action[], typed: string): Action[] {
  const words = wordsOf(typed);
  if (words.length === 0) return [...actions];
  const found = actions.flatMap((action, i) => {
    const fits = words.map((word) => costOf(word, action));
    if (fits.includes(null)) return [];
    return [{ action, i, cost: (fits as number[]).reduce((a, b) => a + b, 0) }];
  });
  return found.sort((a, b) => a.cost - b.cost || a.i - b.i).map((f) => f.action);
}

/** Under their headings, in the order in which the headings first appear. */
export function byGroup(actions: readonly Action[]): { group: string; actions: Action[] }[] {
  const groups = new Map<string, Action[]>();
  for (const action of actions) groups.set(action.group, [...(groups.get(action.group) ?? []), action]);
  return [...groups].map(([group, list]) => ({ group, actions: list }));
}
