/**
 * The version gate: old documents are brought up to date one version at a time, unknown and newer ones refused.
 * There is one version so far; when a second comes, its step goes into STEPS and an old file stays in tests/documents.
 */
import { DesignError, describe } from './refusal';

const FORMAT = 'evenrun-design';
export const VERSION = 1;

/** `STEPS[n]` turns a document of version n into one of version n + 1. */
const STEPS: Readonly<Record<number, (document: Record<string, unknown>) => Record<string, unknown>>> = {};

/** The document at the current version; the same object where nothing had to change. @throws DesignError */
export function migrate(value: unknown): Record<string, unknown> {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) {
    throw new DesignError([{ path: 'document', found: describe(value), allowed: 'an object' }]);
  }
  let document = value as Record<string, unknown>;
  if (document.format !== FORMAT) {
    throw new DesignError([{ path: 'format', found: describe(document.format), allowed: describe(FORMAT) }]);
  }
  for (;;) {
    const version = document.version;
    if (version === VERSION) return document;
    const step = typeof version === 'number' && Object.hasOwn(STEPS, version) ? STEPS[version] : undefined;
    if (!step) {
      const newer =
        typeof version === 'number' && version > VERSION
          ? '; this file is from a newer Evenrun: update to open it'
          : '';
      throw new DesignError([{ path: 'version', found: describe(version), allowed: `${VERSION}${newer}` }]);
    }
    document = step(document);
  }
}
