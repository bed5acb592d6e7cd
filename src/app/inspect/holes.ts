/** Clearance holes for all fasteners of a flange at once, by one series of ISO 273. No React. */
import { type Edited, fastenersOf, setFields, type Thing } from '../../../shared/design/edit';
import type { Design } from '../../../shared/design/types';
import { HOLE_CLASSES, holesFor } from '../../../shared/stock/holes';

export type HoleClass = (typeof HOLE_CLASSES)[number];

/** The flanges that are meant: those picked, and those of picked fasteners. */
export const flangesOf = (things: readonly Thing[]): string[] => [
  ...new Set(things.flatMap((thing) => (thing.kind === 'flange' || thing.kind === 'fastener' ? [thing.id] : []))),
];

/** Threads that the table does not hold, once each: their holes stay as they are. */
export const unknownThreads = (design: Design, flanges: readonly string[]): string[] => [
  ...new Set(
    flanges
      .flatMap((id) => fastenersOf(design, id))
      .filter(({ thread }) => !holesFor(thread))
      .map(({ thread }) => thread),
  ),
];

export const hasKnownThreads = (design: Design, flanges: readonly string[]): boolean =>
  flanges.some((id) => fastenersOf(design, id).some(({ thread }) => holesFor(thread)));

export function setHoles(design: Design, flanges: readonly string[], to: HoleClass): Edited {
  const series = HOLE_CLASSES.indexOf(to);
  return setFields(
    design,
    flanges.flatMap((id) => {
      const at = design.flanges!.findIndex((flange) => flange.id === id);
      return fastenersOf(design, id).flatMap(({ thread }, index) => {
        const hole = holesFor(thread)?.[series];
        return hole === undefined ? [] : [[['flanges', at, 'fasteners', index, 'hole'], hole] as const];
      });
    }),
  );
}
