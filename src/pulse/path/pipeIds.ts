/**
 * Names of pipes: a runner's or a merge's own wherever that can be, since what is answered about a pipe is shown at its part. Unique
 * ignoring case, as ids of designs are, and fit for a rig: no space at either end.
 */
import { sameId } from '../../../shared/design/ids';
import { MAX_ID } from '../rig/limits';

/** Answers the name wanted, or that with the least number behind it that nobody has. */
export function pipeIds(): (wanted: string) => string {
  const taken = new Set<string>();
  return (wanted) => {
    const plain = wanted.trim();
    let id = plain;
    for (let k = 2; taken.has(sameId(id)); k++) {
      const behind = ` ${k}`;
      id = `${plain.slice(0, MAX_ID - behind.length)}${behind}`;
    }
    taken.add(sameId(id));
    return id;
  };
}
