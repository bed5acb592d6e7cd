/**
 * A size of a study into the design: the length that the primaries' group asks for, their tube, the bore of the outlet where the size
 * has one, and the sketch until they are laid out. mm
 */
import { resolveHeader } from '../../../geometry/header/resolve';
import { insist } from '../../../shared/design/refusal';
import type { Design, Merge, Runner } from '../../../shared/design/types';
import { sizingFromDesign } from '../../../shared/engine/sizing/fromDesign';
import type { EngineSetup } from '../engine/types';
import { type StudySize, sketchOf } from './studySizes';

/**
 * Nothing is laid out anew: `route` or a balance does that to the length that is asked for now. A design without runners gets the sketch alone.
 * @throws DesignError where the primaries are of several groups or tubes, as the size is of one, or are joined in another way
 */
export function chooseSize(design: Design, engine: EngineSetup, size: StudySize): Design {
  const primaries = design.runners.filter(({ from }) => 'port' in from);
  const isLaidOut = primaries.length > 0 && design.runners.every(({ points }) => points !== undefined);
  const sketch = { ...design, exhaust: { ...design.exhaust, sketch: sketchOf(design, engine, size) } };
  const sketched = isLaidOut && !design.exhaust?.sketch ? design : sketch;
  if (primaries.length === 0) return sketched;
  const own = sizingFromDesign(design).input.arrangement ?? 'all-into-one';
  insist(
    own === size.arrangement
      ? []
      : [
          {
            path: 'runners',
            found: `${own}, as drawn`,
            allowed: `${size.arrangement}, as the size has it: draw it anew (evenrun new)`,
          },
        ],
  );
  const tube = onlyOne(primaries, ({ tube }) => tube, 'tubes', 'one tube for all primaries');
  const group = onlyOne(
    primaries,
    (r) => r.group,
    'groups',
    'one group for all primaries, with the length they are to have',
  );
  insist(
    group === undefined
      ? [
          {
            path: 'runners',
            found: 'primaries without a group',
            allowed: 'one group for all primaries, to take the length',
          },
        ]
      : [],
  );
  const { outsideDiameter, wall, length, outlet } = size;
  return {
    ...sketched,
    tubes: { ...design.tubes, [tube!]: { ...design.tubes[tube!]!, outsideDiameter, wall } },
    groups: { ...design.groups, [group!]: { ...design.groups[group!]!, length } },
    merges: outlet === null ? design.merges : withOutlet(design, outlet),
  };
}

/** Every last collector of the design gets that bore; its wall stays. */
function withOutlet(design: Design, outlet: number): readonly Merge[] {
  const walls = resolveHeader(design).merges;
  const goesOn = (id: string): boolean => design.runners.some(({ from }) => 'merge' in from && from.merge === id);
  const outside = (id: string): number => Math.round((outlet + 2 * walls.get(id)!.wall) * 1e4) / 1e4;
  return design.merges.map((merge) => (goesOn(merge.id) ? merge : { ...merge, outletDiameter: outside(merge.id) }));
}

function onlyOne<T>(primaries: readonly Runner[], of: (runner: Runner) => T, path: string, allowed: string): T {
  const found = [...new Set(primaries.map(of))];
  if (found.length > 1) insist([{ path, found: `primaries of ${found.join(', ')}`, allowed }]);
  return found[0]!;
}
