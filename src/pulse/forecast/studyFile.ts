/** A study as text, and text as a study that can be gone on with: or why not, by its place. */
import { z } from 'zod';
import { readJson } from '../../../shared/design/json';
import { describe, insist, type Refusal } from '../../../shared/design/refusal';
import { survey } from '../../../shared/design/survey';
import { ARRANGEMENTS } from '../../../shared/engine/form';
import { byPath, type StudyDocument, type StudyPlan, sizesIn } from './study';

/** Thousands of sizes. */
export const MAX_STUDY_BYTES = 50_000_000;
/** Power is written with all of its digits: more than this, of 1, is no rounding. */
const SAME_POWER = 1e-9;

/** One line for each size's answers, so that versions of it can be compared. */
export function writeStudy({ answers, sizes, fine, ...head }: StudyDocument): string {
  const list = (entries: readonly string[], open: string, close: string, indent: string): string =>
    entries.length === 0
      ? `${open}${close}`
      : `${open}\n${entries.map((e) => `${indent}  ${e}`).join(',\n')}\n${indent}${close}`;
  const record = (of: StudyDocument['answers'], indent: string): string =>
    list(
      Object.entries(of).map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`),
      ...(['{', '}', indent] as const),
    );
  const fields = Object.entries(head).map(([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)}`);
  const size = list(
    sizes.map((s) => JSON.stringify(s)),
    ...(['[', ']', '  '] as const),
  );
  const again = `{\n    "cell": ${fine.cell},\n    "answers": ${record(fine.answers, '    ')}\n  }`;
  return `{\n${[...fields, `  "sizes": ${size}`, `  "answers": ${record(answers, '  ')}`, `  "fine": ${again}`].join(',\n')}\n}\n`;
}

// Every word that can come out is our own: the library's would name types that nobody wrote.
const number = z.number('a number');
const positive = z.number('a number above 0').positive('a number above 0');
const words = z.string('words');
const failure = z.looseObject({ rpm: positive, failed: words });
const answer = z
  .looseObject({
    ...{ rpm: positive, torque: number, power: number, volumetricEfficiency: number, residual: number, pmep: number },
    ...{ exhaustTemperature: positive, settled: z.boolean('true or false'), cycles: number, drift: number },
  })
  .superRefine(({ rpm, torque, power }, { addIssue }) => {
    const owed = (torque * rpm * Math.PI) / 30;
    if (Math.abs(power - owed) <= SAME_POWER * Math.abs(owed)) return;
    const message = `${owed} W, as ${torque} N m at ${rpm} rpm make: one of the three was changed`;
    addIssue({ code: 'custom', path: ['power'], message });
  });
const isObject = (value: unknown): value is object =>
  value !== null && typeof value === 'object' && !Array.isArray(value);
/** Which of both is meant is told by its field, so that a refusal names the number and not the row alone. */
const point = z.unknown().superRefine((value, { addIssue }) => {
  if (!isObject(value)) return addIssue({ code: 'custom', message: 'the answer at a speed, an object' });
  const read = ('failed' in value ? failure : answer).safeParse(value);
  for (const { path, message } of read.error?.issues ?? []) addIssue({ code: 'custom', path: [...path], message });
});
const rising = (speeds: readonly number[]): boolean => speeds.every((rpm, k) => k === 0 || rpm > speeds[k - 1]!);
const points = z
  .array(point, 'a list of answers')
  .refine((all) => rising(all.flatMap((one) => (one as { rpm?: number } | null)?.rpm ?? [])), 'speeds that rise');
const answers = z.record(
  z.string(),
  z.looseObject({ path: z.string('the hash of a gas path'), points }, 'an object with path and points'),
  'an object with the answers of each size',
);
const shape = z.looseObject({
  title: words,
  engine: z.string('the hash of an engine'),
  band: z.tuple([positive, positive], 'two speeds').refine(rising, 'two speeds, the lowest first'),
  speeds: z.array(positive, 'a list of speeds').refine(rising, 'speeds that rise'),
  cell: positive,
  sizes: z.array(
    z.looseObject(
      {
        arrangement: z.enum(ARRANGEMENTS, `one of ${ARRANGEMENTS.join(', ')}`),
        ...{ length: positive, outsideDiameter: positive, wall: positive },
        outlet: z.union([positive, z.null()], 'a number above 0, or null'),
      },
      'a size, an object',
    ),
    'a list of sizes',
  ),
  answers,
  fine: z.looseObject({ cell: positive, answers }, 'an object with cell and answers'),
});

/** @throws DesignError */
export function readStudy(text: string): StudyDocument {
  const value = readJson(text);
  insist(survey(value));
  insist(kindProblems(value));
  const read = shape.safeParse(value);
  if (!read.success)
    insist(
      read.error.issues.map(({ path, message }) => ({
        path: path.map(String).join('/') || 'document',
        found: describe(path.reduce<unknown>((at, step) => (at as Record<PropertyKey, unknown> | null)?.[step], value)),
        allowed: message,
      })),
    );
  return value as StudyDocument;
}

function kindProblems(value: unknown): Refusal[] {
  if (!isObject(value)) return [{ path: 'document', found: describe(value), allowed: 'an object' }];
  const { format, version } = value as { format?: unknown; version?: unknown };
  if (format !== 'evenrun-study') return [{ path: 'format', found: describe(format), allowed: '"evenrun-study"' }];
  if (version === 1) return [];
  const newer = typeof version === 'number' && version > 1;
  const allowed = `1${newer ? '; this file is from a newer Evenrun: update to open it' : ''}`;
  return [{ path: 'version', found: describe(version), allowed }];
}

/**
 * What an earlier study says to a plan, in sentences: what it has besides, and what cannot be gone on with.
 * @param engine hash of the engine that is studied now @param paths hash of each size's gas path now, by its key
 * @throws DesignError where it is of another engine, or on other cells
 */
export function resumeNotes(
  study: StudyDocument,
  engine: string,
  plan: StudyPlan,
  paths: ReadonlyMap<string, string>,
): string[] {
  const anew = 'go on without --resume, into another file';
  if (study.engine !== engine)
    insist([
      {
        path: 'engine',
        found: `a study of another engine, ${study.engine}`,
        allowed: `one of this engine, ${engine}; or ${anew}`,
      },
    ]);
  if (study.cell !== plan.cell)
    insist([
      {
        path: 'cell',
        found: `${study.cell * 1000} mm`,
        allowed: `${plan.cell * 1000} mm, as is followed now: add --cells ${study.cell * 1000}; or ${anew}`,
      },
    ]);
  const keys = sizesIn(study.answers);
  const others = keys.filter((key) => !paths.has(key)).length;
  const known = byPath(study.answers);
  const changed = keys.filter((key) => paths.has(key) && !known.has(paths.get(key)!)).length;
  return [
    ...(others > 0
      ? [`${others} of its ${keys.length} sizes are not asked for now: they are kept, and not ranked`]
      : []),
    ...(changed > 0
      ? [
          `${changed} of its ${keys.length} sizes have another gas path now: they are followed again, and what was found on the other is kept`,
        ]
      : []),
  ];
}
