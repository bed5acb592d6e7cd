/**
 * What an edit of a design comes to: the new design, which the document's own rules accept, or one refusal with the place
 * and the remedy. The design given is never changed.
 */
import { validateDesign } from '../parse';
import { DesignError, type Refusal } from '../refusal';
import type { Design } from '../types';

export type Edited = { readonly ok: true; readonly design: Design } | { readonly ok: false; readonly refusal: Refusal };

/** Every edit ends here, so that none can leave a design that a file could not hold. */
export function checked(next: Design): Edited {
  try {
    return { ok: true, design: validateDesign(next) };
  } catch (error) {
    if (error instanceof DesignError) return { ok: false, refusal: error.problems[0]! };
    throw error;
  }
}

export const refused = (path: string, found: string, allowed: string): Edited => ({
  ok: false,
  refusal: { path, found, allowed },
});
