/**
 * A design as text: two spaces, one line for a list of plain values, keys in the order they have, a newline at the end.
 * The same design gives the same bytes, and every number reads back as exactly itself.
 */
import type { Design } from './types';

/** Lists longer than this on one line are broken up. */
const LINE = 100;

export function writeDesign(design: Design): string {
  return `${write(design, '')}\n`;
}

function write(value: unknown, indent: string): string {
  if (Array.isArray(value)) return writeList(value, indent);
  if (value !== null && typeof value === 'object') return writeObject(value as Record<string, unknown>, indent);
  return writePlain(value);
}

function writePlain(value: unknown): string {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new RangeError(`A design cannot hold the number ${value}`);
  }
  // JSON.stringify loses the sign of −0.
  return Object.is(value, -0) ? '-0' : JSON.stringify(value);
}

function writeList(list: readonly unknown[], indent: string): string {
  if (list.every((entry) => entry === null || typeof entry !== 'object')) {
    const line = `[${list.map(writePlain).join(', ')}]`;
    if (line.length <= LINE) return line;
  }
  const inner = `${indent}  `;
  return `[\n${list.map((entry) => inner + write(entry, inner)).join(',\n')}\n${indent}]`;
}

function writeObject(object: Readonly<Record<string, unknown>>, indent: string): string {
  const inner = `${indent}  `;
  const fields = Object.entries(object)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${inner}${JSON.stringify(key)}: ${write(value, inner)}`);
  return fields.length === 0 ? '{}' : `{\n${fields.join(',\n')}\n${indent}}`;
}
