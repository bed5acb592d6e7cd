/** From an edit to a step of history, or to the words that a field shows: the last stretch of every inspector's edit. */
import type { Edited } from '../../../shared/design/edit';
import type { Refusal } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { edit } from '../actions/edit';
import { documents } from '../document';

/**
 * Makes an edit of what is settled now.
 * @param own the path of the field: a refusal about another place names it
 * @param words how a refusal is said; by its path unless told otherwise
 * @returns why not, or null where it was done
 */
export function applyEdit(
  make: (design: Design) => Edited,
  label: string,
  own?: string,
  words: (refusal: Refusal, own?: string) => string = refusalWords,
): string | null {
  const { settled } = documents.store.getState();
  if (!settled) return 'Open a design first.';
  const edited = make(settled);
  if (!edited.ok) return words(edited.refusal, own);
  if (edited.design !== settled) edit(edited.design, label);
  return null;
}

/** One sentence: where, what was found, what is allowed. */
export function refusalWords({ path, found, allowed }: Refusal, own?: string): string {
  return path === own ? `Not ${found}: allowed is ${allowed}.` : `${path}: found ${found}; allowed: ${allowed}.`;
}
