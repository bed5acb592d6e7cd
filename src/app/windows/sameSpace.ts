/**
 * Whether what two designs ask and stand in is the same, so that lengths found for one hold for the other: a runner's own way
 * does not count, unless it is locked. Parts that did not change keep their identity from one design to the next.
 */
import type { Design, Runner } from '../../../shared/design/types';

export function sameSpace(a: Design, b: Design): boolean {
  return (
    a === b ||
    (a.ports === b.ports &&
      a.merges === b.merges &&
      a.tubes === b.tubes &&
      a.tooling === b.tooling &&
      a.groups === b.groups &&
      a.surroundings === b.surroundings &&
      a.runners.length === b.runners.length &&
      a.runners.every((r, i) => sameTask(r, b.runners[i]!)))
  );
}

function sameTask(a: Runner, b: Runner): boolean {
  if (a === b) return true;
  if (a.locked || b.locked) return false;
  return a.id === b.id && a.tube === b.tube && a.group === b.group && sameEnds(a, b);
}

const sameEnds = (a: Runner, b: Runner): boolean =>
  JSON.stringify([a.from, a.to.merge, a.to.inlet]) === JSON.stringify([b.from, b.to.merge, b.to.inlet]);
