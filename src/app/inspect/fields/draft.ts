/**
 * The text in a field while it is being edited. A field shows its value until something is typed; what was typed stays
 * until it is accepted or given up, so that a refusal loses nothing. No React.
 */

export type Draft = {
  /** What was typed; null: the field shows its value. */
  readonly text: string | null;
  /** Why the text was not accepted. */
  readonly problem: string | null;
};

export const UNTOUCHED: Draft = { text: null, problem: null };

/** Typing on takes a refusal back only once the text is settled again, so the words stay to be read. */
export const typed = (draft: Draft, text: string): Draft => ({ ...draft, text });

/**
 * Enter or leaving the field.
 * @param shown the value as the field shows it: text left at it changes nothing, not even digits that are not shown
 * @param accept takes the text; answers why not, or null
 */
export function settled(draft: Draft, shown: string, accept: (text: string) => string | null): Draft {
  if (draft.text === null || draft.text.trim() === shown.trim()) return UNTOUCHED;
  const problem = accept(draft.text);
  return problem === null ? UNTOUCHED : { text: draft.text, problem };
}
