/** What designs are called on the shelf, and what copies of them are called. */
import type { Design } from '../../../shared/design/types';
import type { KeptDesign } from '../storage/keptDesign';

const ENDING = /(\.evenrun)?\.json$/i;

export const stemOf = (fileName: string): string => fileName.replace(ENDING, '') || 'design';

/** Of a kept text, without reading all of it as a design. */
export function titleOf({ text, fileName }: Pick<KeptDesign, 'text' | 'fileName'>): string {
  try {
    const { title } = JSON.parse(text) as Design;
    if (typeof title === 'string' && title.trim()) return title;
  } catch {
    // Its file's name will do.
  }
  return stemOf(fileName);
}

/** "Four", "Four, copy", "Four, copy 2" …: the first that is not taken. */
export function copyName(name: string, taken: ReadonlySet<string>): string {
  const base = name.replace(/, copy( \d+)?$/, '');
  for (let n = 1; ; n++) {
    const tried = n === 1 ? `${base}, copy` : `${base}, copy ${n}`;
    if (!taken.has(tried)) return tried;
  }
}
