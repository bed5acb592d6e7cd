/**
 * Ids become file names and lines of a table, so they are plain: ASCII letters, digits, `-`, `_` and spaces, at most 64
 * characters, unique ignoring case. Paths name things by id, and by index where the id cannot be trusted.
 */
import { MAX_ID } from './limits';
import { describe } from './refusal';

export const ID_RULE = `1 to ${MAX_ID} letters (a-z), digits, "-", "_" and spaces, not only spaces`;

/** `__proto__` is made of allowed characters but is no name that a JavaScript record can hold safely. */
export const isGoodId = (id: unknown): id is string =>
  typeof id === 'string' &&
  id.length <= MAX_ID &&
  /^[A-Za-z0-9_ -]+$/.test(id) &&
  id.trim() !== '' &&
  id !== '__proto__';

export const sameId = (id: string): string => id.toLowerCase();

/** The document's lists of things with an id. */
export const LISTS = ['ports', 'flanges', 'merges', 'runners', 'surroundings', 'service', 'sensors'] as const;

type Segments = readonly PropertyKey[];

/** `['runners', 0, 'points', 2]` → `runners/r1/points/2`. */
export function pathOf(document: unknown, segments: Segments): string {
  if (segments.length === 0) return 'document';
  const named = segments.map(plain);
  // A list of the document's own, or one of the workshop's.
  const place = segments[0] === 'workshop' ? 2 : 1;
  const index = segments[place];
  if (typeof index === 'number' && isListOfThings(segments[0], segments[1])) {
    const id = trustedId(valueAt(document, segments.slice(0, place)), index);
    if (id !== null) named[place] = id;
  }
  return named.join('/');
}

const isListOfThings = (list: PropertyKey | undefined, within: PropertyKey | undefined): boolean =>
  LISTS.some((name) => name === list) || (list === 'workshop' && (within === 'bars' || within === 'bends'));

/** The id of entry `index`, unless it is bad or an earlier entry has it too. */
function trustedId(list: unknown, index: number): string | null {
  if (!Array.isArray(list)) return null;
  const idOf = (entry: unknown): unknown => (entry as { id?: unknown } | null | undefined)?.id;
  const id = idOf(list[index]);
  if (!isGoodId(id)) return null;
  const first = list.findIndex((entry) => {
    const other = idOf(entry);
    return typeof other === 'string' && sameId(other) === sameId(id);
  });
  return first === index ? id : null;
}

/** Keys come from the file: one that could break the line is shown quoted. */
const plain = (segment: PropertyKey): string => {
  const text = String(segment);
  return /^[\w .-]{1,64}$/.test(text) ? text : describe(text);
};

/** What lies at a path of keys, `undefined` where the way ends early. */
export function valueAt(document: unknown, segments: Segments): unknown {
  let value = document;
  for (const segment of segments) {
    if (value === null || typeof value !== 'object' || !Object.hasOwn(value, segment)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[segment];
  }
  return value;
}
