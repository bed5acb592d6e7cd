/**
 * `pulse DESIGN --study -o STUDY.json`: many sizes ranked. What is answered is written every few seconds and at an interrupt, and
 * `--resume` goes on from there.
 */
import { existsSync } from 'node:fs';
import { DesignError } from '../../../../shared/design/refusal';
import { writeDesign } from '../../../../shared/design/write';
import { ARRANGEMENTS, type Arrangement } from '../../../../shared/engine/form';
import type { EngineSetup } from '../../../pulse/engine/types';
import { studyCsv } from '../../../pulse/forecast/csv';
import { engineHash } from '../../../pulse/forecast/hash';
import { rulesBeside } from '../../../pulse/forecast/rulesBeside';
import { STUDY_SPEEDS } from '../../../pulse/forecast/speeds';
import { beginStudy, STUDY_CELL, type Study, type StudyDocument, type StudyPlan } from '../../../pulse/forecast/study';
import { alikeBest, apartBy, speedsError } from '../../../pulse/forecast/studyDoubt';
import { MAX_STUDY_BYTES, readStudy, resumeNotes, writeStudy } from '../../../pulse/forecast/studyFile';
import { checkedKeys, gridError, ranked } from '../../../pulse/forecast/studyRank';
import {
  fittingArrangements,
  keyOf,
  MOST_SIZES,
  SIZE_RANGES,
  type StudyChoice,
  type StudySize,
  sketchOf,
  studySizes,
} from '../../../pulse/forecast/studySizes';
import { engineOf } from '../../../pulse/forecast/subject';
import { sketchPath } from '../../../pulse/path/sketch';
import { readText, writeWhole } from '../../files';
import { UnusableInput } from '../../io';
import { basisLines } from '../../print/pulse/basis';
import { bandText, engineText } from '../../print/pulse/curve';
import { ruleLines } from '../../print/pulse/rules';
import { doubtLines, studyTable } from '../../print/pulse/study';
import { naming } from '../../readDesign';
import { bestNotes, chosenOr } from '../best';
import { asJson, type Context, codeOf } from '../context';
import { insistKept } from '../insistKept';
import {
  cellArgument,
  listArgument,
  type Output,
  outputsArgument,
  type PulseArguments,
  refuseOthers,
  speedsArgument,
  threadsArgument,
} from '../options';
import { hasNothing, type Progress, session, writeAll } from '../session';

/** So often what is answered is written, ms. */
const KEEP = 10_000;

export async function studyMode(at: Context): Promise<number> {
  const { design, file, given, io, start } = at;
  const taken = ['output', 'json', 'speeds', 'band', 'cells', 'threads', 'study'] as const;
  refuseOthers(given, [...taken, 'lengths', 'bores', 'arrangements', 'outlets', 'resume', 'best'], '--study');
  const alone = naming(file, () => engineOf(design));
  const { engine } = alone;
  const plan = planOf(at, engine);
  const readingOf = (size: StudySize) => sketchPath(sketchOf(design, engine, size), design);
  const subject = { ...alone, assumed: [...alone.assumed, ...naming(file, () => readingOf(plan.sizes[0]!)).assumed] };
  const threads = threadsArgument(given.threads);
  const read = [{ path: file, what: 'the design' }];
  const outputs = outputsArgument(given.output, ['.csv', '.json'], read, io);
  const kept = outputs['.json'];
  if (!given.resume) insistKept(kept, true);
  const others = [...read, ...(kept ? [{ path: kept.path, what: 'the study' }] : [])];
  const best =
    given.best === undefined ? undefined : outputsArgument(given.best, ['.json'], others, io, '--best')['.json']!;
  const former = given.resume ? formerAt(kept) : null;
  const study = naming(file, () =>
    beginStudy(`${engineText(subject)}, ${bandText(plan.band)}`, engine, (size) => readingOf(size).path, plan, former),
  );
  const beforehand = best ? bestNotes(file, design, engine, plan.sizes) : [];
  const notes = former ? naming(kept!.path, () => resumeNotes(former, engineHash(engine), plan, study.hashes)) : [];

  for (const note of beforehand) io.err(`evenrun: ${note}\n`);
  return session(io, threads, start, async ({ team, interrupted, watch, seconds }) => {
    const progress = watch(`speeds of ${plan.sizes.length} sizes`, study.all, study.done);
    let written = performance.now();
    const keep =
      ({ tell }: Progress) =>
      (): void => {
        tell();
        if (!kept || performance.now() - written < KEEP) return;
        written = performance.now();
        // What cannot be written now may be so at the end, where it is told.
        writeAll([{ name: kept.name, write: () => writeWhole(kept.path, writeStudy(study.document())) }], {
          ...io,
          err() {},
        });
      };
    await study.follow(team, keep(progress), interrupted);
    await followAgain(study, async (keys) => {
      const again = watch('speeds on fine cells', keys.length * plan.speeds.length, study.fineDone(keys));
      await study.followFine(team, keys, keep(again), interrupted);
    });

    const document = study.document();
    const sizes = ranked(document);
    const error = gridError(document);
    const first = sizes.find(({ rank }) => rank === 1);
    const chosen = best && first ? chosenOr(design, engine, first.size) : null;
    const isEmpty = hasNothing(interrupted, study.done);
    const names = writeAll(
      isEmpty
        ? []
        : [
            ...(kept ? [{ name: kept.name, write: () => writeWhole(kept.path, writeStudy(document)) }] : []),
            ...[outputs['.csv']]
              .filter((table) => table !== undefined)
              .map(({ name, path }) => ({
                name,
                write: () => writeWhole(path, studyCsv(document)),
              })),
            ...(chosen !== null && typeof chosen !== 'string'
              ? [{ name: best!.name, write: () => writeWhole(best!.path, writeDesign(chosen)) }]
              : []),
          ],
      io,
    );
    if (typeof chosen === 'string')
      io.err(`evenrun: --best: ${first!.key} cannot be written: ${chosen}; ${best!.name} is not written\n`);
    const rules = rulesBeside(design, plan.band, (first?.size ?? plan.sizes[0]!).arrangement, alikeBest(document));
    const remedy = isEmpty ? '; nothing is written' : kept ? `; --resume goes on from ${kept.name}` : '';
    if (interrupted()) io.err(`evenrun: interrupted with ${study.done} of ${study.all} speeds followed${remedy}\n`);
    if (given.json) {
      const { assumed } = subject;
      const told = [...subject.notes, ...notes];
      io.out(asJson({ ...studyJson(document), rules, assumed, notes: told, seconds: seconds(), output: names }));
    } else {
      const lines = [
        `${document.title}: ${study.done} of ${study.all} speeds of ${sizes.length} sizes in ${seconds().toFixed(1)} s`,
        ...[...subject.notes, ...notes],
        ...(first
          ? [studyTable(sizes), ...doubtLines(error, speedsError(document), apartBy(document))]
          : ['No size is answered at every speed yet: none can be ranked']),
        ...ruleLines(rules),
        ...basisLines(subject, design.engine?.fitted),
        ...names.map((name) => `${name} written`),
      ];
      io.out(`${lines.join('\n')}\n`);
    }
    const isWritten = names.length === Object.keys(outputs).length + (best ? 1 : 0);
    const isSettled = sizes.every(({ rank, summary }) => rank !== null && summary.unsettled.length === 0);
    return codeOf(isSettled && isWritten && (error !== null) === sizes.length > 1 && !interrupted());
  });
}

/** Where every size is whole: an interrupted study is not checked before it is gone on with. */
async function followAgain(study: Study, follow: (keys: readonly string[]) => Promise<void>): Promise<void> {
  if (study.done < study.all) return;
  const keys = checkedKeys(ranked(study.document()));
  if (keys.length > 0) await follow(keys);
}

const doubtJson = (document: StudyDocument) => ({
  speedsError: speedsError(document),
  apartBy: apartBy(document),
});

function studyJson(document: StudyDocument) {
  const { answers: _, fine: __, sizes: ___, ...head } = document;
  return { ...head, sizes: ranked(document), gridError: gridError(document), ...doubtJson(document) };
}

function planOf({ design, file, given }: Context, engine: EngineSetup): StudyPlan {
  const { speeds, band } = speedsArgument(given, engine.speeds, STUDY_SPEEDS);
  const cell = cellArgument(given.cells, STUDY_CELL);
  const choice = choiceOf(given);
  const fitting = naming(file, () => fittingArrangements(design));
  const unfit = choice.arrangements?.find((one) => !fitting.includes(one));
  if (unfit)
    throw new UnusableInput(
      `--arrangements: found "${unfit}", which so many cylinders of one collector do not part into; allowed: ${fitting.join(', ')}`,
    );
  const sizes = naming(file, () => studySizes(design, engine, choice));
  if (sizes.length > MOST_SIZES)
    throw new UnusableInput(
      `--study: found ${sizes.length} sizes; allowed: at most ${MOST_SIZES}: fewer --lengths, --bores, --outlets`,
    );
  if (new Set(sizes.map(keyOf)).size < sizes.length) throw new UnusableInput('--bores: two of them are the same size');
  return { sizes, speeds, band, cell };
}

function choiceOf({ lengths, bores, arrangements, outlets }: PulseArguments): StudyChoice {
  return {
    ...(lengths === undefined ? {} : { lengths: listArgument('--lengths', lengths, ...SIZE_RANGES.lengths, 'mm') }),
    ...(bores === undefined ? {} : { bores: listArgument('--bores', bores, ...SIZE_RANGES.bores, 'mm') }),
    ...(outlets === undefined ? {} : { outlets: listArgument('--outlets', outlets, ...SIZE_RANGES.outlets, 'mm') }),
    ...(arrangements === undefined ? {} : { arrangements: arrangementsArgument(arrangements) }),
  };
}

function arrangementsArgument(text: string): Arrangement[] {
  const found = text.split(',').map((part) => {
    const one = ARRANGEMENTS.find((name) => name === part.trim());
    if (one) return one;
    throw new UnusableInput(`--arrangements: found "${part.trim()}"; allowed: ${ARRANGEMENTS.join(', ')}`);
  });
  return [...new Set(found)];
}

function formerAt(kept: Output | undefined): StudyDocument {
  if (!kept) throw new UnusableInput('--resume: needs -o STUDY.json, the file to go on with');
  if (!existsSync(kept.path))
    throw new UnusableInput(`${kept.path}: no such file; leave --resume out to begin the study`);
  const text = readText(kept.path, MAX_STUDY_BYTES);
  try {
    return readStudy(text);
  } catch (error) {
    if (!(error instanceof DesignError)) throw error;
    const remedy =
      error.path === 'format'
        ? 'name a study with -o'
        : `mend it there, or take out what is wrong and it is followed again; or go on ${ANEW}`;
    throw new UnusableInput(`${kept.path}: ${error.message}; ${remedy}. The file stays as it is`);
  }
}

const ANEW = 'without --resume, into another file (-o)';
