/** Two torque curves side by side for people. rpm, N m, %. */
import type { Comparison, Difference } from '../../../pulse/forecast/against';
import type { Band } from '../../../pulse/forecast/speeds';
import { columns } from '../columns';
import { bandText, rpmText } from './curve';

/** @param names of what is before and after, as columns are headed */
export function againstTable({ rows, missing }: Comparison, names: readonly [before: string, after: string]): string {
  const shown = [
    ...rows.map((row) => ({ rpm: row.rpm, cells: rowCells(row) })),
    ...missing.map((rpm) => ({ rpm, cells: [rpmText(rpm), '', '', 'failed', ''] })),
  ].toSorted((a, b) => a.rpm - b.rpm);
  const head = ['rpm', ...names.map((name) => `${name} N m`), 'gain N m', '%'];
  return columns([head, ...shown.map(({ cells }) => cells)], ['right', 'right', 'right', 'right', 'right']);
}

const rowCells = ({ rpm, before, after, gain, percent }: Difference): string[] => [
  ...[rpmText(rpm), before.toFixed(1), after.toFixed(1), signed(gain, 1)],
  percent === null ? '' : signed(percent, 1),
];

export function signed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  if (Number(text) === 0) return (0).toFixed(decimals);
  return value > 0 ? `+${text}` : text;
}

export function againstLines({ greatestGain, greatestLoss, mean, area }: Comparison, band: Band): string[] {
  const extreme = (what: string, row: Difference | null): string[] =>
    row ? [`  ${what} ${signed(row.gain, 1)} N m at ${rpmText(row.rpm)} rpm`] : [];
  const share = area && area.before > 0 ? ` (${signed((100 * area.gained) / area.before, 1)} %)` : '';
  return [
    ...extreme('greatest gain', greatestGain),
    ...extreme('greatest loss', greatestLoss),
    ...(mean === null ? [] : [`  mean ${signed(mean, 1)} N m${share} within ${bandText(band)}`]),
  ];
}
