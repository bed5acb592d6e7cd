/** Why a design is not kept in this browser, as something to say in place. */
import { DesignError } from '../../../shared/design/parse';

export type Trouble = {
  readonly kind: 'full' | 'denied' | 'unsound' | 'failed';
  /** One short line: what is wrong. */
  readonly title: string;
  /** What to do about it. */
  readonly remedy: string;
};

const TO_FILE = 'Everything is still here; save to a file so that it outlasts this page.';

/** The browser would not open its storage at all. */
export const denied = (error: unknown): Trouble => ({
  kind: 'denied',
  title: 'not kept: this browser stores nothing here',
  remedy: `A private window or a setting forbids it (${said(error)}). ${TO_FILE}`,
});

/** @param mesh the file whose triangles were not kept, where the design itself was */
export function troubleOf(error: unknown, mesh?: string): Trouble {
  if (nameOf(error) === 'QuotaExceededError' && mesh !== undefined)
    return {
      kind: 'full',
      title: `${mesh} is not kept: storage is full`,
      remedy: `The design itself is kept. Make room by deleting designs under Designs or on the disk, or open ${mesh} again with the design next time.`,
    };
  if (nameOf(error) === 'QuotaExceededError')
    return {
      kind: 'full',
      title: 'not kept: storage is full',
      remedy: `Make room by deleting designs under Designs, or free space on the disk. ${TO_FILE}`,
    };
  if (error instanceof DesignError) {
    const [first] = error.problems;
    return {
      kind: 'unsound',
      title: 'not kept: the design breaks a rule of the document',
      remedy: first
        ? `${first.path}: found ${first.found}; allowed: ${first.allowed}. The last sound state is kept.`
        : 'The last sound state is kept.',
    };
  }
  return {
    kind: 'failed',
    title: 'not kept: the browser could not write',
    remedy: `It says: ${said(error)}. It is tried again with the next change. ${TO_FILE}`,
  };
}

const nameOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'name' in error ? String(error.name) : '';

const said = (error: unknown): string => (error instanceof Error && error.message) || nameOf(error) || String(error);
