/** A short name for plain data: the same whatever the order of its keys. To tell two apart by chance or mistake, not by malice. */
import type { EngineSetup } from '../engine/types';

/** JSON with keys in order; fields that are undefined are left out. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const fields = Object.entries(value)
    .filter(([, field]) => field !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map(([key, field]) => `${JSON.stringify(key)}:${canonical(field)}`);
  return `{${fields.join(',')}}`;
}

/** Source of the constants: Fowler, Noll, Vo, FNV-1a, 64 bits (IETF draft-eastlake-fnv); from memory, tested on "" and "a". */
const OFFSET = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;

/** Sixteen hexadecimal digits over the canonical text in UTF-8. */
export const hashOf = (value: unknown): string => hashText(canonical(value));

/** Without the speeds that the engine is used at: each answer is of a speed of its own, and knows nothing of the others. */
export const engineHash = ({ speeds: _, ...engine }: EngineSetup): string => hashOf(engine);

export function hashText(text: string): string {
  let hash = OFFSET;
  for (const byte of new TextEncoder().encode(text)) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * PRIME);
  return hash.toString(16).padStart(16, '0');
}
