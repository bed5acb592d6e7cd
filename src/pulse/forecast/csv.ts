/**
 * What is built from speeds as tables. Engine people's units: rpm, N m, kW, bar, °C, degrees; shares of 1 stand as they are. A speed
 * without an answer keeps its row, with the reason in the last column and nothing in the others.
 */
import { type Cell, decimal, writeCsv } from '../../formats/csv/csv';
import type { Comparison, Trust } from './against';
import { isAnswer } from './curve';
import type { ImbalanceCost } from './imbalance';
import type { StudyDocument } from './study';
import { speedsError } from './studyDoubt';
import { gridError, type RankedSize, ranked } from './studyRank';
import { boreOf } from './studySizes';
import type { EnergyShares, SpeedAnswer, TorqueCurve } from './types';

const BAR = 1e5;
const ICE = 273.15;

type Column<T> = readonly [name: string, cell: (of: T) => Cell];

const yesNo = (is: boolean): Cell => (is ? 'yes' : 'no');
const optional = (value: number | null): Cell => (value === null ? '' : decimal(value));
const whole = (n: number): Cell => String(n);

const SHARES: readonly (keyof EnergyShares)[] = [
  'brake',
  'friction',
  'coolant',
  'port',
  'exhaust',
  'unburnt',
  'unaccounted',
];

const OF_ANSWER: readonly Column<SpeedAnswer>[] = [
  ['torque_nm', (a) => decimal(a.torque)],
  ['power_kw', (a) => decimal(a.power / 1000)],
  ['bmep_bar', (a) => decimal(a.bmep / BAR)],
  ['imep_bar', (a) => decimal(a.imep / BAR)],
  ['pmep_bar', (a) => decimal(a.pmep / BAR)],
  ['fmep_bar', (a) => decimal(a.fmep / BAR)],
  ['volumetric_efficiency', (a) => decimal(a.volumetricEfficiency)],
  ['residual', (a) => decimal(a.residual)],
  ['lost', (a) => decimal(a.lost)],
  ['reversion', (a) => decimal(a.reversion)],
  ['exhaust_temperature_c', (a) => decimal(a.exhaustTemperature - ICE)],
  ['peak_pressure_bar', (a) => decimal(a.peakPressure / BAR)],
  ...SHARES.map((share): Column<SpeedAnswer> => [`share_${share}`, (a) => decimal(a.shares[share])]),
  ['settled', (a) => yesNo(a.settled)],
  ['cycles', (a) => whole(a.cycles)],
  ['drift', (a) => decimal(a.drift)],
  ['doubts', (a) => a.doubts.map(({ kind }) => kind).join(' ')],
];

const CURVE_NAMES = ['rpm', ...OF_ANSWER.map(([name]) => name), 'failed'];

const curveRows = (curve: TorqueCurve): readonly Cell[][] =>
  curve.map((point) =>
    isAnswer(point)
      ? [decimal(point.rpm), ...OF_ANSWER.map(([, cell]) => cell(point)), '']
      : [decimal(point.rpm), ...OF_ANSWER.map((): Cell => ''), point.failed],
  );

export const curveCsv = (curve: TorqueCurve): string => writeCsv(CURVE_NAMES, curveRows(curve));

/** Several curves under one another, each row behind the name of its run. */
export const runsCsv = (runs: readonly { readonly run: string; readonly curve: TorqueCurve }[]): string =>
  writeCsv(
    ['run', ...CURVE_NAMES],
    runs.flatMap(({ run, curve }) => curveRows(curve).map((row) => [run, ...row])),
  );

/** Both curves and what lies between them, a row for each speed; where only one answered, its torque, with why under `failed`. */
export function comparisonCsv({ rows, missing }: Comparison): string {
  const names = [
    ...['rpm', 'before_nm', 'after_nm', 'gain_nm', 'gain_percent'],
    ...['before_settled', 'after_settled', 'before_doubts', 'after_doubts', 'failed'],
  ];
  const table = [
    ...rows.map((row) => ({ ...row, failed: '' })),
    ...missing.map((row) => ({ ...row, gain: null, percent: null })),
  ];
  const settled = (trust: Trust | null): Cell => (trust ? yesNo(trust.settled) : '');
  const doubts = (trust: Trust | null): Cell => trust?.doubts.join(' ') ?? '';
  return writeCsv(
    names,
    table
      .toSorted((a, b) => a.rpm - b.rpm)
      .map(({ rpm, before, after, gain, percent, trust, failed }) => [
        ...[rpm, before, after, gain, percent].map(optional),
        ...[settled(trust.before), settled(trust.after), doubts(trust.before), doubts(trust.after), failed],
      ]),
  );
}

/** A row for each size, best first; what was followed again on fine cells has that mean too. */
export function studyCsv(study: StudyDocument): string {
  const fine = new Map(gridError(study)?.checks.map(({ key, fine: mean }) => [key, mean]));
  const half = new Map(speedsError(study)?.checks.map((check) => [check.key, check.half]));
  const columns: readonly Column<RankedSize>[] = [
    ['rank', ({ rank }) => (rank === null ? '' : whole(rank))],
    ['arrangement', ({ size }) => size.arrangement],
    ['primary_length_mm', ({ size }) => decimal(size.length)],
    ['primary_bore_mm', ({ size }) => decimal(boreOf(size))],
    ['outside_diameter_mm', ({ size }) => decimal(size.outsideDiameter)],
    ['wall_mm', ({ size }) => decimal(size.wall)],
    ['outlet_bore_mm', ({ size }) => (size.outlet === null ? '' : decimal(size.outlet))],
    ['area_nm_rpm', ({ summary }) => optional(summary.area)],
    ['mean_nm', ({ summary }) => optional(summary.mean)],
    ['mean_on_fine_cells_nm', ({ key }) => optional(fine.get(key) ?? null)],
    ['mean_on_every_second_speed_nm', ({ key }) => optional(half.get(key) ?? null)],
    ['peak_torque_nm', ({ summary }) => optional(summary.torque?.value ?? null)],
    ['peak_torque_rpm', ({ summary }) => optional(summary.torque?.rpm ?? null)],
    ['peak_power_kw', ({ summary }) => optional(summary.power && summary.power.value / 1000)],
    ['peak_power_rpm', ({ summary }) => optional(summary.power?.rpm ?? null)],
    ['speeds_unsettled', ({ summary }) => whole(summary.unsettled.length)],
    ['speeds_failed', ({ summary }) => whole(summary.missing.length)],
  ];
  return writeCsv(
    columns.map(([name]) => name),
    ranked(study).map((row) => columns.map(([, cell]) => cell(row))),
  );
}

/** Cylinders over their cycles, a row each degree, at every speed that has traces. */
export function traceCsv(curve: TorqueCurve): string {
  const names = [
    ...['rpm', 'cylinder', 'angle_deg', 'pressure_bar', 'temperature_c', 'volume_cm3'],
    ...['exhaust_port_bar', 'intake_port_bar', 'exhaust_flow_g_s', 'intake_flow_g_s'],
    ...['exhaust_lift_mm', 'intake_lift_mm'],
  ];
  const rows = curve
    .filter(isAnswer)
    .flatMap(({ rpm, traces }) =>
      (traces ?? []).flatMap((t) =>
        Array.from(t.angle, (angle, k): Cell[] => [
          ...[decimal(rpm), whole(t.cylinder), decimal(angle)],
          ...[t.pressure[k]! / BAR, t.temperature[k]! - ICE, t.volume[k]! * 1e6].map(decimal),
          ...[t.exhaustPort[k]! / BAR, t.intakePort[k]! / BAR].map(decimal),
          ...[t.exhaustFlow[k]! * 1000, t.intakeFlow[k]! * 1000].map(decimal),
          ...[t.exhaustLift[k]! * 1000, t.intakeLift[k]! * 1000].map(decimal),
        ]),
      ),
    );
  return writeCsv(names, rows);
}

/** A row for each imbalance and speed. */
export function imbalanceCsv({ steps }: ImbalanceCost): string {
  const names = ['imbalance_mm', 'rpm', 'torque_nm', 'mean_nm', 'cost_nm', 'settled', 'doubts', 'failed'];
  const rows = steps.flatMap(({ imbalance, curve, mean, cost }) =>
    curve.map((point): Cell[] => [
      ...[decimal(imbalance), decimal(point.rpm), isAnswer(point) ? decimal(point.torque) : ''],
      ...[optional(mean), optional(cost)],
      ...(isAnswer(point)
        ? [yesNo(point.settled), point.doubts.map(({ kind }) => kind).join(' '), '']
        : ['', '', point.failed]),
    ]),
  );
  return writeCsv(names, rows);
}
