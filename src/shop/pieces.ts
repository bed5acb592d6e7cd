/** `pieces.csv`: what is sawn from stock bends and bar, a row a piece in the order of the gas; nominal straights beside sawn ones. */
import { type Cell, decimal, writeCsv } from '../formats/csv/csv';
import type { WeldedTube } from './making/report';

export const PIECES = 'pieces.csv';

export const pieces = (tubes: readonly WeldedTube[]): string =>
  writeCsv(
    ['runner', 'piece', 'kind', 'in', 'angle', 'radius', 'out', 'sawn_in', 'sawn_out', 'kerf_angle'],
    tubes.flatMap((tube) =>
      tube.pieces.map((piece): Cell[] => [
        tube.runner,
        piece.id,
        piece.kind,
        decimal(piece.in),
        decimal(piece.angle),
        decimal(piece.radius),
        decimal(piece.out),
        decimal(piece.sawnIn),
        decimal(piece.sawnOut),
        decimal(piece.kerfAngle),
      ]),
    ),
  );
