/** `pulse DESIGN --imbalance 20,50,100`: what each millimetre between the longest and the shortest primary costs. */

import { USUAL_CELL } from '../../../pulse/forecast/cells';
import { imbalanceCsv } from '../../../pulse/forecast/csv';
import { imbalanceCost } from '../../../pulse/forecast/imbalance';
import { withImbalance } from '../../../pulse/path/variants';
import { writeWhole } from '../../files';
import { UnusableInput } from '../../io';
import { basisLines, doubtLines } from '../../print/pulse/basis';
import { countText, engineText } from '../../print/pulse/curve';
import { imbalanceLines } from '../../print/pulse/imbalance';
import { asJson, type Context, codeOf, isClean, plainCurve, plainSubject, subjectAsked } from '../context';
import { insistKept } from '../insistKept';
import { cellArgument, listArgument, outputsArgument, refuseOthers, speedsArgument, threadsArgument } from '../options';
import { hasNothing, interruptText, session, writeAll } from '../session';

/** mm */
const MOST = 2000;

export async function imbalanceMode(at: Context): Promise<number> {
  const { design, file, given, io, start } = at;
  refuseOthers(given, ['output', 'json', 'on', 'speeds', 'band', 'cells', 'threads', 'imbalance'], '--imbalance');
  const subject = subjectAsked(at);
  const imbalances = listArgument('--imbalance', given.imbalance!, 1, MOST, 'mm');
  const { speeds, band } = speedsArgument(given, subject.engine.speeds);
  const cell = cellArgument(given.cells, USUAL_CELL);
  const threads = threadsArgument(given.threads);
  const outputs = outputsArgument(given.output, ['.csv', '.json'], [{ path: file, what: 'the design' }], io);
  insistKept(outputs['.json']);
  if (subject.path.valves.length < 2)
    throw new UnusableInput(
      '--imbalance: found one primary alone, which cannot differ from others; allowed: two at least',
    );
  const pathWith = (mm: number) => withImbalance(subject.path, mm / 1000, subject.engine.firingOrder);
  for (const mm of [0, ...imbalances]) insistPossible(mm, pathWith);

  return session(io, threads, start, async ({ team, interrupted, watch, seconds }) => {
    const all = (1 + imbalances.length) * speeds.length;
    const progress = watch('speeds', all);
    const how = {
      cell,
      tell: progress.tell,
      stopped: interrupted,
    };
    const cost = await imbalanceCost(team, subject.engine, pathWith, imbalances, speeds, band, how);
    const steps = cost.steps.map(({ curve, ...step }) => ({ ...step, speeds: plainCurve(curve) }));
    const document = { ...plainSubject(subject), ...{ cell, band, ...cost, steps } };
    const isEmpty = hasNothing(interrupted, progress.done);
    const written = writeAll(
      isEmpty
        ? []
        : Object.values(outputs).map(({ name, path }) => ({
            name,
            write: () => writeWhole(path, /\.csv$/i.test(path) ? imbalanceCsv(cost) : asJson(document)),
          })),
      io,
    );
    if (interrupted()) io.err(interruptText(progress.done, all));
    if (given.json) io.out(asJson({ ...document, seconds: seconds(), output: written }));
    else {
      const head = `${engineText(subject)}, ${subject.title}: ${countText(progress.done, 'speed')} followed in ${seconds().toFixed(1)} s`;
      const lines = [
        ...[head, ...subject.notes, ...imbalanceLines(cost)],
        ...doubtLines(cost.steps.flatMap(({ curve }) => curve)),
        ...basisLines(subject, design.engine?.fitted),
        ...written.map((name) => `${name} written`),
      ];
      io.out(`${lines.join('\n')}\n`);
    }
    const isWritten = written.length === Object.keys(outputs).length;
    return codeOf(cost.steps.every(({ curve }) => isClean(curve)) && isWritten);
  });
}

function insistPossible(mm: number, pathWith: (mm: number) => unknown): void {
  try {
    pathWith(mm);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new UnusableInput(`--imbalance: ${mm} mm: ${error.message}; allowed: less, or a header of longer primaries`);
  }
}
