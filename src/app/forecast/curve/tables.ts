/** Runs as a table, in the command line's columns and units; and as they are, in SI units and crank degrees. */
import { runsCsv } from '../../../pulse/forecast/csv';
import { isAnswer } from '../quantities';
import type { Run } from '../runs';

/** The command line's columns behind the name of the run: a row each speed that was followed; what could not be has its reason at its end. */
export const curvesCsv = (runs: readonly Run[]): string =>
  runsCsv(runs.map(({ subject, told }) => ({ run: subject.title, curve: told.filter((answer) => answer !== null) })));

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
