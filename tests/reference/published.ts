/** Values by their key in `fabrication.json`, where each stands with its source and how sure it is. */
import { readFileSync } from 'node:fs';

type Entry = {
  readonly value: unknown;
  readonly tolerance: number | string;
  readonly source: string;
  readonly confidence: 'read-in-source' | 'recomputed' | 'from-memory';
  readonly quantity: string;
};
const file = JSON.parse(readFileSync(new URL('fabrication.json', import.meta.url), 'utf8')) as {
  sources: Record<string, string>;
  values: Record<string, Entry>;
};

/** @throws where the key, or a source that it names, is not in the file: a missing reference is a failure */
export function published<T>(key: string): T {
  const entry = file.values[key];
  if (!entry) throw new Error(`no published value ${key}`);
  for (const source of entry.source.split(';'))
    if (!file.sources[source]) throw new Error(`${key} names a source that is not listed: ${source}`);
  return entry.value as T;
}

export const keysLike = (start: string): string[] => Object.keys(file.values).filter((key) => key.startsWith(start));
export const quantityOf = (key: string): string => file.values[key]!.quantity;
