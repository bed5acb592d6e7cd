/**
 * Where in a rig document something is: `pipes/a/diameter/1`, `ends/2/at`. Pipes by id where that can be trusted, everything else by
 * its index from 0, as JSON counts.
 */
import { valueAt } from '../../../shared/design/ids';
import { describe } from '../../../shared/design/refusal';
import { MAX_ID } from './limits';

export const ID_RULE = `1 to ${MAX_ID} characters without quotes, commas, slashes, "@" and line breaks, no space at either end`;

/** Ids stand in the header of a table, before an `@`, and in paths. */
export const isGoodPipeId = (id: unknown): id is string =>
  typeof id === 'string' &&
  id.length >= 1 &&
  id.length <= MAX_ID &&
  id.trim() === id &&
  id !== '__proto__' &&
  !/[",/\\@\p{Cc}\p{Zl}\p{Zp}\p{Cs}]/u.test(id);

export function rigPath(document: unknown, segments: readonly PropertyKey[]): string {
  if (segments.length === 0) return 'document';
  const named = segments.map(plain);
  const [list, index] = segments;
  if (list === 'pipes' && typeof index === 'number') named[1] = pipeName(document, index);
  return named.join('/');
}

/** Its id, unless that is bad or an earlier pipe has it too: then its index. */
function pipeName(document: unknown, index: number): string {
  const pipes = valueAt(document, ['pipes']);
  if (!Array.isArray(pipes)) return String(index);
  const idOf = (pipe: unknown): unknown => valueAt(pipe, ['id']);
  const id = idOf(pipes[index]);
  return isGoodPipeId(id) && pipes.findIndex((pipe) => idOf(pipe) === id) === index ? id : String(index);
}

const plain = (segment: PropertyKey): string => {
  const text = String(segment);
  return /^[\w .-]{1,64}$/.test(text) ? text : describe(text);
};
