/**
 * The outline that hugs overlapping hulls of discs: their union, every inward corner rounded by the arc of a ball rolled along
 * it from outside, so that it is smooth all round. Worked out on the hulls grown by the ball's radius, where the ball is a point:
 * there each arc and straight is cut where it enters another hull, what lies outside all is kept, and moved back. mm, radians.
 */
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from '../tolerance';
import { boxesApart, boxOf } from './box';
import { angleFrom, arcCorners, type Disc, distanceToHull, type HullArc, hullArcs, onDisc } from './discs';
import { type Edge, type Loop, loopArea, type Point2 } from './loop';
import { meetings, pointOnEdge, shareOn } from './meet';

/** A part of a hull's grown edge. `a` and `b` are the discs it is tangent to, the same one for an arc. */
type Piece = {
  readonly hull: number;
  readonly a: Disc;
  readonly b: Disc;
  /** Outward normals at its start and end: equal for a straight. */
  readonly from: number;
  readonly to: number;
  readonly edge: Edge;
};

/** @returns null where they do not hang together, or lie so that no one outline is found */
export function hug(hulls: readonly (readonly Disc[])[], ball: number): Loop | null {
  const arcs = hulls.map(hullArcs);
  const pieces = arcs.flatMap((_, h) => piecesOf(arcs, h, ball));
  const boxes = pieces.map(({ edge }) => boxOf(edge));
  const near = (k: number) => pieces.filter((_, i) => !boxesApart(boxes[k]!, boxes[i]!));
  const kept = pieces.flatMap((piece, k) =>
    cutUp(piece, near(k), ball).filter((part) => arcs.every((hull, g) => !isCovered(part, hull, g, ball))),
  );
  const loops = chains(kept).map((chain) => rounded(joined(chain), ball));
  if (loops.length === 0) return null;
  return loops.reduce((a, b) => (loopArea(b) > loopArea(a) ? b : a));
}

function arcPiece(hull: number, { disc, from, to }: HullArc, ball: number): Piece {
  const arc = { centre: [disc.x, disc.y] as Point2, radius: disc.r + ball, start: from, turn: to - from };
  const edge = { from: onDisc(disc, from, ball), to: onDisc(disc, to, ball), arc };
  return { hull, a: disc, b: disc, from, to, edge };
}

function piecesOf(arcs: readonly (readonly HullArc[])[], hull: number, ball: number): Piece[] {
  const own = arcs[hull]!;
  return own.flatMap((arc, k) => {
    const next = own[(k + 1) % own.length]!;
    const piece = arcPiece(hull, arc, ball);
    if (own.length === 1) return [piece];
    const edge = { from: piece.edge.to, to: onDisc(next.disc, next.from, ball), arc: null };
    return [piece, { hull, a: arc.disc, b: next.disc, from: arc.to, to: arc.to, edge }];
  });
}

const isArc = ({ edge }: Piece): boolean => edge.arc !== null;

/** At every place where it may pass into another hull or out of it. */
function cutUp(piece: Piece, others: readonly Piece[], ball: number): Piece[] {
  const cuts = new Set<number>();
  for (const other of others) {
    if (other.hull === piece.hull) continue;
    for (const share of cutsBy(piece, other)) if (share > 0 && share < 1) cuts.add(share);
  }
  const shares = [0, ...[...cuts].sort((a, b) => a - b), 1];
  const long = isArc(piece) ? piece.edge.arc!.radius * piece.edge.arc!.turn : Math.hypot(...between(piece.edge));
  return shares.slice(1).flatMap((end, k): Piece[] => {
    const start = shares[k]!;
    if ((end - start) * long < LENGTH_TOLERANCE / 10) return [];
    if (start === 0 && end === 1) return [piece];
    if (!isArc(piece)) {
      const edge = { from: pointOnEdge(piece.edge, start), to: pointOnEdge(piece.edge, end), arc: null };
      return [{ ...piece, edge }];
    }
    const turn = piece.to - piece.from;
    const part = { disc: piece.a, from: piece.from + start * turn, to: piece.from + end * turn };
    return [arcPiece(piece.hull, part, ball)];
  });
}

const between = ({ from, to }: Edge): [number, number] => [to[0] - from[0], to[1] - from[1]];

function cutsBy(piece: Piece, other: Piece): number[] {
  if (isArc(piece) && isArc(other) && piece.a === other.a) {
    const turn = piece.to - piece.from;
    return [other.from, other.to].map((angle) => (angleFrom(angle, piece.from) - piece.from) / turn);
  }
  // A straight touches the circles that it is tangent to, and passes on.
  const tangent = isArc(piece) !== isArc(other) && [piece.a, piece.b].some((d) => d === other.a || d === other.b);
  if (tangent) return [];
  const met = meetings(piece.edge, other.edge).map(({ s }) => s);
  // Of straights on one line, where the other ends.
  const ends = isArc(piece) || isArc(other) ? [] : [other.edge.from, other.edge.to].map((p) => shareOn(piece.edge, p));
  return met.length > 0 ? met : ends;
}

/** Whether it lies inside a hull, or on the edge of one that comes first and shows the same piece. */
function isCovered(piece: Piece, hull: readonly HullArc[], index: number, ball: number): boolean {
  if (index === piece.hull) return false;
  if (isArc(piece)) {
    const middle = (piece.from + piece.to) / 2;
    const same = hull.filter(({ disc }) => disc === piece.a);
    if (same.some(({ from, to }) => angleFrom(middle, from) <= to)) return index < piece.hull;
    if (same.length > 0) return true;
  }
  const away = distanceToHull(hull, pointOnEdge(piece.edge, 0.5), ball);
  if (Math.abs(away) <= LENGTH_TOLERANCE / 10) return index < piece.hull;
  return away < 0;
}

/** Closed rounds of pieces, each beginning where the one before it ends. */
function chains(pieces: readonly Piece[]): Piece[][] {
  const left = new Set(pieces);
  const rounds: Piece[][] = [];
  for (const first of pieces) {
    if (!left.delete(first)) continue;
    const round = [first];
    const isHome = () => apart(round.at(-1)!.edge.to, first.edge.from) < SAME_PLACE;
    while (!isHome()) {
      const end = round.at(-1)!.edge.to;
      const next = [...left].find((p) => apart(end, p.edge.from) < SAME_PLACE);
      if (!next) break;
      left.delete(next);
      round.push(next);
    }
    if (isHome()) rounds.push(round);
  }
  return rounds;
}

const apart = (a: Point2, b: Point2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const SAME_PLACE = 10 * LENGTH_TOLERANCE;

/** Neighbours that are of one arc or one straight, as one. */
function joined(round: readonly Piece[]): Piece[] {
  const first = round.findIndex((piece, k) => !continues(round.at(k - 1)!, piece));
  if (first < 0) return [...round];
  const parts: Piece[] = [];
  for (const piece of [...round.slice(first), ...round.slice(0, first)]) {
    const last = parts.at(-1);
    if (last && continues(last, piece)) parts[parts.length - 1] = together(last, piece);
    else parts.push(piece);
  }
  return parts;
}

const turnBetween = (from: number, to: number): number => angleFrom(to - from, -Math.PI);

const continues = (a: Piece, b: Piece): boolean =>
  isArc(a) === isArc(b) && Math.abs(turnBetween(a.to, b.from)) < ANGLE_TOLERANCE && (isArc(a) ? a.a === b.a : true);

function together(a: Piece, b: Piece): Piece {
  if (!isArc(a)) return { ...a, b: b.b, edge: { from: a.edge.from, to: b.edge.to, arc: null } };
  return { ...a, to: a.to + (b.to - b.from) };
}

/** The pieces moved back by the ball's radius, and where two do not run on into each other, the ball between them. */
function rounded(round: readonly Piece[], ball: number): Loop {
  return round.flatMap((piece, k): [number, number, number][] => {
    const { edge, to } = piece;
    const back = (p: Point2, angle: number): Point2 => [p[0] - ball * Math.cos(angle), p[1] - ball * Math.sin(angle)];
    const own: [number, number, number][] = isArc(piece)
      ? arcCorners(piece.a, piece.from, piece.to)
      : [[...back(edge.from, piece.from), 0]];
    const next = round[(k + 1) % round.length]!;
    const turn = turnBetween(to, next.from);
    if (Math.abs(turn) < ANGLE_TOLERANCE * 10) return own;
    const [x, y] = isArc(piece) ? onDisc(piece.a, to, ball) : edge.to;
    if (ball === 0) return own;
    return [...own, ...arcCorners({ x, y, r: -ball }, to, to + turn)];
  });
}
