/**
 * Tables of the space a header must fit: `clearances.csv` (least margin first), `reach.csv`, and where a design has what they are
 * about `wrap.csv`, `sensors.csv`, `removal.csv`. mm, degrees; several names in one cell stand between semicolons.
 */
import type { AccessReport, GapReport, RemovalReport, RoomReport, SensorEntry } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { type Cell, decimal, writeCsv } from '../../formats/csv/csv';

export const CLEARANCES = 'clearances.csv';
export const REACH = 'reach.csv';
export const WRAP = 'wrap.csv';
export const SENSORS = 'sensors.csv';
export const REMOVAL = 'removal.csv';

type TextFile = { readonly name: string; readonly text: string };

/** Clearances and reach always, so that nobody looks for them in vain; a table without rows says that there is nothing. */
export function roomTables(design: Design, { gaps, access, removal, sensors }: RoomReport): TextFile[] {
  return [
    { name: CLEARANCES, text: clearances(gaps ?? { gaps: [], profiles: [] }) },
    { name: REACH, text: reach(access ?? { entries: [], wrap: [] }) },
    ...(access && access.wrap.length > 0 ? [{ name: WRAP, text: wrap(access) }] : []),
    ...(sensors && sensors.length > 0 ? [{ name: SENSORS, text: sensorRows(design, sensors) }] : []),
    ...(removal && removal.pieces.length > 0 ? [{ name: REMOVAL, text: removalRows(removal) }] : []),
  ];
}

const CLEARANCE_COLUMNS = [
  'between',
  'and',
  'kind',
  'gap',
  'required',
  'margin',
  'station',
  'roll',
  'heat',
  'x',
  'y',
  'z',
];

/** `station`, along the first, is empty where that is no runner; `roll` and `heat` (0 cold, 1 hot) where the header stands still. */
const clearances = ({ gaps }: GapReport): string =>
  writeCsv(
    CLEARANCE_COLUMNS,
    gaps.map(({ between, kind, gap, required, margin, station, pose, at }): Cell[] => [
      ...between,
      kind,
      decimal(gap),
      decimal(required),
      decimal(margin),
      station === null ? '' : decimal(station),
      pose ? decimal(pose.rock) : '',
      pose ? decimal(pose.heat) : '',
      ...at.map(decimal),
    ]),
  );

const reach = ({ entries }: AccessReport): string =>
  writeCsv(
    ['id', 'where', 'reach', 'tool', 'by', 'message'],
    entries.map(({ id, where, reach, best, by, message }): Cell[] => [
      id,
      where,
      reach,
      best?.name ?? '',
      list(by),
      message,
    ]),
  );

/** In the order of the tube; a bare stretch has a row for each reason, and those may overlap. */
const wrap = ({ wrap }: AccessReport): string =>
  writeCsv(
    ['runner', 'from', 'to', 'state', 'why', 'of'],
    wrap.flatMap(({ runner, possible, bare }) =>
      [
        ...possible.map(([from, to]) => ({ from, to, state: 'wrapped', why: '', of: '' })),
        ...bare.map((b) => ({ ...b, state: 'bare' })),
      ]
        .sort((a, b) => a.from - b.from)
        .map(({ from, to, state, why, of }): Cell[] => [runner, decimal(from), decimal(to), state, why, of]),
    ),
  );

const SENSOR_COLUMNS = [
  'id',
  'kind',
  'on',
  'at',
  'clock',
  'lean',
  'to_collector',
  'room',
  'beside',
  'spanner',
  'remarks',
];
const PLACE_COLUMNS = ['x', 'y', 'z', 'axis_x', 'axis_y', 'axis_z'];

/** `at`, `clock` as the design has them; the place is the middle of the bung on the tube's surface, the axis the way out. */
const sensorRows = (design: Design, sensors: readonly SensorEntry[]): string =>
  writeCsv(
    [...SENSOR_COLUMNS, ...PLACE_COLUMNS],
    sensors.flatMap((s): Cell[][] => {
      const sensor = design.sensors?.find(({ id }) => id === s.id);
      if (!sensor) return [];
      const { kind, on, at, clock } = sensor;
      return [
        [
          s.id,
          kind,
          'runner' in on ? on.runner : on.merge,
          decimal(at),
          decimal(clock),
          decimal(s.lean),
          s.toCollector === null ? '' : decimal(s.toCollector),
          s.room ? decimal(s.room.gap) : '',
          s.room?.by ?? '',
          s.spanner.fits ? 'fits' : list(s.spanner.by),
          list(s.remarks.map((r) => r.message)),
          ...[...s.at, ...s.axis].map(decimal),
        ],
      ];
    }),
  );

const REMOVAL_COLUMNS = [
  'runners',
  'collectors',
  'flanges',
  'slides',
  'leaves',
  'room',
  'beside',
  'stopped_by',
  'stopped_after',
  'message',
];

/** A row for each piece that comes off by itself. */
const removalRows = ({ pieces }: RemovalReport): string =>
  writeCsv(
    REMOVAL_COLUMNS,
    pieces.map((p): Cell[] => [
      list(p.runners),
      list(p.merges),
      list(p.flanges),
      p.slides ? 'yes' : 'no',
      p.leaves ? 'yes' : 'no',
      p.room ? decimal(p.room.gap) : '',
      p.room?.by ?? '',
      list(p.stopped?.by ?? []),
      p.stopped ? decimal(p.stopped.after) : '',
      p.message,
    ]),
  );

const list = (names: readonly string[]): string => names.join('; ');
