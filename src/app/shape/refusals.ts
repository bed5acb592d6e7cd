/** Why something cannot be moved by hand, said with what would help. */
import type { Header } from '../../../geometry';
import type { Runner } from '../../../shared/design/types';

export const lockedRunner = (runner: Runner): string | null =>
  runner.locked ? `${runner.id} is locked. Unlock it to shape it.` : null;

/** A bender's limit of bends is kept to before one is drawn that could not stay. */
export const allBends = (runner: Runner, bends: number, most: number): string | null =>
  bends < most
    ? null
    : `${runner.id} has ${bends} ${bends === 1 ? 'bend' : 'bends'}, the most its tooling allows. Allow more there, or take one out first.`;

/** A locked runner keeps its ends where they are. */
export function lockedJoint(header: Header, joins: (runner: Runner) => boolean): string | null {
  const locked = header.design.runners.find((r) => r.locked && joins(r));
  return locked ? `${locked.id} is joined here and locked. Unlock it first.` : null;
}
