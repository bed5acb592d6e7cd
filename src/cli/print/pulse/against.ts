/** Two torque curves side by side for people. rpm, N m, %. */
import type { Comparison, Difference } from '../../../pulse/forecast/against';
import { columns } from '../columns';
import { bandText, rpmText } from './curve';

/** @param names of what is before and after, as columns are headed */
export function againstTable({ rows, missing }: Comparison, names: readonly [before: string, after: string]): string {
  const shown = [
    ...rows.map((row) => ({ rpm: row.rpm, cells: rowCells(row) })),
    ...missing.map(({ rpm, before, after, failed }) => ({
      rpm,
      cells: [rpmText(rpm), ...[before, after].map((torque) => torque?.toFixed(1) ?? ''), '', '', failed],
    })),
  ].toSorted((a, b) => a.rpm - b.rpm);
  const head = ['rpm', ...names.map((name) => `${name} N m`), 'gain N m', '%', ''];
  return columns([head, ...shown.map(({ cells }) => cells)], ['right', 'right', 'right', 'right', 'right', 'left']);
}

const rowCells = ({ rpm, before, after, gain, percent, trust }: Difference): string[] => [
  ...[rpmText(rpm), before.toFixed(1), after.toFixed(1), signed(gain, 1)],
  ...[percent === null ? '' : signed(percent, 1), settledText(trust)],
];

function settledText({ before, after }: Difference['trust']): string {
  if (before.settled && after.settled) return '';
  if (!before.settled && !after.settled) return 'neither settled';
  return `${before.settled ? 'after' : 'before'} not settled`;
}

export function signed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  if (Number(text) === 0) return (0).toFixed(decimals);
  return value > 0 ? `+${text}` : text;
}

/** N m: less is 0.0 where it is shown. */
const LEAST_SHOWN = 0.05;

export function againstLines({
  greatestGain,
  greatestLoss,
  mean,
  area,
  covered,
  noise,
  isWithinNoise,
}: Comparison): string[] {
  const extreme = (what: string, row: Difference | null): string[] =>
    row && Math.abs(row.gain) >= LEAST_SHOWN ? [`  ${what} ${signed(row.gain, 1)} N m at ${rpmText(row.rpm)} rpm`] : [];
  const share = area && area.before > 0 ? ` (${signed((100 * area.gained) / area.before, 1)} %)` : '';
  const within = isWithinNoise ? `, which is within what settling leaves open (${noise!.toFixed(2)} N m)` : '';
  return [
    ...extreme('greatest gain', greatestGain),
    ...extreme('greatest loss', greatestLoss),
    ...(mean === null || !covered
      ? []
      : [`  mean ${signed(mean, 1)} N m${share} within ${bandText(covered)}${within}`]),
  ];
}
