/**
 * What it costs to saw and turn by what a tape and a dial can show: every cut rounded to the one, every arc and turn to the other,
 * the tube welded from those and its far end held against nominal. mm, degrees.
 */
import { angleBetween, type Centerline, DEGREES, distance, type Pose } from '../../../../geometry';
import type { WorkshopDefaults } from '../../../../shared/stock/workshop';
import { toStep } from '../../toStep';
import type { Piece, Rounded } from '../report';
import { rebuildMarched, type Welded } from './rebuild';
import { type Trims, type Welds, weldedStraights } from './sawn';

/** @param wholes of each piece, the stock angle that it is the whole of: nothing is cut there, so nothing is rounded */
export function roundedTube(
  nominal: Centerline,
  start: Pose,
  tube: Welded,
  wholes: readonly (number | undefined)[],
  settings: Welds & Pick<WorkshopDefaults, 'tape' | 'dial'>,
  trims: Trims,
): Rounded {
  const { tape, dial } = settings;
  const sawn = tube.pieces.map((piece: Piece, k) => ({
    kind: piece.kind,
    in: toStep(piece.sawnIn, tape),
    angle: wholes[k] ?? toStep(piece.angle, dial),
    radius: piece.radius,
    out: toStep(piece.sawnOut, tape),
  }));
  // What is trimmed off is measured by the same tape.
  const trimmed = { start: toStep(trims.start, tape), end: toStep(trims.end, tape) };
  const made = rebuildMarched(
    start,
    weldedStraights(sawn, settings, trimmed),
    toStep(tube.start.turn, dial),
    tube.joints.map(({ turn }) => toStep(turn, dial)),
    tube.startTrim,
  );
  return {
    tape,
    dial,
    position: distance(made.points.at(-1)!, nominal.points.at(-1)!),
    angle: angleBetween(made.directions.at(-1)!, nominal.directions.at(-1)!) * DEGREES,
    length: made.length - nominal.length,
  };
}
