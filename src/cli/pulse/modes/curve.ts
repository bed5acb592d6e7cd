/** `pulse DESIGN [-o OUT.csv]`: torque and power over speed. Interrupted, it tells and writes the speeds that it has. */

import { USUAL_CELL } from '../../../pulse/forecast/cells';
import { curveCsv, traceCsv } from '../../../pulse/forecast/csv';
import { followCurve, sumUp } from '../../../pulse/forecast/curve';
import { insistWritable, writeWhole } from '../../files';
import { UnusableInput } from '../../io';
import { basisLines, doubtLines } from '../../print/pulse/basis';
import { countText, curveTable, engineText, summaryLines } from '../../print/pulse/curve';
import { waveLines } from '../../print/pulse/waves';
import { asJson, type Context, codeOf, isClean, plainCurve, plainSubject, subjectAsked } from '../context';
import { insistKept } from '../insistKept';
import {
  cellArgument,
  outputsArgument,
  refuseOthers,
  speedsArgument,
  threadsArgument,
  traceArgument,
} from '../options';
import { hasNothing, interruptText, session, writeAll } from '../session';

/** The traces lie beside the table. @param path ends in `.csv` or `.json` */
const tracePath = (path: string): string => path.replace(/\.(csv|json)$/i, '.trace.csv');

export async function curveMode(at: Context): Promise<number> {
  const { design, file, given, io, start } = at;
  refuseOthers(given, ['output', 'json', 'on', 'speeds', 'band', 'cells', 'threads', 'trace'], 'a torque curve');
  const subject = subjectAsked(at);
  const traced = traceArgument(given.trace);
  const { speeds: asked, band } = speedsArgument(given, subject.engine.speeds);
  const speeds = [...new Set([...asked, ...traced])].sort((a, b) => a - b);
  const cell = cellArgument(given.cells, USUAL_CELL);
  const threads = threadsArgument(given.threads);
  const outputs = outputsArgument(given.output, ['.csv', '.json'], [{ path: file, what: 'the design' }], io);
  insistKept(outputs['.json']);
  const main = outputs['.csv'] ?? outputs['.json'];
  if (traced.length > 0 && !main) throw new UnusableInput('--trace: needs -o, to lie beside it as OUT.trace.csv');
  if (traced.length > 0) insistWritable(tracePath(main!.path));

  return session(io, threads, start, async ({ team, interrupted, watch, seconds }) => {
    const progress = watch('speeds', speeds.length);
    const curve = await followCurve(team, subject, speeds, {
      ...{ cell, traced, waved: speeds.length === 1 && !given.json ? speeds : [] },
      tell: progress.tell,
      stopped: interrupted,
    });
    const summary = sumUp(curve, band);
    const fitted = design.engine?.fitted;
    const document = {
      ...plainSubject(subject),
      ...{ fitted: fitted ?? null, cell, band, summary, speeds: plainCurve(curve) },
    };
    const isEmpty = hasNothing(interrupted, progress.done);
    const written = writeAll(
      isEmpty
        ? []
        : [
            ...Object.values(outputs).map(({ name, path }) => ({
              name,
              write: () => writeWhole(path, /\.csv$/i.test(path) ? curveCsv(curve) : asJson(document)),
            })),
            ...(traced.length > 0
              ? [{ name: tracePath(main!.name), write: () => writeWhole(tracePath(main!.path), traceCsv(curve)) }]
              : []),
          ],
      io,
    );
    if (interrupted()) io.err(interruptText(progress.done, speeds.length));
    const isWritten = written.length === Object.keys(outputs).length + (traced.length > 0 ? 1 : 0);
    if (given.json) io.out(asJson({ ...document, seconds: seconds(), output: written }));
    else {
      const head = `${engineText(subject)}, ${subject.title}: ${countText(progress.done, 'speed')} followed in ${seconds().toFixed(1)} s`;
      const lines = [
        ...[head, ...subject.notes, curveTable(curve), ...summaryLines(summary)],
        ...waveLines([{ name: subject.title, subject, curve }]),
        ...doubtLines(curve),
        ...basisLines(subject, fitted),
        ...written.map((name) => `${name} written`),
      ];
      io.out(`${lines.join('\n')}\n`);
    }
    return codeOf(isClean(curve) && isWritten);
  });
}
