/** Renames a thing together with everything that names it, so that no reference is left behind. */
import { ID_RULE, isGoodId, sameId } from '../ids';
import { describe } from '../refusal';
import type { Design, Sensor } from '../types';
import { checked, type Edited, refused } from './edited';
import {
  isListKind,
  LIST_OF,
  type ListKind,
  placeOfThing,
  RECORD_OF,
  type RecordKind,
  segmentsOf,
  type Thing,
} from './things';

/** Tube and tooling share one name, as a runner names both by it. */
export function rename(design: Design, thing: Thing, to: string): Edited {
  const place = placeOfThing(thing);
  if (thing.kind === 'engine' || thing.kind === 'design' || thing.kind === 'fastener')
    return refused(place, 'no name', 'a thing that has a name');
  if (!segmentsOf(design, thing)) return refused(place, 'nothing there', 'a thing of this design');
  if (thing.id === to) return { ok: true, design };
  if (!isGoodId(to)) return refused(`${place}/id`, describe(to), ID_RULE);
  const { kind, id } = thing;
  if (takenIn(design, kind, id).some((other) => sameId(other) === sameId(to)))
    return refused(`${place}/id`, `${describe(to)}, taken already`, 'a name not yet used, capitals or not');
  return checked(isListKind(kind) ? renameInList(design, kind, id, to) : renameInRecord(design, kind, id, to));
}

/** Names that the new one must not meet: all of its kind but itself. */
function takenIn(design: Design, kind: ListKind | RecordKind, id: string): string[] {
  const all = isListKind(kind)
    ? (design[LIST_OF[kind]] ?? []).map((entry) => entry.id)
    : kind === 'group'
      ? Object.keys(design.groups)
      : [...Object.keys(design.tubes), ...Object.keys(design.tooling)];
  return all.filter((other) => other !== id);
}

function renameInList(design: Design, kind: ListKind, id: string, to: string): Design {
  const swap = (name: string) => (name === id ? to : name);
  const list = LIST_OF[kind];
  const renamed = { ...design, [list]: design[list]!.map((entry) => (entry.id === id ? { ...entry, id: to } : entry)) };
  if (kind === 'port') {
    return {
      ...renamed,
      ...(renamed.flanges && {
        flanges: renamed.flanges.map((f) => (f.ports.includes(id) ? { ...f, ports: f.ports.map(swap) } : f)),
      }),
      runners: renamed.runners.map((r) =>
        'port' in r.from && r.from.port === id ? { ...r, from: { ...r.from, port: to } } : r,
      ),
    };
  }
  const sensors = renamed.sensors?.map((sensor) => onRenamed(sensor, kind, id, to));
  if (kind === 'runner') return { ...renamed, ...(sensors && { sensors }) };
  if (kind === 'merge') {
    return {
      ...renamed,
      ...(sensors && { sensors }),
      runners: renamed.runners.map((r) => ({
        ...r,
        ...('merge' in r.from && r.from.merge === id && { from: { ...r.from, merge: to } }),
        ...(r.to.merge === id && { to: { ...r.to, merge: to } }),
      })),
    };
  }
  return renamed;
}

function onRenamed(sensor: Sensor, kind: ListKind, id: string, to: string): Sensor {
  const { on } = sensor;
  if (kind === 'runner' && 'runner' in on && on.runner === id) return { ...sensor, on: { ...on, runner: to } };
  if (kind === 'merge' && 'merge' in on && on.merge === id) return { ...sensor, on: { ...on, merge: to } };
  return sensor;
}

function renameInRecord(design: Design, kind: RecordKind, id: string, to: string): Design {
  const renameKey = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(record).map(([name, entry]) => [name === id ? to : name, entry]));
  if (kind === 'group') {
    return {
      ...design,
      [RECORD_OF.group]: renameKey(design.groups),
      runners: design.runners.map((r) => (r.group === id ? { ...r, group: to } : r)),
    };
  }
  return {
    ...design,
    tubes: renameKey(design.tubes),
    tooling: renameKey(design.tooling),
    runners: design.runners.map((r) => (r.tube === id ? { ...r, tube: to } : r)),
  };
}
