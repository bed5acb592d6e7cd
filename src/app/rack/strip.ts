/**
 * A runner unrolled: its centerline pulled straight, from the valve seat to the collector, cut where straights and bends
 * meet. mm along the strip; angles in degrees, as they are labelled. Pure, so that the picture can be tested.
 */
import {
  type BendTable,
  bends,
  DEGREES,
  type ResolvedRunner,
  STRAIGHT_TOLERANCE,
  straightIndices,
} from '../../../geometry';

type Span = { readonly from: number; readonly to: number };

/** The part inside the head: it counts in the length and cannot be bent. */
export type HeadPiece = Span & { readonly kind: 'head' };

export type StraightPiece = Span & {
  readonly kind: 'straight';
  /** Among the runner's straights, as `straightIndices` counts them. */
  readonly index: number;
  /** Signed: negative where the bends beside it overlap. */
  readonly length: number;
  /** The least that the tooling allows here: the clamp's grip, or what leaving a port or entering a merge needs. */
  readonly least: number;
  readonly short: boolean;
};

export type BendPiece = Span & {
  readonly kind: 'bend';
  /** Among the runner's bends, continuous ones counted once. */
  readonly index: number;
  readonly angle: number;
  readonly radius: number;
  /** Turn of this bend's plane from the one before; for the first bend, its clocking from the start's up. */
  readonly rotation: number;
};

export type Piece = HeadPiece | StraightPiece | BendPiece;

export type Strip = {
  readonly id: string;
  readonly group: string | null;
  readonly pieces: readonly Piece[];
  /** In the head plus the centerline, mm; null until the runner is laid. */
  readonly length: number | null;
};

export function stripOf(resolved: ResolvedRunner, table: BendTable | undefined): Strip {
  const { runner, centerline: line, lengthInHead, tooling } = resolved;
  const group = runner.group ?? null;
  const pieces: Piece[] = lengthInHead > 0 ? [{ kind: 'head', from: 0, to: lengthInHead }] : [];
  if (!line || !table) return { id: runner.id, group, pieces, length: null };

  const between = bends(line);
  const ordered = straightIndices(line);
  const last = ordered.length - 1;
  let at = lengthInHead;
  ordered.forEach((source, index) => {
    const length = line.straights[source]!;
    const ends = [index === 0 ? tooling.firstStraight : 0, index === last ? tooling.lastStraight : 0];
    const least = index === 0 || index === last ? Math.max(...ends) : tooling.betweenStraight;
    const short = length < least - STRAIGHT_TOLERANCE;
    pieces.push({ kind: 'straight', index, from: at, to: at + length, length, least, short });
    at += length;
    const bend = between[index];
    if (!bend) return;
    const arc = bend.radius * bend.angle;
    const rotation = index === 0 ? table.clocking : table.rows[index]!.rotation;
    pieces.push({
      kind: 'bend',
      index,
      from: at,
      to: at + arc,
      angle: bend.angle * DEGREES,
      radius: bend.radius,
      rotation,
    });
    at += arc;
  });
  return { id: runner.id, group, pieces, length: lengthInHead + line.length };
}
