/**
 * Setting one number of a runner's bend rows with as little else moved as can be: one bend beside it goes, the ends and all
 * other bends stay. Angle and rotation swing a leg about the bend, a straight slides a bend along it; the amount is found by
 * the secant method on the row as it is measured, so that the row then reads what was asked. Degrees and mm, as the rows.
 */
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { type BendTable, bendTable } from '../curve/bendTable';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE, RADIANS } from '../tolerance';
import { add, addScaled, cross, rotate, sub, unit } from '../vector';
import { type Path, pathOf, rangeAt, withPoints } from './path';
import { refit } from './refit';

const MOST_STEPS = 40;

/** The bend's whole angle, degrees. The same design where no neighbour is free, or nothing near can give the angle. */
export function setBendAngle(design: Design, runner: string, bend: number, degrees: number): Design {
  const path = pathOf(design, runner);
  const range = path.bends[bend];
  if (!range) return design;
  const [before, after] = [range.first - 1, range.last + 1];
  const o = path.points[before]!;
  const normal = unit(
    cross(sub(path.points[range.first]!, o), sub(path.points[range.first + 1]!, path.points[range.first]!)),
  );
  const read = (table: BendTable) => table.rows[bend]?.angle ?? 0;
  const guess = (degrees - read(tableOf(path))) * RADIANS;
  return (
    search(design, path, read, degrees, guess, swing(path, after, path.points[range.last]!, normal)) ??
    search(design, path, read, degrees, -guess, swing(path, before, path.points[range.first]!, normal)) ??
    design
  );
}

/** Rotation of this bend's plane from the one before it, degrees; the first bend has none: see its clocking. */
export function setRotation(design: Design, runner: string, bend: number, degrees: number): Design {
  const path = pathOf(design, runner);
  const range = path.bends[bend];
  if (!range || bend === 0) return design;
  const [previous, after] = [path.bends[bend - 1]!, range.last + 1];
  const pivot = path.points[range.first]!;
  const axis = unit(sub(pivot, path.points[range.first - 1]!));
  // Measured from the turn it has, so that ±180 is no cliff.
  const now = tableOf(path).rows[bend]!.rotation;
  const wish = wrapped(degrees - now);
  const read = (table: BendTable) => wrapped((table.rows[bend]?.rotation ?? 0) - now - wish) + wish;
  const turned = (index: number, sign: number) => swing(path, index, pivot, addScaled([0, 0, 0], axis, sign));
  return (
    search(design, path, read, wish, wish * RADIANS, turned(after, 1)) ??
    search(design, path, read, wish, wish * RADIANS, turned(previous.first - 1, -1)) ??
    design
  );
}

/** A straight's length, mm: one of its bends slides along it. */
export function setStraight(design: Design, runner: string, straight: number, mm: number): Design {
  const path = pathOf(design, runner);
  const run = path.straights[straight];
  if (!run) return design;
  const way = path.line.directions[path.line.source.indexOf(run.first)]!;
  const read = (table: BendTable) => table.rows[straight]?.length ?? 0;
  const grows = mm - read(tableOf(path));
  const slid = (index: number, sign: number) => slide(path, index, addScaled([0, 0, 0], way, sign));
  // On an end's own straight its bend rides; elsewhere whichever of both bends is free.
  return (
    search(design, path, read, mm, grows, slid(run.last, 1), run.first === 0) ??
    search(design, path, read, mm, grows, slid(run.first, -1), run.last === path.points.length - 1) ??
    design
  );
}

const tableOf = (path: Path): BendTable => bendTable(path.line, path.start.up);
const wrapped = (degrees: number) => degrees - 360 * Math.round(degrees / 360);

type Move = { readonly first: number; readonly last: number; at(amount: number): Vec3[] };

const pieces = (path: Path, index: number, change: (p: Vec3, amount: number) => Vec3): Move => {
  const range = rangeAt(path, index);
  return {
    ...range,
    at: (amount) =>
      refit(
        path,
        path.points.map((p, i) => (i >= range.first && i <= range.last ? change(p, amount) : p)),
      ),
  };
};
const swing = (path: Path, index: number, pivot: Vec3, axis: Vec3): Move =>
  pieces(path, index, (p, angle) => add(pivot, rotate(sub(p, pivot), axis, angle)));
const slide = (path: Path, index: number, way: Vec3): Move => pieces(path, index, (p, by) => addScaled(p, way, by));

/** @param rides the move is along the end's own line, so that the bend at that end may be the one to go */
function search(
  design: Design,
  path: Path,
  read: (table: BendTable) => number,
  target: number,
  guess: number,
  move: Move,
  rides = false,
): Design | null {
  const last = path.points.length - 1;
  if (move.first <= 0 || move.last >= last) return null;
  const [bound, freeStart, freeEnd] = [path.points.length === 3, move.first > 1, move.last < last - 1];
  if (bound || (!rides && !(freeStart && freeEnd)) || (rides && !freeStart && !freeEnd)) return null;
  const at = (amount: number) => withPoints(design, path.runner.id, move.at(amount));
  const miss = (amount: number) => read(tableOf(pathOf(at(amount), path.runner.id))) - target;
  let [x0, f0] = [0, miss(0)];
  if (f0 === 0) return design;
  let x1 = guess;
  const close = Math.max(LENGTH_TOLERANCE, Math.abs(target) * ANGLE_TOLERANCE) / 1000;
  for (let step = 0; step < MOST_STEPS; step++) {
    const f1 = miss(x1);
    if (Math.abs(f1) <= close) return at(x1);
    if (f1 === f0) return null;
    [x0, f0, x1] = [x1, f1, x1 - (f1 * (x1 - x0)) / (f1 - f0)];
    if (!Number.isFinite(x1) || Math.abs(x1) > LIMIT) return null;
  }
  return null;
}

/** A search that runs this far, mm or radians, is lost. */
const LIMIT = 10_000;
