/**
 * One number of a runner's bend rows, whatever it takes: first with a single bend moved (`setRow.ts`); where none is free,
 * as on a runner of two or three bends, by sliding a bend along its straight or turning about one, by just so much that the
 * row reads what was asked. Of several ways, the one that moves the points least. Degrees and mm, as the rows.
 */
import type { Design } from '../../shared/design/types';
import { bendTable } from '../curve/bendTable';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE, RADIANS } from '../tolerance';
import { distance } from '../vector';
import { slideBend } from './movePoint';
import { pathOf } from './path';
import { setBendAngle, setRotation, setStraight } from './setRow';
import { turnRun } from './turnRun';

/** Counted from 0 as the bender sees them; clocking is the first bend's turn from its start's up. */
export type BendNumber =
  | { readonly what: 'straight' | 'angle' | 'rotation'; readonly index: number }
  | { readonly what: 'clocking' };

/** What the runner's rows say of it; null where they have no such row. */
export function bendNumber(design: Design, runner: string, number: BendNumber): number | null {
  const path = pathOf(design, runner);
  const table = bendTable(path.line, path.start.up);
  if (number.what === 'clocking') return path.bends.length > 0 ? table.clocking : null;
  const row = table.rows[number.index];
  if (!row) return null;
  return number.what === 'straight' ? row.length : number.what === 'angle' ? row.angle : row.rotation;
}

/** The same design where nothing near gives the number. */
export function setBendNumber(design: Design, runner: string, number: BendNumber, value: number): Design {
  const now = bendNumber(design, runner, number);
  if (now === null) return design;
  const single = withOneBend(design, runner, number, value);
  if (single !== design) return single;
  const turns = number.what === 'clocking' || number.what === 'rotation';
  const wish = turns ? wrapped(value - now) : value - now;
  const miss = (asked: Design): number => {
    const read = bendNumber(asked, runner, number);
    if (read === null) return Number.NaN;
    // Measured from the turn it has, so that ±180 is no cliff.
    return turns ? wrapped(read - now - wish) : read - now - wish;
  };
  const found = ways(design, runner, number)
    .flatMap(({ move, first }) => [first, -first].map((start) => reach(design, move, miss, start)))
    .filter((asked) => asked !== null)
    .map((asked) => ({ asked, moved: farthest(design, asked, runner) }))
    .sort((a, b) => a.moved - b.moved);
  return found[0]?.asked ?? design;
}

function withOneBend(design: Design, runner: string, number: BendNumber, value: number): Design {
  switch (number.what) {
    case 'straight':
      return setStraight(design, runner, number.index, value);
    case 'angle':
      return setBendAngle(design, runner, number.index, value);
    case 'rotation':
      return setRotation(design, runner, number.index, value);
    case 'clocking':
      return design;
  }
}

type Way = {
  readonly move: (amount: number) => Design;
  /** A first amount to try: a millimetre, or a degree in radians. */
  readonly first: number;
};

function ways(design: Design, runner: string, number: BendNumber): Way[] {
  const { bends, straights } = pathOf(design, runner);
  const slides = bends.flatMap((_, bend) =>
    (['in', 'out'] as const).map((along) => ({
      move: (by: number) => slideBend(design, runner, bend, along, by),
      first: 1,
    })),
  );
  const turns = straights.flatMap((_, straight) =>
    (['before', 'after'] as const).map((side) => ({
      move: (angle: number) => turnRun(design, runner, straight, angle, side),
      first: RADIANS,
    })),
  );
  // Turning about a straight is how a tube is set in the bender: what is asked for by a turn is looked for there first.
  return number.what === 'rotation' || number.what === 'clocking' ? [...turns, ...slides] : [...slides, ...turns];
}

const MOST_STEPS = 40;
/** A search that runs this far, mm or radians, is lost. */
const LIMIT = 10_000;

/** The secant method on what the row reads. */
function reach(
  design: Design,
  move: (amount: number) => Design,
  miss: (asked: Design) => number,
  first: number,
): Design | null {
  const close = Math.max(LENGTH_TOLERANCE, ANGLE_TOLERANCE) / 100;
  let [x0, f0, x1] = [0, miss(design), first];
  for (let step = 0; step < MOST_STEPS; step++) {
    const asked = move(x1);
    const f1 = miss(asked);
    if (Math.abs(f1) <= close) return asked;
    if (!Number.isFinite(f1) || f1 === f0) return null;
    [x0, f0, x1] = [x1, f1, x1 - (f1 * (x1 - x0)) / (f1 - f0)];
    if (!Number.isFinite(x1) || Math.abs(x1) > LIMIT) return null;
  }
  return null;
}

function farthest(before: Design, after: Design, runner: string): number {
  const [from, to] = [pathOf(before, runner).points, pathOf(after, runner).points];
  return Math.max(...to.map((p, i) => distance(p, from[i] ?? p)));
}

const wrapped = (degrees: number): number => degrees - 360 * Math.round(degrees / 360);
