/** `pulse DESIGN --against OTHER`: what DESIGN has over another design, its own cast manifold, or itself with equal lengths. */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Design } from '../../../../shared/design/types';
import { engineSetup } from '../../../pulse/engine/setup';
import { against, engineDifferences, isSame } from '../../../pulse/forecast/against';
import { USUAL_CELL } from '../../../pulse/forecast/cells';
import { comparisonCsv } from '../../../pulse/forecast/csv';
import { followCurves, type Subject, sumUp } from '../../../pulse/forecast/curve';
import type { SubjectKind } from '../../../pulse/forecast/subject';
import { equalised } from '../../../pulse/path/variants';
import { writeWhole } from '../../files';
import { UnusableInput } from '../../io';
import { againstLines, againstTable } from '../../print/pulse/against';
import { alone, assumedLine, basisLines, calibration, doubtLines } from '../../print/pulse/basis';
import { countText, engineText, summaryLines } from '../../print/pulse/curve';
import { waveLines } from '../../print/pulse/waves';
import { designAt } from '../../readDesign';
import { asJson, type Context, codeOf, isClean, plainCurve, plainSubject, subjectAsked, subjectIn } from '../context';
import { insistKept } from '../insistKept';
import { cellArgument, kindArgument, outputsArgument, refuseOthers, speedsArgument, threadsArgument } from '../options';
import { hasNothing, interruptText, session, writeAll } from '../session';

type Other = {
  readonly name: string;
  readonly subject: Subject;
  readonly design: Design;
  readonly file: string | null;
};

export async function againstMode(at: Context): Promise<number> {
  const { design, name, file, given, io, start } = at;
  refuseOthers(given, ['output', 'json', 'on', 'speeds', 'band', 'cells', 'threads', 'against'], '--against');
  const subject = subjectAsked(at);
  const other = otherOf(at, subject);
  insistComparable(at, subject, other);
  const { speeds, band } = speedsArgument(given, subject.engine.speeds);
  const cell = cellArgument(given.cells, USUAL_CELL);
  const threads = threadsArgument(given.threads);
  const read = [
    { path: file, what: 'the design' },
    ...(other.file === null ? [] : [{ path: other.file, what: 'the other design' }]),
  ];
  const outputs = outputsArgument(given.output, ['.csv', '.json'], read, io);
  insistKept(outputs['.json']);
  const differs = engineDifferences(other.subject.engine, subject.engine);

  return session(io, threads, start, async ({ team, interrupted, watch, seconds }) => {
    const all = 2 * speeds.length;
    const progress = watch('speeds', all);
    // Speed by speed, so that an interrupt leaves whole pairs.
    const waved = speeds.length === 1 && !given.json ? speeds : [];
    const how = { cell, waved, tell: progress.tell, stopped: interrupted, order: 'speeds' } as const;
    const [before, after] = await followCurves(team, [other.subject, subject], speeds, how);
    const comparison = against(before!, after!, band);
    const sums = [before!, after!].map((curve) => sumUp(curve, band));
    const document = {
      ...{ cell, band, engineDiffers: differs, ...comparison },
      before: {
        ...plainSubject(other.subject),
        fitted: other.design.engine?.fitted ?? null,
        summary: sums[0]!,
        speeds: plainCurve(before!),
      },
      after: {
        ...plainSubject(subject),
        fitted: design.engine?.fitted ?? null,
        summary: sums[1]!,
        speeds: plainCurve(after!),
      },
    };
    const isEmpty = hasNothing(interrupted, progress.done);
    const written = writeAll(
      isEmpty
        ? []
        : Object.values(outputs).map(({ name: output, path }) => ({
            name: output,
            write: () => writeWhole(path, /\.csv$/i.test(path) ? comparisonCsv(comparison) : asJson(document)),
          })),
      io,
    );
    if (interrupted()) io.err(interruptText(progress.done, all));
    if (given.json) io.out(asJson({ ...document, seconds: seconds(), output: written }));
    else {
      const mine = other.file === null ? subject.title : `${name} (${subject.title})`;
      const engine = `The engines differ too, in ${differs.join(', ')}: what is gained is not of the exhaust alone`;
      const lines = [
        `${engineText(subject)}: ${mine} against ${other.name}, ${countText(progress.done, 'speed')} followed in ${seconds().toFixed(1)} s`,
        ...(differs.length > 0 ? [engine] : []),
        ...[againstTable(comparison, ['before', 'after']), ...againstLines(comparison)],
        ...waveLines([
          { name: mine, subject, curve: after! },
          { name: other.name, subject: other.subject, curve: before! },
        ]),
        ...[`Before, ${other.name}:`, ...other.subject.notes, ...summaryLines(sums[0]!), ...doubtLines(before!)],
        ...otherBasis(subject, other),
        ...[`After, ${mine}:`, ...subject.notes, ...summaryLines(sums[1]!), ...doubtLines(after!)],
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
    return { name: equal.path.title, subject: equal, design, file: null };
  }
  const kind = (['cast', 'sketch', 'header'] as const satisfies readonly SubjectKind[]).find((one) => one === text);
  if (kind) {
    const own = subjectIn(file, design, kind);
    return { name: own.title, subject: own, design, file: null };
  }
  const path = resolve(io.cwd, text);
  if (!existsSync(path))
    throw new UnusableInput(`--against: ${path}: no such file; allowed: a design, or cast, sketch, header or equal`);
  const other = designAt(path);
  const followed = subjectIn(path, other, kindArgument(given.on));
  return { name: `${text} (${followed.title})`, subject: followed, design: other, file: path };
}

/** Torque of some cylinders beside that of all, and a thing beside itself, are no comparison. */
function insistComparable({ name, design, given }: Context, subject: Subject, other: Other): void {
  const isPart = (whole: Design, { engine }: Subject): boolean =>
    engine.cylinders.length < engineSetup(whole).setup.cylinders.length;
  const [ours, theirs] = [subject, other.subject].map(({ engine }) => engine.cylinders.join(', '));
  const counts = [subject, other.subject].map(({ engine }) => engine.cylinders.length);
  if (counts[0] !== counts[1] && (isPart(design, subject) || isPart(other.design, other.subject)))
    throw new UnusableInput(
      `--against: found ${other.name} with exhaust of cylinders ${theirs} beside ${name} with exhaust of ${ours}: one torque is of a part of the engine; allowed: exhausts of the same cylinders`,
    );
  if (isSame(subject, other.subject) && given.against === 'equal')
    throw new UnusableInput(
      `--against: found "equal" of ${subject.title}, whose lengths are equal already: nothing lies between the two; allowed: another design or exhaust`,
    );
  if (isSame(subject, other.subject))
    throw new UnusableInput(
      `--against: found "${given.against}", which is the very same as what it is compared with (${subject.title}); allowed: another design or exhaust`,
    );
}

/** What the other stands on, where that is not what this one stands on too. */
function otherBasis(subject: Subject, { subject: other, design, file }: Other): string[] {
  const line = assumedLine(alone(other.assumed, subject.assumed), ' of this one alone');
  return [...(file === null ? [] : [calibration(design.engine?.fitted)]), ...(line === null ? [] : [line])];
}
