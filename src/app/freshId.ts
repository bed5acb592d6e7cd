/** Names for designs and versions in this browser. They never reach a document or a file. */

const WORDS = 3;

/** Ninety-six random bits as lower-case letters and digits: two tabs never make the same. */
export function freshId(): string {
  const bits = crypto.getRandomValues(new Uint32Array(WORDS));
  return Array.from(bits, (word) => word.toString(36).padStart(7, '0')).join('');
}
