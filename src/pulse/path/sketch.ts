/**
 * The gas path of a header that is lengths and bores alone. The port in the head is the first part of each primary's length. Joined as a
 * new header would be: one collector a bank, first joins by the firing order. A secondary begins with a cone from the circle that has
 * the areas of all that enter, as collectors do. SI units.
 */
import { insist, type Refusal } from '../../../shared/design/refusal';
import type { Design, HeaderSketch } from '../../../shared/design/types';
import { type BoreTable, boreFrom, sumDiameter, throughHead } from './bores';
import { cylinderProblems, headAssumed, headOf, longestInHead, pipesOf } from './engineOf';
import { metres } from './metres';
import { pipeIds } from './pipeIds';
import { LEAST, plainProblems } from './plainProblems';
import { collected, finishDiameter, noParts, type PathParts, type PathReading, wholePath } from './reading';
import { type SketchSet, sketchSets } from './sketchSets';
import { addTailpipe, tailpipeOf } from './tailpipe';
import type { PathPipe, PipeRole } from './types';
import { DRAWN_ROUGHNESS, WALL_TEMPERATURES } from './walls';

export const SKETCH = 'sketch';

/** m, of the cone that a secondary begins with: two diameters of a usual one. Our own choice; never more than half of it. */
const JOIN_CONE = 0.09;

/** @throws DesignError naming the field */
export function sketchPath(sketch: HeaderSketch, design: Design): PathReading {
  insist(sketchProblems(sketch, design));
  const sets = sketchSets(sketch, design);
  const parts = noParts();
  const nameOf = pipeIds();
  const lasts = sets.map((set, i) => {
    const behind = sets.length === 1 ? '' : ` ${i + 1}`;
    return addSet(parts, sketch, design, set, (wanted) => nameOf(wanted), behind);
  });
  const tailpipe = tailpipeOf(design.exhaust, metres(sketch.collector.bore));
  lasts.forEach((cone, i) => {
    addTailpipe(parts, cone, nameOf(lasts.length === 1 ? 'tailpipe' : `tailpipe ${i + 1}`), tailpipe.tailpipe);
  });
  return wholePath(SKETCH, parts, [...headAssumed(design), ...tailpipe.assumed]);
}

function sketchProblems({ arrangement, primary, secondary, collector }: HeaderSketch, design: Design): Refusal[] {
  const path = 'exhaust/sketch';
  return [
    ...cylinderProblems(design),
    ...plainProblems(primary, `${path}/primary`, longestInHead(design) + LEAST, ': the port in the head is part of it'),
    ...plainProblems(collector, `${path}/collector`),
    ...(secondary ? plainProblems(secondary, `${path}/secondary`) : []),
    ...(arrangement !== 'all-into-one' && !secondary
      ? [
          {
            path: `${path}/secondary`,
            found: 'nothing',
            allowed: 'length and bore of the pipes behind the first joins',
          },
        ]
      : []),
  ];
}

/** All that ends in one collector; answers its cone. */
function addSet(
  parts: PathParts,
  sketch: HeaderSketch,
  design: Design,
  { cylinders, first }: SketchSet,
  nameOf: (wanted: string) => string,
  behind: string,
): PathPipe {
  const primariesOf = new Map(cylinders.map((c) => [c, primaries(parts, sketch, design, c, nameOf)]));
  const all = (set: readonly number[]): PathPipe[] => set.flatMap((c) => primariesOf.get(c)!);
  const entering =
    first.length === 0
      ? all(cylinders)
      : first.map((set) => {
          const { length, bore } = sketch.secondary!;
          const [long, before] = [metres(length), all(set)];
          const from = sumDiameter(before.map(finishDiameter));
          const table = boreFrom(from, metres(bore), long, JOIN_CONE);
          return join(parts, before, pipe(nameOf(`secondary ${set.join('-')}`), 'secondary', long, table));
        });
  const length = metres(sketch.collector.length);
  const cone: BoreTable = [
    [0, sumDiameter(entering.map(finishDiameter))],
    [length, metres(sketch.collector.bore)],
  ];
  return join(parts, entering, pipe(nameOf(`collector${behind}`), 'collector', length, cone));
}

function primaries(
  parts: PathParts,
  { primary }: HeaderSketch,
  design: Design,
  cylinder: number,
  nameOf: (wanted: string) => string,
): PathPipe[] {
  const count = pipesOf(design, cylinder);
  const [length, own] = [metres(primary.length), metres(primary.bore)];
  return Array.from({ length: count }, (_, k) => {
    const { inHead, bore } = headOf(design, cylinder, k, own);
    const one = pipe(nameOf(`primary ${cylinder}`), 'primary', length, throughHead(bore, own, length), inHead);
    parts.pipes.push(one);
    parts.valves.push({ cylinder, pipe: one.id, share: 1 / count });
    return one;
  });
}

function join(parts: PathParts, entering: readonly PathPipe[], into: PathPipe): PathPipe {
  parts.pipes.push(into);
  parts.ends.push(
    collected(
      entering.map(({ id }) => id),
      into.id,
    ),
  );
  return into;
}

const pipe = (id: string, role: PipeRole, length: number, diameter: BoreTable, inHead = 0): PathPipe => ({
  id,
  role,
  length,
  diameter,
  roughness: DRAWN_ROUGHNESS,
  wallTemperature: WALL_TEMPERATURES[role],
  inHead,
  part: null,
});
