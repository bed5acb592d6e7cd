/** A study for people: the best sizes, the worst, and how far its coarse cells can be trusted. mm, N m, kW, rpm. */
import type { SpeedsError } from '../../../pulse/forecast/studyDoubt';
import type { GridError, RankedSize } from '../../../pulse/forecast/studyRank';
import { boreOf } from '../../../pulse/forecast/studySizes';
import { columns } from '../columns';
import { signed } from './against';
import { rpmText } from './curve';

/** So many are shown; all are in the table and in `--json`. */
const SHOWN = 10;

export function studyTable(sizes: readonly RankedSize[]): string {
  const whole = sizes.filter(({ rank }) => rank !== null);
  const shown = whole.length <= SHOWN + 1 ? whole : [...whole.slice(0, SHOWN), whole.at(-1)!];
  const rows = shown.map(({ rank, size, summary }) => [
    ...[String(rank), size.arrangement, mm(size.length), mm(boreOf(size)), mm(size.outsideDiameter)],
    size.outlet === null ? '' : mm(size.outlet),
    ...[summary.mean!.toFixed(2), summary.torque!.value.toFixed(1), rpmText(10 * Math.round(summary.torque!.rpm / 10))],
    (summary.power!.value / 1000).toFixed(1),
    summary.unsettled.length > 0 ? `${summary.unsettled.length} not settled` : '',
  ]);
  const outlet = shown.some(({ size }) => size.outlet !== null) ? 'outlet' : '';
  const head = ['', '', 'primary mm', 'bore', 'tube', outlet, 'mean N m', 'peak', 'at rpm', 'peak kW', ''];
  const align = ['right', 'left', ...Array.from({ length: 8 }, () => 'right' as const), 'left'] as const;
  const left = sizes.length - whole.length;
  const lines = [columns([head, ...rows], align)];
  if (shown.length < whole.length) lines.push(`  ${SHOWN} best and the last of ${whole.length}`);
  if (left > 0) lines.push(`  ${left} of ${sizes.length} sizes not ranked: not every speed of them is answered`);
  return lines.join('\n');
}

const mm = (length: number): string => String(Number(length.toFixed(2)));

/** @param apart by which two means must differ, as both errors have it; null where neither is known */
export function doubtLines(cells: GridError | null, speeds: SpeedsError | null, apart: number | null): string[] {
  return [
    ...gridLines(cells),
    speeds === null
      ? 'What few speeds put wrong is not known: that takes four of them, and two sizes that are answered at each'
      : `Over every second speed alone, two sizes’ means move ${speeds.spread.toFixed(2)} N m from each other: few speeds may put that much wrong, mostly less`,
    ...(apart === null
      ? []
      : [`Sizes whose means are within ${apart.toFixed(2)} N m of each other cannot be told apart here`]),
  ];
}

function gridLines(error: GridError | null): string[] {
  if (!error) return ['Not followed again on fine cells: how far the coarse ones put the ranking wrong is not known'];
  const { checks, spread, keepsOrder } = error;
  const each = checks.map(
    ({ key, coarse, fine, difference, percent }) =>
      `  ${key}: ${coarse.toFixed(2)} coarse, ${fine.toFixed(2)} fine, ${signed(difference, 2)} N m (${signed(percent, 2)} %)`,
  );
  const order = keepsOrder ? 'their order stays' : 'their order changes: this ranking is not to be trusted';
  return [
    `Followed again on fine cells (mean torque): ${order}`,
    ...each,
    `  coarse cells move them by up to ${spread.toFixed(2)} N m from each other`,
  ];
}
