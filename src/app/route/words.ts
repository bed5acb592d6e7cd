/** What a layout is told by: in a line, and its inlets where they differ from those of the others. */
import type { Layout } from '../../../geometry';
import type { Design, Display } from '../../../shared/design/types';
import { angleNumber, lengthNumber } from '../format';

export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** "10 bends, 663.4° in all, least room 0.30 mm". */
export function layoutWords({ bends, angle, margin }: Layout, display: Display = 'mm'): string {
  const parts = [counted(bends, 'bend'), `${angleNumber(angle)}° in all`];
  if (Number.isFinite(margin)) parts.push(`least room ${lengthNumber(margin, display)} ${display}`);
  return parts.join(', ');
}

/** What comes into a collector, inlet by inlet: cylinders, or the collectors before it. Nothing where it has but one. */
function inletsOf(design: Design, merge: string): string | null {
  const into = design.runners
    .filter((r) => r.to.merge === merge)
    .sort((a, b) => (a.to.inlet ?? 0) - (b.to.inlet ?? 0))
    .map(({ from }) => ('port' in from ? design.ports.find((p) => p.id === from.port)?.cylinder : from.merge) ?? '?');
  if (into.length < 2) return null;
  return into.join(into.every((one) => typeof one === 'number') ? ' ' : ', ');
}

export type InletWords = {
  /** One for each layout: the collectors that are not alike in all. Empty where all are. */
  readonly each: readonly string[];
  /** The collectors that are alike in all. Empty where none is. */
  readonly alike: string;
};

/** Layouts of one design. */
export function inletWords(designs: readonly Design[]): InletWords {
  const merges = designs[0]?.merges.map(({ id }) => id) ?? [];
  const of = (design: Design, ids: readonly string[]): string =>
    ids
      .flatMap((id) => {
        const words = inletsOf(design, id);
        return words === null ? [] : [merges.length > 1 ? `${id}: ${words}` : words];
      })
      .join('; ');
  const differs = (id: string) => new Set(designs.map((d) => inletsOf(d, id))).size > 1;
  const apart = merges.filter(differs);
  const alike = merges.filter((id) => !differs(id));
  return { each: designs.map((d) => of(d, apart)), alike: designs[0] ? of(designs[0], alike) : '' };
}
