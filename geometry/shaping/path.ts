/**
 * A routed runner opened for a hand: its points, the bends as ranges of document points, and its two end lines. Every edit
 * of a runner starts here and closes through `withPoints`, so that all other parts of the design stay the same objects.
 * mm; points are counted as in the document.
 */
import type { Design, Runner, Tooling } from '../../shared/design/types';
import { remembered } from '../../shared/remember';
import type { Vec3 } from '../../shared/vec3';
import { bends, straightIndices } from '../curve/bends';
import type { Centerline } from '../curve/centerline';
import type { Pose } from '../header/merge';
import type { Header, ResolvedRunner } from '../header/resolve';
import { headerKept } from './kept';

/** First and last document point of something that moves as one. */
export type Range = { readonly first: number; readonly last: number };

export type Path = {
  readonly runner: Runner;
  readonly tooling: Tooling;
  readonly points: readonly Vec3[];
  readonly line: Centerline;
  /** For each bend as the bender sees it, the points that store it. */
  readonly bends: readonly Range[];
  /** For each straight as the saw sees it, the points it runs between. */
  readonly straights: readonly Range[];
  readonly start: Pose;
  /** Travel at the inlet; where no inlet is chosen yet, of the last leg. */
  readonly endDirection: Vec3;
};

const opened = remembered((r: ResolvedRunner) => r.centerline && openPath(r, r.centerline));

/**
 * A runner of a resolved header, opened once: a hand asks for the same one many times a second.
 * @throws RangeError where there is no such runner or it has no points: a caller's mistake
 */
export function pathIn(header: Header, id: string): Path {
  const found = header.runners.find(({ runner }) => runner.id === id);
  const path = found && opened(found);
  if (!path) throw new RangeError(`Runner ${id} is not routed`);
  return path;
}

/** @throws RangeError as `pathIn` */
export const pathOf = (design: Design, id: string): Path => pathIn(headerKept(design), id);

function openPath({ runner, tooling, start, end }: ResolvedRunner, line: Centerline): Path {
  const { source } = line;
  return {
    runner,
    tooling,
    points: runner.points!,
    line,
    bends: bends(line).map((b) => ({ first: source[b.first + 1]!, last: source[b.last + 1]! })),
    straights: straightIndices(line).map((k) => ({ first: source[k]!, last: source[k + 1]! })),
    start,
    endDirection: end?.direction ?? line.directions.at(-1)!,
  };
}

/** The bend that point `index` is stored in; a point that does not turn is a bend of its own. */
export const rangeAt = (path: Path, index: number): Range =>
  path.bends.find((b) => b.first <= index && index <= b.last) ?? { first: index, last: index };

export const ridesStart = (range: Range): boolean => range.first === 1;
export const ridesEnd = (path: Path, range: Range): boolean => range.last === path.points.length - 2;

/** The design with one runner's points, and its radii where given, replaced; the same design where nothing changed. */
export function withPoints(design: Design, id: string, points: readonly Vec3[], radii?: readonly number[]): Design {
  const before = design.runners.find((r) => r.id === id)!;
  const same = points.length === before.points?.length && points.every((p, i) => samePlace(p, before.points![i]!));
  if (same && radii === undefined) return design;
  const runner: Runner = { ...before, points, ...(radii && { radii }) };
  return { ...design, runners: design.runners.map((r) => (r.id === id ? runner : r)) };
}

const samePlace = (a: Vec3, b: Vec3) => a === b || a.every((x, i) => x === b[i]);
