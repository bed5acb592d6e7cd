/** What someone may have meant by a name that is not known. */

/** `; did you mean "friction"?`, or nothing where no name is near. */
export function didYouMean(found: unknown, names: Iterable<string>): string {
  if (typeof found !== 'string' || found.length > 64) return '';
  const asked = plain(found);
  let best = '';
  let least = Infinity;
  for (const name of names) {
    const known = plain(name);
    const begins = asked.length >= 3 && (known.startsWith(asked) || asked.startsWith(known));
    const distance = begins ? 1 : edits(asked, known);
    if (distance < least && distance < asked.length && distance <= Math.max(1, Math.floor(known.length / 3))) {
      least = distance;
      best = name;
    }
  }
  return best === '' ? '' : `; did you mean "${best}"?`;
}

/** Capitals, hyphens and the like do not make another name. */
const plain = (name: string): string => name.toLowerCase().replace(/[\s_-]/g, '');

/** Letters put in, left out, exchanged, or swapped with their neighbour, on the way from one word to the other. */
function edits(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, k) => k);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let k = 1; k <= b.length; k++) {
      const exchanged = row[k - 1]! + (a[i - 1] === b[k - 1] ? 0 : 1);
      next.push(Math.min(exchanged, row[k]! + 1, next[k - 1]! + 1));
      if (i > 1 && k > 1 && a[i - 1] === b[k - 2] && a[i - 2] === b[k - 1]) {
        next[k] = Math.min(next[k]!, before[k - 2]! + 1);
      }
    }
    before = row;
    row = next;
  }
  return row[b.length]!;
}
