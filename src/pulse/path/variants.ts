/**
 * A path as it would be otherwise: equal lengths, lengths that differ by so much, other sizes. Each answers a new path and keeps the
 * names of pipes, so that answers can be laid beside each other. m.
 */
import { mean } from './engineOf';
import { coveredCylinders } from './reading';
import { reconed, refitted, retubed, type Size } from './resized';
import type { GasPath, PathPipe, PipeRole } from './types';

/** Every primary (in a casting every branch) as long as they are on average, and every secondary likewise. */
export const equalised = (path: GasPath): GasPath => {
  const even = (roles: readonly PipeRole[], of: GasPath): GasPath => withMean(of, roles, meanOf(of, roles), 0);
  return even(['secondary'], even(FIRST, path));
};

/**
 * Primaries whose lengths lie evenly from the shortest to the longest, `spread` apart, about the mean that they have. Short and long
 * take turns in the firing order; two ports of one cylinder have one length. Secondaries stay.
 * @param firingOrder with every cylinder of the path. @throws RangeError where there are fewer than two, or one would be too short
 */
export function withImbalance(path: GasPath, spread: number, firingOrder: readonly number[]): GasPath {
  if (!(spread >= 0)) throw new RangeError(`Lengths ${spread} m apart: 0 or more`);
  const cylinders = coveredCylinders(path);
  const missing = cylinders.find((cylinder) => !firingOrder.includes(cylinder));
  if (missing !== undefined)
    throw new RangeError(`Cylinder ${missing} is not in the firing order ${firingOrder.join('-')}`);
  const inOrder = firingOrder.filter((cylinder) => cylinders.includes(cylinder));
  const count = inOrder.length;
  if (count < 2) throw new RangeError('The primaries of one cylinder alone cannot differ from others');
  const shorter = Math.ceil(count / 2);
  const offOf = new Map(
    inOrder.map((cylinder, i) => {
      const rank = i % 2 === 0 ? i / 2 : shorter + (i - 1) / 2;
      return [cylinder, spread * (rank / (count - 1) - 0.5)];
    }),
  );
  // Where cylinders have unlike numbers of ports, what is added is not nothing by itself.
  const middle = meanOf(path, FIRST) - mean(path.valves.map(({ cylinder }) => offOf.get(cylinder)!));
  const lengthOf = new Map(path.valves.map(({ pipe, cylinder }) => [pipe, middle + offOf.get(cylinder)!]));
  return mapped(path, (pipe) => (lengthOf.has(pipe.id) ? retubed(pipe, { length: lengthOf.get(pipe.id) }) : pipe));
}

/** Of each, only what is to change. Lengths are means: pipes keep the differences between them. */
export type Sizes = {
  readonly primary?: Size;
  readonly secondary?: Size;
  readonly collector?: Size;
  readonly tailpipe?: Size;
};

/**
 * `primary` is of branches too. `collector` is of those that a tailpipe follows: length, and bore of the outlet. What joins the pipes is
 * made to fit. @throws RangeError where a pipe would be too short
 */
export function withSizes(path: GasPath, { primary, secondary, collector, tailpipe }: Sizes): GasPath {
  const lasts = new Set(
    path.ends.flatMap((end) => {
      const isLast =
        end.kind === 'junction' && end.at.some(([id, side]) => side === 'start' && roleOf(path, id) === 'tailpipe');
      return isLast ? end.at.map(([id]) => id) : [];
    }),
  );
  let sized = sizedTubes(path, FIRST, primary);
  sized = sizedTubes(sized, ['secondary'], secondary);
  sized = sizedTubes(sized, ['tailpipe'], tailpipe);
  if (collector)
    sized = mapped(sized, (pipe) =>
      pipe.role === 'collector' && lasts.has(pipe.id) ? reconed(pipe, collector) : pipe,
    );
  return refitted(sized);
}

/** What begins at a valve. */
const FIRST: readonly PipeRole[] = ['primary', 'branch'];

const roleOf = ({ pipes }: GasPath, id: string): PipeRole | undefined => pipes.find((pipe) => pipe.id === id)?.role;

const mapped = (path: GasPath, change: (pipe: PathPipe) => PathPipe): GasPath => ({
  ...path,
  pipes: path.pipes.map(change),
});

const meanOf = ({ pipes }: GasPath, roles: readonly PipeRole[]): number =>
  mean(pipes.flatMap(({ role, length }) => (roles.includes(role) ? [length] : [])));

/** @param kept how much of each pipe's difference from the mean stays: 1 all, 0 none */
function withMean(path: GasPath, roles: readonly PipeRole[], to: number, kept: 0 | 1): GasPath {
  const now = meanOf(path, roles);
  return mapped(path, (pipe) =>
    roles.includes(pipe.role) ? retubed(pipe, { length: to + kept * (pipe.length - now) }) : pipe,
  );
}

function sizedTubes(path: GasPath, roles: readonly PipeRole[], size: Size | undefined): GasPath {
  if (!size) return path;
  const long = size.length === undefined ? path : withMean(path, roles, size.length, 1);
  if (size.bore === undefined) return long;
  return mapped(long, (pipe) => (roles.includes(pipe.role) ? retubed(pipe, { bore: size.bore }) : pipe));
}
