/** A path's pipes made longer, shorter, wider or narrower, and what joins them made to fit again. m. */
import { type BoreTable, LEAST_LENGTH, sumDiameter, throughHead } from './bores';
import { millimetres } from './metres';
import { finishDiameter } from './reading';
import type { GasPath, PathPipe } from './types';

/** mm, as lengths are asked for; without the digits of rounding. */
const short = (metres: number): string => `${Number(millimetres(metres).toPrecision(4))} mm`;

export type Size = { readonly length?: number | undefined; readonly bore?: number | undefined };

/**
 * A tube of another length or bore. What lies in the head stays; the taper behind it stays as long as it is.
 * @throws RangeError where no cell's length of it would be left outside the head
 */
export function retubed(pipe: PathPipe, { length = pipe.length, bore = finishDiameter(pipe) }: Size): PathPipe {
  if (!(length >= pipe.inHead + LEAST_LENGTH && Number.isFinite(length)))
    throw new RangeError(
      `Pipe "${pipe.id}" of ${short(length)}: at least ${short(pipe.inHead + LEAST_LENGTH)}, as ${short(pipe.inHead)} of it lie in the head`,
    );
  if (!(bore > 0 && Number.isFinite(bore))) throw new RangeError(`Pipe "${pipe.id}" of bore ${bore} m: above 0`);
  const { head, taper } = partsOf(pipe);
  return { ...pipe, length, diameter: throughHead(head, bore, length, taper) };
}

/** The lines in the head or, where it has no throat, the first one; and how long the taper behind it is, if there is one. */
function partsOf({ diameter, inHead }: PathPipe): { head: BoreTable; taper: number | undefined } {
  const within = diameter.filter(([x]) => x === 0 || x === inHead);
  const [leaves] = within.at(-1)!;
  const next = diameter[within.length];
  const hasTaper = next !== undefined && next !== diameter.at(-1);
  return { head: within, taper: hasTaper ? next[0] - leaves : undefined };
}

/** A cone of another length or outlet. */
export function reconed(pipe: PathPipe, { length = pipe.length, bore = finishDiameter(pipe) }: Size): PathPipe {
  if (!(length >= LEAST_LENGTH && bore > 0))
    throw new RangeError(`Collector "${pipe.id}" of ${length} m, ${bore} m wide: at least ${LEAST_LENGTH} m, above 0`);
  return {
    ...pipe,
    length,
    diameter: [
      [0, pipe.diameter[0]![1]],
      [length, bore],
    ],
  };
}

/** Where pipes flow into one, it begins with the circle that has the areas of all of them, but within a casting. */
export function refitted(path: GasPath): GasPath {
  let pipes = path.pipes;
  for (const end of path.ends) {
    if (end.kind !== 'junction') continue;
    const into = end.at.find(([, side]) => side === 'start')?.[0];
    const before = end.at.flatMap(([id, side]) =>
      side === 'finish' ? [finishDiameter(pipes.find((pipe) => pipe.id === id)!)] : [],
    );
    pipes = pipes.map((pipe) =>
      pipe.id === into && pipe.role !== 'shared'
        ? beginning(pipe, before.length === 1 ? before[0]! : sumDiameter(before))
        : pipe,
    );
  }
  return { ...path, pipes };
}

function beginning(pipe: PathPipe, from: number): PathPipe {
  if (pipe.diameter[0]![1] === from) return pipe;
  const own = finishDiameter(pipe);
  if (pipe.role === 'collector') return reconed({ ...pipe, diameter: [[0, from], ...pipe.diameter.slice(1)] }, {});
  return { ...pipe, diameter: throughHead([[0, from]], own, pipe.length, partsOf(pipe).taper) };
}
