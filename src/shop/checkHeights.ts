/**
 * `check-heights.csv`: a made tube against a ruler, a row for each of its ends and bends. `chord` is between the middles of its
 * ends, `span` the same seen from above where the tube lies by itself on a flat plate; `height` is its underside's over the plate. mm
 */
import { type Cell, decimal, writeCsv } from '../formats/csv/csv';
import type { CheckHeights } from './making/report';

export const CHECK_HEIGHTS = 'check-heights.csv';

export const checkHeightsTable = (tubes: readonly CheckHeights[]): string =>
  writeCsv(
    ['runner', 'chord', 'span', 'at', 'height'],
    tubes.flatMap(({ runner, chord, span, heights }) =>
      heights.map(({ at, height }): Cell[] => [
        runner,
        decimal(chord),
        decimal(span),
        typeof at === 'number' ? `bend ${at}` : at,
        decimal(height),
      ]),
    ),
  );
