/** Answers about the room round the header, in words. */
import type { AccessEntry, BareReason, Reach, ToolTry, WrapPlan } from '../../../geometry';

export const REACH_WORDS: Readonly<Record<Reach, string>> = {
  reachable: 'reachable',
  'one-tool': 'with one tool only',
  'before-wrapping': 'before wrapping only',
  blocked: 'blocked',
};

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
      return [tool, by.length > 0 ? `wrapped, by ${listed(by)}` : ''].filter((s) => s !== '').join('; ');
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

const BARE_WORDS: Readonly<Record<BareReason, (of: string) => string>> = {
  fastener: (of) => `for ${of}`,
  service: (of) => `for ${of}`,
  bundle: (of) => `where it runs together with ${of}`,
  sensor: (of) => `for ${of}`,
  narrow: (of) => `too narrow for the roll beside ${of}`,
  'as-drawn': () => 'as drawn',
};

/** Why a runner is left bare, each reason once with all that it is for. */
export function bareWords(bare: WrapPlan['bare']): readonly string[] {
  const by = new Map<BareReason, Set<string>>();
  for (const { why, of } of bare) by.set(why, (by.get(why) ?? new Set()).add(of));
  return [...by].map(([why, of]) => BARE_WORDS[why](listed([...of], 4)));
}

/** `r1`, `r1 and r3`, `r1, r3 and 2 more`. */
export function listed(names: readonly string[], most = 2): string {
  if (names.length <= 1) return names[0] ?? '';
  const shown = names.slice(0, most);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(', ')} and ${more} more`;
  return `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

/** Some of many: `3 of 14 not reachable`. */
export const countWords = (some: number, all: number, what: string): string =>
  some === 0 ? `all ${all} ${what}` : `${some} of ${all} not ${what}`;
