/** Files that a shop folder is to hold and that cannot be made yet: named in every manifest, so that no one waits for them. */
import type { NotMade } from './part';

const WHY = 'This version cannot make it yet.';

export function notYetMade(): NotMade[] {
  const files = ['header.step', 'header.3mf', 'header.glb'].map((name) => ({
    name,
    why: WHY,
  }));
  return files;
}
