/**
 * The proof of the pieces: marching along them from the runner's start, turning at each joint by its clocking, as a builder who
 * tacks them together does. mm, degrees.
 */
import {
  type BendRow,
  type BendTable,
  type Centerline,
  centerline,
  fromBendTable,
  type Pose,
} from '../../../../geometry';
import type { Joint, Piece, WeldedTube } from '../report';

export type Marched = Pick<Piece, 'in' | 'angle' | 'radius' | 'out'>;
export type Welded = Pick<WeldedTube, 'pieces' | 'joints' | 'start' | 'startTrim'>;

/** The centerline as the design has it, from its own start: what the tube begins farther in or out is left aside. */
export const rebuildPieces = (start: Pose, tube: Welded): Centerline =>
  rebuildMarched(
    start,
    tube.pieces,
    tube.start.turn,
    tube.joints.map((joint) => joint.turn),
    tube.startTrim,
  );

export function rebuildMarched(
  start: Pose,
  pieces: readonly Marched[],
  startTurn: number,
  turns: readonly Joint['turn'][],
  startTrim = 0,
): Centerline {
  const { points, radii } = fromBendTable(start, tableOf(pieces, startTurn, turns, startTrim));
  return centerline(points, radii);
}

/** A scribed line is on the outside of its bend, and bend tables count toward the inside. */
function tableOf(
  pieces: readonly Marched[],
  startTurn: number,
  turns: readonly number[],
  startTrim: number,
): BendTable {
  const rows: BendRow[] = [];
  let length = -startTrim;
  let rotation = 0;
  for (const [k, piece] of pieces.entries()) {
    length += piece.in;
    if (k > 0) rotation += turns[k - 1]!;
    if (piece.angle > 0) {
      rows.push({ length, rotation, angle: piece.angle, radius: piece.radius });
      length = 0;
      rotation = 0;
    }
    length += piece.out;
  }
  rows.push({ length, rotation: 0, angle: 0, radius: 0 });
  return { clocking: startTurn + 180, rows };
}
