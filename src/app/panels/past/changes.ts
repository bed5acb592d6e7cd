/** What a step of history changed, in a few words such as "r1, r3 moved": told from the designs before and after it. */
import type { Design, Runner } from '../../../../shared/design/types';
import { same } from '../../sameDesign';

/** More ids than this are counted instead. */
const MOST_NAMED = 3;

type Named = { readonly id: string };

/** Phrases, the most telling first; none where the designs are the same. */
export function changesOf(before: Design, after: Design): string[] {
  return [
    ...runnerChanges(before.runners, after.runners),
    ...listChanges('collector', before.merges, after.merges),
    ...listChanges('port', before.ports, after.ports),
    ...listChanges('flange', before.flanges ?? [], after.flanges ?? []),
    ...listChanges('', before.surroundings ?? [], after.surroundings ?? []),
    ...listChanges('service point', before.service ?? [], after.service ?? []),
    ...listChanges('sensor', before.sensors ?? [], after.sensors ?? []),
    ...listChanges('group', entries(before.groups), entries(after.groups)),
    ...listChanges('tube', entries(before.tubes), entries(after.tubes)),
    ...listChanges('tooling', entries(before.tooling), entries(after.tooling)),
    ...Object.keys(FIELD_WORDS).flatMap((field) => fieldChange(field, before, after)),
  ];
}

function runnerChanges(before: readonly Runner[], after: readonly Runner[]): string[] {
  const old = new Map(before.map((r) => [r.id, r]));
  const pairs = after.flatMap((r) => (old.has(r.id) ? [{ was: old.get(r.id)!, is: r }] : []));
  const told = (differs: (was: Runner, is: Runner) => boolean, verb: string) => {
    const ids = pairs.filter(({ was, is }) => differs(was, is)).map(({ is }) => is.id);
    return phrase('', 'runner', ids, verb, after.length);
  };
  const rest = ({ points: _p, radii: _r, locked: _l, wrapped: _w, ...others }: Runner) => others;
  return [
    ...told((was, is) => !same(was.points, is.points) || !same(was.radii, is.radii), 'moved'),
    ...told((was, is) => !was.locked && is.locked === true, 'locked'),
    ...told((was, is) => was.locked === true && !is.locked, 'unlocked'),
    ...told((was, is) => !same(was.wrapped, is.wrapped), 'wrapped otherwise'),
    ...told((was, is) => !same(rest(was), rest(is)), 'changed'),
    ...comings('', 'runner', before, after),
  ];
}

function listChanges(noun: string, before: readonly Named[], after: readonly Named[]): string[] {
  const old = new Map(before.map((entry) => [entry.id, entry]));
  const ids = after.filter((entry) => old.has(entry.id) && !same(old.get(entry.id), entry)).map((entry) => entry.id);
  const counted = noun || 'surrounding';
  return [...phrase(noun, counted, ids, 'changed'), ...comings(noun, counted, before, after)];
}

function comings(noun: string, counted: string, before: readonly Named[], after: readonly Named[]): string[] {
  const without = (list: readonly Named[], others: readonly Named[]) => {
    const there = new Set(others.map((entry) => entry.id));
    return list.filter((entry) => !there.has(entry.id)).map((entry) => entry.id);
  };
  return [
    ...phrase(noun, counted, without(after, before), 'added'),
    ...phrase(noun, counted, without(before, after), 'removed'),
  ];
}

function phrase(noun: string, counted: string, ids: readonly string[], verb: string, all = Number.NaN): string[] {
  if (ids.length === 0) return [];
  if (ids.length > MOST_NAMED) return [`${ids.length === all ? `all ${all}` : ids.length} ${plural(counted)} ${verb}`];
  const named = noun && ids.length > 1 ? plural(noun) : noun;
  return [[named, ids.join(', '), verb].filter(Boolean).join(' ')];
}

const plural = (noun: string) => (noun === 'tooling' ? noun : `${noun}s`);

const entries = (record: Readonly<Record<string, object>>): Named[] =>
  Object.entries(record).map(([id, value]) => ({ ...value, id }));

const FIELD_WORDS: Readonly<Record<string, string>> = {
  engine: 'engine changed',
  title: 'title changed',
  clearance: 'clearance changed',
  motion: 'motion changed',
  wrap: 'wrap changed',
  access: 'tools changed',
  display: 'unit shown changed',
};

const fieldChange = (field: string, before: Design, after: Design): string[] =>
  same(before[field as keyof Design], after[field as keyof Design]) ? [] : [FIELD_WORDS[field]!];
