/** The things of a design that can be pointed at and edited one by one, and where each lies in the document. */
import type { Design, Fastener } from '../types';

export type ListKind = 'port' | 'flange' | 'merge' | 'runner' | 'surrounding' | 'service' | 'sensor';
export type RecordKind = 'tube' | 'tooling' | 'group';

export type Thing =
  | { readonly kind: ListKind | RecordKind; readonly id: string }
  /** One bolt or stud of the flange `id`, counted from 0. */
  | { readonly kind: 'fastener'; readonly id: string; readonly index: number }
  /** What there is one of; `id` is empty. */
  | { readonly kind: 'engine' | 'design'; readonly id: '' };

export type Segments = readonly (string | number)[];

export const LIST_OF = {
  port: 'ports',
  flange: 'flanges',
  merge: 'merges',
  runner: 'runners',
  surrounding: 'surroundings',
  service: 'service',
  sensor: 'sensors',
} as const satisfies Record<ListKind, keyof Design>;

export const RECORD_OF = { tube: 'tubes', tooling: 'tooling', group: 'groups' } as const satisfies Record<
  RecordKind,
  keyof Design
>;

export const isListKind = (kind: string): kind is ListKind => Object.hasOwn(LIST_OF, kind);
export const isRecordKind = (kind: string): kind is RecordKind => Object.hasOwn(RECORD_OF, kind);

/** Keys and indices down to the thing; null where the design has no such thing. The engine has a place before it is there. */
export function segmentsOf(design: Design, thing: Thing): Segments | null {
  if (thing.kind === 'design') return [];
  if (thing.kind === 'engine') return ['engine'];
  if (thing.kind === 'fastener') {
    const flange = indexIn(design, 'flange', thing.id);
    if (flange < 0 || !fastenersOf(design, thing.id)[thing.index]) return null;
    return ['flanges', flange, 'fasteners', thing.index];
  }
  if (isRecordKind(thing.kind)) {
    const record = RECORD_OF[thing.kind];
    return Object.hasOwn(design[record], thing.id) ? [record, thing.id] : null;
  }
  const index = indexIn(design, thing.kind, thing.id);
  return index < 0 ? null : [LIST_OF[thing.kind], index];
}

const indexIn = (design: Design, kind: ListKind, id: string): number =>
  (design[LIST_OF[kind]] ?? []).findIndex((entry) => entry.id === id);

export const fastenersOf = (design: Design, flange: string): readonly Fastener[] =>
  design.flanges?.find((entry) => entry.id === flange)?.fasteners ?? [];

/** As a path names it: `ports/p1`, `flanges/f1/fasteners/2`, `engine`. */
export function placeOfThing(thing: Thing): string {
  if (thing.kind === 'design' || thing.kind === 'engine') return thing.kind === 'design' ? 'document' : 'engine';
  if (thing.kind === 'fastener') return `flanges/${thing.id}/fasteners/${thing.index}`;
  return `${isRecordKind(thing.kind) ? RECORD_OF[thing.kind] : LIST_OF[thing.kind]}/${thing.id}`;
}

/** The lowest `stem1`, `stem2` … that none of `taken` is, capitals or not. */
export function freeId(taken: Iterable<string>, stem: string): string {
  const used = new Set([...taken].map((id) => id.toLowerCase()));
  for (let n = 1; ; n++) if (!used.has(`${stem}${n}`.toLowerCase())) return `${stem}${n}`;
}
