/** Who moves while a hand holds something: its own runners first, then those whose group or clearance needs it. */
import type { Header } from '../header/resolve';
import type { Limit } from './balance';
import type { Held } from './held';
import type { Scope } from './layoutProblem';

/** Runners and merges, by id. */
export type Reach = { readonly runners: ReadonlySet<string>; readonly merges: ReadonlySet<string> };

const touching = (header: Header, held: Held) =>
  header.runners.filter(({ runner }) => {
    if (held.kind === 'points') return runner.id === held.runner;
    if (held.kind === 'merge')
      return runner.to.merge === held.id || ('merge' in runner.from && runner.from.merge === held.id);
    return held.kind === 'port' && 'port' in runner.from && runner.from.port === held.id;
  });

/** What must move with the held thing. */
export function ownScope(header: Header, held: Held): Scope {
  return {
    runners: new Set(touching(header, held).map((r) => r.runner.id)),
    merges: new Set(held.kind === 'merge' ? [held.id] : []),
    held,
  };
}

/** Why the held thing cannot move at all, or null: a runner that must follow is locked, or has no bend to follow with. */
export function stuckBy(header: Header, held: Held): Limit | null {
  const fast = touching(header, held).find(
    ({ runner, centerline }) => runner.locked || (centerline && centerline.radii.length === 0),
  );
  return fast ? { rule: 'locked', where: `runners/${fast.runner.id}`, other: '' } : null;
}

/**
 * Who could give way to rules that press: the other thing of a clearance, and, where a length that only has to be equal
 * presses, the whole group.
 */
export function pressedUpon(limits: readonly Limit[], header: Header): Reach {
  const runners = new Set<string>();
  const merges = new Set<string>();
  for (const path of limits.flatMap(({ where, other }) => [where, other])) {
    const [kind, id = ''] = path.split('/');
    if (kind === 'runners') runners.add(id);
    if (kind === 'merges' && header.merges.get(id)?.merge.placement) merges.add(id);
    if (kind === 'groups' && header.groups.get(id)?.length === null)
      for (const { runner } of header.runners) if (runner.group === id) runners.add(runner.id);
  }
  return { runners, merges };
}

/** The scope with more that may move, and with what hangs on it; null where that is nothing new. */
export function widened(scope: Scope, more: Reach, header: Header): Scope | null {
  const runners = new Set(scope.runners);
  const merges = new Set(scope.merges);
  for (const id of more.merges) merges.add(id);
  const hangs = (id: string) => header.runners.filter((r) => touchesMerge(r.runner, id)).map((r) => r.runner);
  for (const id of merges) {
    if (scope.merges.has(id)) continue;
    if (hangs(id).some((r) => r.locked)) merges.delete(id);
    else for (const r of hangs(id)) runners.add(r.id);
  }
  for (const { runner } of header.runners) if (more.runners.has(runner.id) && !runner.locked) runners.add(runner.id);
  const grown = runners.size > scope.runners.size || merges.size > scope.merges.size;
  return grown ? { ...scope, runners, merges } : null;
}

const touchesMerge = (runner: Header['runners'][number]['runner'], id: string): boolean =>
  runner.to.merge === id || ('merge' in runner.from && runner.from.merge === id);
