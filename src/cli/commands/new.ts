/**
 * `new [FORM] -o OUT`: a first header from an engine form, or from a few options and usual values for the rest. Exit code 0
 * where every rule holds, 1 where only a best attempt could be drawn.
 */
import { resolve } from 'node:path';
import { draftHeader } from '../../../geometry';
import { MAX_DESIGN_BYTES } from '../../../shared/design/limits';
import { DesignError } from '../../../shared/design/refusal';
import { writeDesign } from '../../../shared/design/write';
import { ARRANGEMENTS, type Arrangement, type EngineForm } from '../../../shared/engine/form';
import { type EngineAnswers, newForm } from '../../../shared/engine/formDefaults';
import { formProblems } from '../../../shared/engine/formProblems';
import { readForm } from '../../../shared/engine/readForm';
import { cylinderListsArgument, cylindersArgument, numberArgument, rangeArgument } from '../arguments';
import { insistWritable, readText, writeWhole } from '../files';
import { FAILS, HOLDS, type Io, UnusableInput } from '../io';
import { printDraft } from '../print/draft';

export type NewArguments = {
  readonly output: string;
  readonly json?: boolean;
  readonly title?: string;
} & { readonly [Option in keyof typeof NUMBERS]?: string } & {
  readonly banks?: string;
  readonly firingOrder?: string;
  readonly rpm?: string;
  readonly arrangement?: string;
  readonly collectors?: string;
};

/** Options that are one number, by their name here and on the command line. */
export const NUMBERS = {
  cylinders: 'how many',
  vee: 'angle between two banks, degrees',
  bore: 'mm',
  stroke: 'mm',
  pitch: 'from port to port along the crankshaft, mm',
  portAngle: 'how far ports point below level, degrees',
  outsideDiameter: 'of the primaries, mm',
  wall: 'of the tubes, mm',
  secondaryDiameter: 'outside, mm',
  length: 'of the primaries, valve to merge, mm',
  secondaryLength: 'mm',
} as const;

export const optionName = (key: string): string => `--${key.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)}`;

export function newCommand(path: string | undefined, options: NewArguments, io: Io): number {
  const output = resolve(io.cwd, options.output);
  insistWritable(output);
  const form = path === undefined ? formFrom(options) : formIn(resolve(io.cwd, path), options);
  const draft = draftHeader(form);
  writeWhole(output, writeDesign(draft.design));
  const { report, pairs, notes } = draft;
  io.out(
    options.json
      ? `${JSON.stringify({ ...report, pairs, notes, output: options.output }, null, 2)}\n`
      : printDraft(draft, options.output),
  );
  return report.ok ? HOLDS : FAILS;
}

function formIn(path: string, options: NewArguments): EngineForm {
  const { output: _, json: __, ...others } = options;
  const extra = Object.keys(others)[0];
  if (extra !== undefined)
    throw new UnusableInput(`${optionName(extra)}: not beside a form; change it in ${path}, or leave the form out`);
  try {
    return readForm(readText(path, MAX_DESIGN_BYTES));
  } catch (error) {
    if (error instanceof DesignError) throw new UnusableInput(`${path}: ${error.message}`);
    throw error;
  }
}

function formFrom(options: NewArguments): EngineForm {
  if (options.cylinders === undefined)
    throw new UnusableInput('new: name a form, or say at least --cylinders; evenrun new --help says more');
  const numbers = Object.fromEntries(
    (Object.keys(NUMBERS) as (keyof typeof NUMBERS)[]).flatMap((key) => {
      const text = options[key];
      return text === undefined ? [] : [[key, numberArgument(optionName(key), text)]];
    }),
  ) as unknown as EngineAnswers;
  const { arrangement, banks, firingOrder, rpm, collectors, title } = options;
  if (arrangement !== undefined && !ARRANGEMENTS.includes(arrangement as Arrangement))
    throw new UnusableInput(`--arrangement: found "${arrangement}"; allowed: ${ARRANGEMENTS.join(', ')}`);
  const form = newForm({
    ...numbers,
    ...(title === undefined ? {} : { title }),
    ...(arrangement === undefined ? {} : { arrangement: arrangement as Arrangement }),
    ...(banks === undefined ? {} : { banks: cylinderListsArgument('--banks', banks) }),
    ...(firingOrder === undefined ? {} : { firingOrder: cylindersArgument('--firing-order', firingOrder) }),
    ...(rpm === undefined ? {} : { rpm: rangeArgument('--rpm', rpm) }),
    ...(collectors === undefined ? {} : { collectors: cylinderListsArgument('--collectors', collectors) }),
  });
  const problems = formProblems(form);
  if (problems.length > 0) throw new UnusableInput(new DesignError(problems).message);
  return form;
}
