/**
 * `machine-schedule.csv`: every bent tube's rows from both its ends, nominal columns beside what the machine is set to, a row a
 * bend, then the straight that remains. Real tubes: the first straight is the one on the tube, marks count from its sawn end. mm, degrees.
 */
import { type Cell, decimal, writeCsv } from '../formats/csv/csv';
import { turnCell } from './angles';
import type { BentTube, MachineRow } from './making/report';

export const MACHINE_SCHEDULE = 'machine-schedule.csv';

const COLUMNS = [
  'tube',
  'end',
  'row',
  'length',
  'rotation',
  'angle',
  'radius',
  'feed',
  'turn',
  'dial',
  'set',
  'mark',
  'mark_end',
  'grip',
  'clamps',
];

export const machineSchedule = (tubes: readonly BentTube[]): string =>
  writeCsv(
    COLUMNS,
    tubes.flatMap(({ id, fromStart, fromEnd }) => [...rowsOf(id, 'start', fromStart), ...rowsOf(id, 'end', fromEnd)]),
  );

const rowsOf = (id: string, end: string, rows: readonly MachineRow[]): Cell[][] =>
  rows.map((row, i): Cell[] => [
    id,
    end,
    String(i + 1),
    decimal(row.length),
    turnCell(row.rotation),
    decimal(row.angle),
    decimal(row.radius),
    decimal(row.feed),
    turnCell(row.turn),
    decimal(row.dial),
    decimal(row.set),
    decimal(row.mark),
    decimal(row.markEnd),
    decimal(row.grip),
    row.clamps ? 'yes' : 'no',
  ]);
