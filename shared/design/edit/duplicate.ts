/** A second one of a thing, a little aside so that both are seen. References stay with the first. mm. */

import type { Vec3 } from '../../vec3';
import { describe } from '../refusal';
import type { Design } from '../types';
import { type Added, addPort, plus } from './add';
import { checked, refused } from './edited';
import { shiftedSurrounding } from './places';
import { fastenersOf, freeId, placeOfThing, segmentsOf, type Thing } from './things';

const ASIDE: Vec3 = [40, 0, 0];
/** Along its tube. */
const SENSOR_STEP = 40;

export const canDuplicate = (kind: Thing['kind']): boolean =>
  ['port', 'fastener', 'merge', 'tube', 'tooling', 'group', 'surrounding', 'service', 'sensor'].includes(kind);

export function duplicate(design: Design, thing: Thing): Added {
  const place = placeOfThing(thing);
  if (!segmentsOf(design, thing)) return { edited: refused(place, 'nothing there', 'a thing of this design'), thing };
  const { id } = thing;
  const free = (taken: readonly string[]) => freeId(taken, `${stem(id)} `);
  switch (thing.kind) {
    case 'port': {
      const original = design.ports.find((port) => port.id === id)!;
      const added = addPort(design);
      if (!added.edited.ok) return added;
      const { id: newId, cylinder } = added.edited.design.ports.at(-1)!;
      const copy = { ...original, id: newId, cylinder, position: plus(original.position, ASIDE) };
      return { edited: checked({ ...design, ports: [...design.ports, copy] }), thing: added.thing };
    }
    case 'fastener': {
      const all = fastenersOf(design, id);
      const original = all[thing.index]!;
      const copy = { ...original, position: plus(original.position, [ASIDE[0] / 2, 0, 0]) };
      const flanges = design.flanges!.map((f) => (f.id === id ? { ...f, fasteners: [...all, copy] } : f));
      return { edited: checked({ ...design, flanges }), thing: { kind: 'fastener', id, index: all.length } };
    }
    case 'merge': {
      const { outletJoint, ...original } = design.merges.find((merge) => merge.id === id)!;
      const newId = free(design.merges.map((merge) => merge.id));
      const copy = {
        ...original,
        ...(outletJoint && { outletJoint }),
        id: newId,
        position: plus(original.position, [2 * original.outletDiameter, 0, 0]),
      };
      return { edited: checked({ ...design, merges: [...design.merges, copy] }), thing: { kind: 'merge', id: newId } };
    }
    case 'tube':
    case 'tooling': {
      const newId = free([...Object.keys(design.tubes), ...Object.keys(design.tooling)]);
      const copied = <T>(record: Readonly<Record<string, T>>) =>
        Object.hasOwn(record, id) ? { ...record, [newId]: record[id]! } : record;
      const edited = checked({ ...design, tubes: copied(design.tubes), tooling: copied(design.tooling) });
      return { edited, thing: { kind: thing.kind, id: newId } };
    }
    case 'group': {
      const newId = free(Object.keys(design.groups));
      const edited = checked({ ...design, groups: { ...design.groups, [newId]: design.groups[id]! } });
      return { edited, thing: { kind: 'group', id: newId } };
    }
    case 'surrounding': {
      const all = design.surroundings!;
      const newId = free(all.map((entry) => entry.id));
      const copy = { ...shiftedSurrounding(all.find((entry) => entry.id === id)!, ASIDE), id: newId };
      return {
        edited: checked({ ...design, surroundings: [...all, copy] }),
        thing: { kind: 'surrounding', id: newId },
      };
    }
    case 'service': {
      const all = design.service!;
      const newId = free(all.map((entry) => entry.id));
      const original = all.find((entry) => entry.id === id)!;
      const copy = { ...original, id: newId, position: plus(original.position, ASIDE) };
      return { edited: checked({ ...design, service: [...all, copy] }), thing: { kind: 'service', id: newId } };
    }
    case 'sensor': {
      const all = design.sensors!;
      const newId = free(all.map((entry) => entry.id));
      const original = all.find((entry) => entry.id === id)!;
      const copy = { ...original, id: newId, at: original.at + SENSOR_STEP };
      return { edited: checked({ ...design, sensors: [...all, copy] }), thing: { kind: 'sensor', id: newId } };
    }
    default:
      return {
        edited: refused(
          place,
          `a ${thing.kind}${id && ` ${describe(id)}`}, which cannot stand twice`,
          'adding a new one',
        ),
        thing,
      };
  }
}

/** `bar 1` → `bar`, `steering shaft` → `steering shaft`; short enough to take a number. */
const stem = (id: string): string => id.replace(/[ _-]*\d+$/, '').slice(0, 58) || 'copy';
