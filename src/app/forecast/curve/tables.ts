/** Runs as a table and as they are. SI units, crank degrees, as the command line writes them. */
import { isAnswer } from '../quantities';
import type { Run } from '../runs';

const COLUMNS = [
  'torque',
  'power',
  'bmep',
  'imep',
  'pmep',
  'fmep',
  'volumetricEfficiency',
  'residual',
  'lost',
  'reversion',
  'exhaustTemperature',
  'peakPressure',
] as const;

const quoted = (text: string): string => (/[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/** A row each run and speed that was followed; what could not be is left empty, with the reason at its end. */
export function curvesCsv(runs: readonly Run[]): string {
  const rows = runs.flatMap(({ subject, told }) =>
    told.flatMap((answer) => {
      if (!answer) return [];
      const numbers = COLUMNS.map((column) => (isAnswer(answer) ? String(answer[column]) : ''));
      const remark = isAnswer(answer) ? answer.doubts.map(({ message }) => message).join(' ') : answer.failed;
      const settled = isAnswer(answer) ? (answer.settled ? 'yes' : 'no') : '';
      return [[quoted(subject.title), String(answer.rpm), ...numbers, settled, quoted(remark)].join(',')];
    }),
  );
  return `${[['run', 'rpm', ...COLUMNS, 'settled', 'remarks'].join(','), ...rows].join('\n')}\n`;
}

/** Everything that was given, assumed and answered; traces and waves left out. */
export const curvesJson = (runs: readonly Run[]): string =>
  `${JSON.stringify(
    {
      format: 'evenrun-curves',
      version: 1,
      units: 'SI; speeds in rpm, angles in crank degrees from top dead centre of the exhaust stroke',
      runs: runs.map(({ subject, speeds, told }) => ({
        title: subject.title,
        engine: subject.engine,
        path: subject.path,
        assumed: subject.assumed,
        speeds,
        answers: told.flatMap((answer) =>
          answer ? [isAnswer(answer) ? { ...answer, traces: undefined, waves: undefined } : answer] : [],
        ),
      })),
    },
    null,
    1,
  )}\n`;
