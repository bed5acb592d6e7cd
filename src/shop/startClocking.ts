/** `start-clocking.csv`: how each tube is turned when it is fitted, from the port's (or merge's) `up` to its first bend. */
import { writeCsv } from '../formats/csv/csv';
import { turnCell } from './angles';
import type { Part } from './part';

export const START_CLOCKING = 'start-clocking.csv';

export const startClocking = (parts: readonly Part[]): string =>
  writeCsv(
    ['runner', 'clocking'],
    parts.map(({ id, table }) => [id, turnCell(table.clocking)]),
  );
