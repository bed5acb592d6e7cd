/** `pulse DESIGN --fit -o OUT.evenrun.json`: finds from the torque curve measured on this engine how its numbers differ from usual ones. */
import type { Design } from '../../../../shared/design/types';
import { writeDesign } from '../../../../shared/design/write';
import { engineSetup } from '../../../pulse/engine/setup';
import type { Subject } from '../../../pulse/forecast/curve';
import { type Fit, type FitProgress, fitBaseline, fitOutlook } from '../../../pulse/forecast/fit';
import { measuredOf } from '../../../pulse/forecast/fit/measured';
import { writeWhole } from '../../files';
import { FAILS, UnusableInput } from '../../io';
import { basisLines } from '../../print/pulse/basis';
import { engineText } from '../../print/pulse/curve';
import { fitTable } from '../../print/pulse/fit';
import { naming } from '../../readDesign';
import { asJson, type Context, codeOf, isClean, plainCurve, subjectIn } from '../context';
import { type Output, outputsArgument, refuseOthers, threadsArgument } from '../options';
import { session, writeAll } from '../session';

export async function fitMode({ design, file, given, io, start }: Context): Promise<number> {
  refuseOthers(given, ['output', 'json', 'threads', 'fit'], '--fit');
  naming(file, () => measuredOf(design));
  const subject = subjectIn(file, design, design.engine?.baseline?.on ?? 'cast');
  const points = naming(file, () => measuredOf(design, shareOf(design, subject)));
  const threads = threadsArgument(given.threads);
  // Over the design itself too: nothing of it but the factors changes.
  const output = outputsArgument(given.output, ['.json'], [], io)['.json'];
  if (!output)
    throw new UnusableInput('-o, --output: say where to write the calibrated design: --fit -o OUT.evenrun.json');

  return session(io, threads, start, async ({ team, interrupted, watch, seconds }) => {
    let { likely } = fitOutlook(points);
    const progress = watch('speeds', () => likely);
    const tell = (now: FitProgress): void => {
      likely = now.likely;
      progress.tell();
    };
    const fit = await fitBaseline(subject, points, team, tell, interrupted);
    if ('failed' in fit) {
      io.err(`evenrun: ${fit.failed.replace(/\.$/, '')}; nothing is written\n`);
      return FAILS;
    }
    const fitted = { ...design, engine: { ...design.engine, fitted: fit.fitted } };
    // Stopped before anything was better than usual: the usual factors are nothing that was found.
    const isBetter = !fit.stopped || Object.values(fit.fitted).some((factor) => factor !== 1);
    const isFound = isBetter && fit.failure === null;
    const { name, path } = fit.stopped ? unfinished(output) : output;
    const written = isFound ? writeAll([{ name, write: () => writeWhole(path, writeDesign(fitted)) }], io) : [];
    if (fit.failure !== null) io.err(`evenrun: the fit failed: ${fit.failure}; nothing is written\n`);
    else if (fit.stopped) {
      const left = written.length > 0 ? `the best so far is written to ${name}` : 'nothing is written';
      io.err(`evenrun: interrupted before the fit was done; ${left}\n`);
    }
    const { title, notes, assumed } = subject;
    if (given.json) io.out(asJson({ title, notes, assumed, ...plainFit(fit), seconds: seconds(), output: written }));
    else {
      const lines = [
        `${engineText(subject)}, ${subject.title}: ${progress.done} speeds followed in ${seconds().toFixed(1)} s`,
        ...[...subject.notes, fitTable(fit), fit.message],
        ...basisLines(subject, isFound ? fit.fitted : undefined),
        ...written.map((name) => `${name} written`),
      ];
      io.out(`${lines.join('\n')}\n`);
    }
    return codeOf(!fit.stopped && isFound && written.length === 1 && fit.atBound.length === 0 && isClean(fit.curve));
  });
}

/** Beside what was asked for, and in its place never: a name that says so, as the factors look like any others. */
function unfinished({ name, path }: Output): Output {
  const beside = (file: string): string => file.replace(/(\.evenrun)?\.json$/i, '.unfinished$&');
  return { name: beside(name), path: beside(path) };
}

/** Of the engine's cylinders that the path takes the gas of. */
const shareOf = (design: Design, { engine }: Subject): number =>
  engine.cylinders.length / engineSetup(design).setup.cylinders.length;

const plainFit = ({ curve, ...rest }: Fit) => ({ ...rest, speeds: plainCurve(curve) });
