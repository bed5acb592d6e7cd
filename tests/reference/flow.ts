/** Published and recomputed values of gas flow by their id in `flow.json`, where each stands with its source and how sure it is. */
import { readFileSync } from 'node:fs';

export type FlowEntry = {
  readonly id: string;
  readonly topic: string;
  readonly quantity: string;
  readonly value: unknown;
  readonly unit: string;
  readonly tolerance: string;
  readonly source: string;
  readonly confidence: string;
  readonly note?: string;
};

const { entries } = JSON.parse(readFileSync(new URL('flow.json', import.meta.url), 'utf8')) as {
  entries: readonly FlowEntry[];
};

/** @throws where the id is not in the file: a missing reference is a failure */
export function flowEntry(id: string): FlowEntry {
  const entry = entries.find((one) => one.id === id);
  if (!entry) throw new Error(`no reference value ${id}`);
  return entry;
}

export const flowValue = <T>(id: string): T => flowEntry(id).value as T;

/** For the names of tests: what it is held against, and how sure that is. */
export const sourceOf = (id: string): string => `${flowEntry(id).source} [${flowEntry(id).confidence}]`;

export const flowIds = (start: string): string[] => entries.map(({ id }) => id).filter((id) => id.startsWith(start));
