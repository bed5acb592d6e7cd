/** Answers about the room round the header, in words. */
import type { AccessEntry, Reach, ToolTry } from '../../../geometry';

/** What wants seeing to comes first. */
const URGENCY: readonly Reach[] = ['blocked', 'before-wrapping', 'one-tool', 'reachable'];

export const byUrgency = (entries: readonly AccessEntry[]): readonly AccessEntry[] =>
  [...entries].sort((a, b) => URGENCY.indexOf(a.reach) - URGENCY.indexOf(b.reach));

/** The second line of a row: by what it is reached, or what stops that. */
export function reachDetail({ reach, best, by }: AccessEntry): string {
  const tool = best?.name ?? '';
  switch (reach) {
    case 'blocked':
      return by.length > 0 ? `by ${listed(by)}` : tool;
    case 'before-wrapping':
      return [tool, by.length > 0 ? `wrapped, blocked by ${listed(by)}` : ''].filter((s) => s !== '').join('; ');
    default:
      return tool;
  }
}

/** How one tool fared, in a few words. */
export function tryWords({ bare, wrapped, by }: ToolTry, isWrapped: boolean): string {
  if (bare && (wrapped || !isWrapped)) return 'fits';
  const who = by.length > 0 ? `: ${listed(by)}` : '';
  return bare ? `bare only${who}` : `no room${who}`;
}

/** `r1`, `r1 and r3`, `r1, r3 and 2 more`. */
export function listed(names: readonly string[], most = 2): string {
  if (names.length <= 1) return names[0] ?? '';
  const shown = names.slice(0, most);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(', ')} and ${more} more`;
  return `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}
