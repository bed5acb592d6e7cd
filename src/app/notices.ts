/** What the app has to tell at the moment: one notice, replaced by the next. Said aloud by screen readers. */
import { create } from 'zustand';
import { DesignError } from '../../shared/design/parse';
import { documents } from './document';

export type Notice = {
  readonly tone: 'plain' | 'fail';
  readonly title: string;
  readonly lines: readonly string[];
};

export const useNotice = create<{ readonly notice: Notice | null }>()(() => ({ notice: null }));

export const tell = (title: string, ...lines: string[]): void =>
  useNotice.setState({ notice: { tone: 'plain', title, lines } });

export const tellFailure = (title: string, ...lines: string[]): void =>
  useNotice.setState({ notice: { tone: 'fail', title, lines } });

/** Does it, or tells that it did not work and why. @param what such as "Renaming" */
export async function attempt(what: string, work: () => unknown): Promise<void> {
  try {
    await work();
  } catch (error) {
    tellFailure(`${what} did not work`, ...linesOf(error));
  }
}

export const dismiss = (): void => useNotice.setState({ notice: null });

/** What went well with one design is no news beside another; what failed stays until it is dismissed. */
documents.store.subscribe((now, before) => {
  if (now.id !== before.id && useNotice.getState().notice?.tone === 'plain') dismiss();
});

const MOST_SHOWN = 6;

/** An error as lines to read: for a refused design, each place with what was found and what is allowed. */
export function linesOf(error: unknown): string[] {
  if (!(error instanceof DesignError)) return [error instanceof Error ? error.message : String(error)];
  const lines = error.problems.slice(0, MOST_SHOWN).map((p) => `${p.path}: found ${p.found}; allowed: ${p.allowed}`);
  const rest = error.problems.length - lines.length;
  return rest > 0 ? [...lines, `and ${rest} more`] : lines;
}
