/** `pulse DESIGN --against OTHER`: what DESIGN has over another design, its own cast manifold, or itself with equal lengths. */
import { resolve } from 'node:path';
import { against, engineDifferences } from '../../../pulse/forecast/against';
import { comparisonCsv } from '../../../pulse/forecast/csv';
import { followCurves, type Subject, sumUp } from '../../../pulse/forecast/curve';
import type { SubjectKind } from '../../../pulse/forecast/subject';
import { equalised } from '../../../pulse/path/variants';
import { writeWhole } from '../../files';
import { againstLines, againstTable } from '../../print/pulse/against';
import { basisLines, doubtLines } from '../../print/pulse/basis';
import { engineText, summaryLines } from '../../print/pulse/curve';
import { designAt } from '../../readDesign';
import { asJson, type Context, codeOf, isClean, plainCurve, plainSubject, subjectAsked, subjectIn } from '../context';
import { cellArgument, kindArgument, outputsArgument, refuseOthers, speedsArgument, threadsArgument } from '../options';
import { session, writeAll } from '../session';

/** m */
const CELL = 0.01;

type Other = { readonly name: string; readonly subject: Subject; readonly file: string | null };

export async function againstMode(at: Context): Promise<number> {
  const { design, name, file, given, io, start } = at;
  refuseOthers(given, ['output', 'json', 'on', 'speeds', 'band', 'cells', 'threads', 'against'], '--against');
  const subject = subjectAsked(at);
  const other = otherOf(at, subject);
  const { speeds, band } = speedsArgument(given, subject.engine.speeds);
  const cell = cellArgument(given.cells, CELL);
  const threads = threadsArgument(given.threads);
  const read = [
    { path: file, what: 'the design' },
    ...(other.file === null ? [] : [{ path: other.file, what: 'the other design' }]),
  ];
  const outputs = outputsArgument(given.output, ['.csv', '.json'], read, io);
  const differs = engineDifferences(other.subject.engine, subject.engine);

  return session(io, threads, start, async ({ team, interrupted, watch, seconds }) => {
    const all = 2 * speeds.length;
    const progress = watch('speeds', all);
    const how = {
      cell,
      tell: progress.tell,
      stopped: interrupted,
    };
    const [before, after] = await followCurves(team, [other.subject, subject], speeds, how);
    const comparison = against(before!, after!, band);
    const sums = [before!, after!].map((curve) => sumUp(curve, band));
    const document = {
      ...{ cell, band, engineDiffers: differs, ...comparison },
      before: { ...plainSubject(other.subject), summary: sums[0]!, speeds: plainCurve(before!) },
      after: { ...plainSubject(subject), summary: sums[1]!, speeds: plainCurve(after!) },
    };
    const written = writeAll(
      Object.values(outputs).map(({ name: output, path }) => ({
        name: output,
        write: () => writeWhole(path, /\.csv$/i.test(path) ? comparisonCsv(comparison) : asJson(document)),
      })),
      io,
    );
    if (interrupted()) io.err(`evenrun: interrupted with ${progress.done} of ${all} speeds followed\n`);
    if (given.json) io.out(asJson({ ...document, seconds: seconds(), output: written }));
    else {
      const mine = other.file === null ? subject.title : `${name} (${subject.title})`;
      const engine = `The engines differ too, in ${differs.join(', ')}: what is gained is not of the exhaust alone`;
      const lines = [
        `${engineText(subject)}: ${mine} against ${other.name}, ${progress.done} speeds followed in ${seconds().toFixed(1)} s`,
        ...subject.notes,
        ...(differs.length > 0 ? [engine] : []),
        ...[againstTable(comparison, ['before', 'after']), ...againstLines(comparison, band)],
        ...[`Before, ${other.name}:`, ...summaryLines(sums[0]!), ...doubtLines(before!)],
        ...[`After, ${mine}:`, ...summaryLines(sums[1]!), ...doubtLines(after!)],
        ...basisLines(subject, design.engine?.fitted),
        ...written.map((output) => `${output} written`),
      ];
      io.out(`${lines.join('\n')}\n`);
    }
    const isWritten = written.length === Object.keys(outputs).length;
    return codeOf(isClean(before!) && isClean(after!) && isWritten);
  });
}

/** A word for what the design itself has, else another design; one called by such a word is `./cast`. */
function otherOf({ design, file, given, io }: Context, subject: Subject): Other {
  const text = given.against!;
  if (text === 'equal') {
    const equal = { ...subject, path: { ...equalised(subject.path), title: `${subject.title}, lengths equal` } };
    return { name: equal.path.title, subject: equal, file: null };
  }
  const kind = (['cast', 'sketch', 'header'] as const satisfies readonly SubjectKind[]).find((one) => one === text);
  if (kind) {
    const own = subjectIn(file, design, kind);
    return { name: own.title, subject: own, file: null };
  }
  const path = resolve(io.cwd, text);
  const other = subjectIn(path, designAt(path), kindArgument(given.on));
  return { name: `${text} (${other.title})`, subject: other, file: path };
}
