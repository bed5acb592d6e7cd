/** Grips on a runner: its bends, its straights, turning about a straight, a new bend. mm, radians. */
import {
  addBend,
  anySquareTo,
  bendTable,
  dot,
  type Header,
  lerp,
  moveBend,
  moveRun,
  type Path,
  pathIn,
  pointAt,
  RADIANS,
  type Range,
  rangeAt,
  ridesEnd,
  ridesStart,
  slideBend,
  slideDirection,
  swung,
  turningSide,
  turnRun,
} from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { angleOf, byOf, type Maker } from './grip';
import { allBends, lockedRunner } from './refusals';

export function gripOfBend(header: Header, runner: string, bend: number): Maker | null {
  const path = routed(header, runner);
  const range = path?.bends[bend];
  if (!path || !range) return null;
  const [atStart, atEnd] = [ridesStart(range), ridesEnd(path, range)];
  const along = slideDirection(path, range, 'in');
  // A bend that rides takes the straight beside it along.
  const also = atStart ? rangeAt(path, range.last + 1) : atEnd ? rangeAt(path, range.first - 1) : range;
  const held = [...new Set([...indices(range), ...indices(also)])].filter((i) => i > 0 && i < path.points.length - 1);
  return {
    held: { kind: 'points', runner, points: held.sort((a, b) => a - b) },
    at: bendMiddle(path, bend),
    motion: { kind: 'space' },
    along,
    ...((atStart || atEnd) && { rail: along }),
    anchor: path.points[range.first]!,
    refusal:
      lockedRunner(path.runner) ??
      (atStart && atEnd ? 'This bend joins two fixed lines. Add a bend first, then there is room to move.' : null),
    ask: (from, amount) => moveBend(from, runner, bend, byOf(amount)),
  };
}

/** @param side which of its two straights it slides along; that one keeps its line */
export function gripOfSlide(header: Header, runner: string, bend: number, side: 'in' | 'out'): Maker | null {
  const moved = gripOfBend(header, runner, bend);
  const path = moved && routed(header, runner);
  const range = path?.bends[bend];
  if (!path || !range) return null;
  const way = slideDirection(path, range, side);
  const { from, to } = arcStations(path, bend);
  const { rail: _, ...rest } = moved;
  return {
    ...rest,
    at: pointAt(path.line, side === 'in' ? from : to).position,
    motion: { kind: 'line', way },
    along: way,
    ask: (design, amount) => slideBend(design, runner, bend, side, dot(byOf(amount), way)),
  };
}

export function gripOfRun(header: Header, runner: string, straight: number): Maker | null {
  const path = routed(header, runner);
  const run = path?.straights[straight];
  if (!path || !run) return null;
  const way = wayOf(path, run);
  const isEnd = run.first === 0 || run.last === path.points.length - 1;
  return {
    held: { kind: 'points', runner, points: bothEnds(path, run) },
    at: straightMiddle(path, run),
    motion: { kind: 'space' },
    along: anySquareTo(way),
    refusal:
      lockedRunner(path.runner) ??
      (isEnd ? 'This straight lies on the line of its end. Move its bend, or the end itself.' : null),
    ask: (from, amount) => moveRun(from, runner, straight, byOf(amount)),
  };
}

export function gripOfTurn(header: Header, runner: string, straight: number): Maker | null {
  const path = routed(header, runner);
  const run = path?.straights[straight];
  if (!path || !run) return null;
  const side = turningSide(path, straight);
  const axis = wayOf(path, run);
  const rotation = bendTable(path.line, path.start.up).rows[straight]?.rotation ?? 0;
  return {
    held: { kind: 'points', runner, points: side ? swung(path, run, side) : [] },
    at: straightMiddle(path, run),
    // Bends before the straight turn its rotation the other way.
    motion: {
      kind: 'turn',
      axis,
      centre: straightMiddle(path, run),
      round: straight > 0 ? rotation * RADIANS * (side === 'before' ? -1 : 1) : 0,
    },
    along: axis,
    refusal:
      lockedRunner(path.runner) ??
      (side ? null : 'No bend beyond this straight is free to turn: the next one keeps to its end’s line.'),
    ask: (from, amount) => turnRun(from, runner, straight, angleOf(amount), side),
  };
}

export function gripOfAdd(header: Header, runner: string, straight: number): Maker | null {
  const path = routed(header, runner);
  const run = path?.straights[straight];
  if (!path || !run) return null;
  const last = path.points.length - 1;
  const length = path.line.straights[path.line.source.indexOf(run.first)]!;
  const held = run.first === 0 ? 2 : run.last === last ? last - 1 : run.last;
  return {
    held: { kind: 'points', runner, points: [held] },
    at: straightMiddle(path, run),
    motion: { kind: 'space' },
    along: anySquareTo(wayOf(path, run)),
    refusal:
      lockedRunner(path.runner) ??
      allBends(path.runner, path.bends.length, path.tooling.maxBends) ??
      (last === 1 ? 'A runner of one straight needs three bends to leave its line. Route it, or move an end.' : null),
    ask: (from, amount) => addBend(from, runner, straight, length / 2, byOf(amount)),
  };
}

function routed(header: Header, runner: string): Path | null {
  const found = header.runners.find((r) => r.runner.id === runner);
  return found?.centerline ? pathIn(header, runner) : null;
}

const indices = ({ first, last }: Range): number[] => Array.from({ length: last - first + 1 }, (_, i) => first + i);
const wayOf = (path: Path, run: Range): Vec3 => path.line.directions[path.line.source.indexOf(run.first)]!;

/** The middle of a bend's arc, on the tube: where a hand would take it. */
function bendMiddle(path: Path, bend: number): Vec3 {
  const { from, to } = arcStations(path, bend);
  return pointAt(path.line, (from + to) / 2).position;
}

/** Where the bend begins and ends along the tube. */
function arcStations(path: Path, bend: number): { readonly from: number; readonly to: number } {
  const range = path.bends[bend]!;
  const { source, straights, turns, radii } = path.line;
  const [first, last] = [source.indexOf(range.first) - 1, source.indexOf(range.last) - 1];
  let station = 0;
  for (let i = 0; i < first; i++) station += straights[i]! + radii[i]! * turns[i]!;
  station += straights[first]!;
  let arc = 0;
  for (let i = first; i <= last; i++) arc += radii[i]! * turns[i]!;
  return { from: station, to: station + arc };
}

function straightMiddle(path: Path, run: Range): Vec3 {
  const leg = path.line.source.indexOf(run.first);
  const { setbacks, straights } = path.line;
  const whole = (setbacks[leg - 1] ?? 0) + straights[leg]! + (setbacks[leg] ?? 0);
  const middle = ((setbacks[leg - 1] ?? 0) + straights[leg]! / 2) / (whole || 1);
  return lerp(path.points[run.first]!, path.points[run.last]!, middle);
}

function bothEnds(path: Path, run: Range): number[] {
  const ends = [...indices(rangeAt(path, run.first)), ...indices(rangeAt(path, run.last))];
  return ends.filter((i) => i > 0 && i < path.points.length - 1);
}
