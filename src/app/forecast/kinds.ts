/** What can be followed, in words: what each is, and what it is good for. */

import { titleOf } from '../shelf/names';
import type { KeptDesign } from '../storage/keptDesign';
import type { RunKind } from './runs';

/** Between the longest and the shortest primary, mm: as much as a header fitted up by eye may have. */
export const UNEVEN = 50;

export type KindWords = { readonly kind: RunKind; readonly name: string; readonly about: string };

export const KINDS: readonly KindWords[] = [
  { kind: 'header', name: 'This header', about: 'as it is laid out, with its own lengths' },
  { kind: 'cast', name: 'Cast manifold', about: 'what the header replaces: short rough branches into one passage' },
  { kind: 'equal', name: 'Equal lengths', about: 'this header, were all of its primaries of one length' },
  { kind: 'sketch', name: 'Sketch', about: 'lengths and bores alone, before anything is laid out' },
  {
    kind: 'uneven',
    name: `Uneven by ${UNEVEN} mm`,
    about: `this header with ${UNEVEN} mm between its longest and its shortest primary: what unequal lengths cost`,
  },
  { kind: 'arrangement', name: 'Other joining', about: 'the same lengths, joined the other way' },
];

export const otherKind = (id: string): RunKind => `other/${id}`;

export function nameOf(kind: RunKind, designs: readonly KeptDesign[]): string {
  const own = KINDS.find((k) => k.kind === kind);
  if (own) return own.name;
  const design = designs.find(({ id }) => otherKind(id) === kind);
  return design ? titleOf(design) : 'Another design';
}
