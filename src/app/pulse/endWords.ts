/** What stands at each end of each pipe, in words; junctions and plates between pipes are numbered where there are several. */
import { placesOf } from '../../pulse/rig/places';
import type { Rig, RigEnd } from '../../pulse/rig/types';

const WORDS: Readonly<Record<RigEnd['kind'], string>> = {
  closed: 'closed',
  open: 'open',
  through: 'goes on',
  junction: 'junction',
  restriction: 'plate',
  vessel: 'vessel',
};

export type EndWords = { readonly start: string; readonly finish: string };

export function endWords(rig: Pick<Rig, 'ends'>, pipe: string): EndWords {
  const found: { start: string; finish: string } = { start: '', finish: '' };
  const counts = new Map<string, number>();
  for (const end of rig.ends) counts.set(end.kind, (counts.get(end.kind) ?? 0) + 1);
  const numbers = new Map<string, number>();
  for (const end of rig.ends) {
    const number = (numbers.get(end.kind) ?? 0) + 1;
    numbers.set(end.kind, number);
    const joins = end.kind === 'junction' || end.kind === 'restriction' || end.kind === 'vessel';
    const word = joins && counts.get(end.kind)! > 1 ? `${WORDS[end.kind]} ${number}` : WORDS[end.kind];
    for (const [id, side] of placesOf(end)) if (id === pipe) found[side] = word;
  }
  return found;
}
