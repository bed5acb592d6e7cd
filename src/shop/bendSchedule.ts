/** `bend-schedule.csv`: what the bender is set to, a row a bend, then the straight that remains. Nominal, before springback. */
import { type Cell, decimal, writeCsv } from '../formats/csv/csv';
import { turnCell } from './angles';
import type { Part } from './part';

export const BEND_SCHEDULE = 'bend-schedule.csv';

export const bendSchedule = (parts: readonly Part[]): string =>
  writeCsv(
    ['runner', 'row', 'length', 'rotation', 'angle', 'radius'],
    parts.flatMap(({ id, table }) =>
      table.rows.map((row, i): Cell[] => [
        id,
        String(i + 1),
        decimal(row.length),
        turnCell(row.rotation),
        decimal(row.angle),
        decimal(row.radius),
      ]),
    ),
  );
