/** What an answer's bare id means in the design, to be lit and picked. */
import type { Header } from '../../../geometry';
import type { AccessEntry } from '../../../geometry/reach/report';
import type { Ref } from '../session';

/** Runner, collector, surrounding, flange, sensor or service point of this id; a stud as `f1 stud 3` names it. */
export function refOf(header: Header, id: string): Ref | null {
  const { design } = header;
  if (design.runners.some((r) => r.id === id)) return { kind: 'runner', id };
  if (header.merges.has(id)) return { kind: 'merge', id };
  const lists = [
    ['surrounding', design.surroundings],
    ['flange', design.flanges],
    ['sensor', design.sensors],
    ['service', design.service],
  ] as const;
  for (const [kind, list] of lists) if (list?.some((thing) => thing.id === id)) return { kind, id };
  for (const flange of design.flanges ?? []) {
    const index = fastenerIn(flange.id, id);
    if (index !== null && flange.fasteners?.[index]) return { kind: 'fastener', id: flange.id, index };
  }
  return null;
}

/** `f1 stud 3` or `f1 bolt 3` → 2, for the flange f1. */
function fastenerIn(flange: string, id: string): number | null {
  if (!id.startsWith(`${flange} `)) return null;
  const found = /^\S+ (\d+)$/.exec(id.slice(flange.length + 1));
  return found ? Number(found[1]) - 1 : null;
}

/** By its place in the document: `flanges/f1/fasteners/2`, `service/plug 1`. */
export function refOfEntry({ where, id }: Pick<AccessEntry, 'where' | 'id'>): Ref {
  const [list, name, field, index] = where.split('/');
  if (list === 'flanges' && field === 'fasteners') return { kind: 'fastener', id: name!, index: Number(index) };
  return { kind: 'service', id: name ?? id };
}
