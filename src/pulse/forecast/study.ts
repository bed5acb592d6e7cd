/**
 * A study: many sizes of a header followed at the same speeds on coarse cells, so that they can be ranked before one is chosen. It is
 * a plain document at any time, so that it can be written, read and gone on with. Which team follows it changes no number of it.
 */
import type { GasPath } from '../path/types';
import { USUAL_CELL } from './cells';
import { jobsOf, type Subject } from './curve';
import { engineHash, hashOf } from './hash';
import type { SpeedJob, Team } from './job';
import type { Band } from './speeds';
import { keyOf, type StudySize } from './studySizes';
import type { SpeedAnswer, SpeedFailure } from './types';

/** m. Half as many cells as usual: about a quarter of the work. */
export const STUDY_CELL = 2 * USUAL_CELL;
/** m, on which the best, the middle and the worst size are followed again: half as long as the study's own, whichever these are. */
export const fineCell = ({ cell }: Pick<StudyDocument, 'cell'>): number => cell / 2;

export type StudyPlan = {
  readonly sizes: readonly StudySize[];
  readonly speeds: readonly number[];
  readonly band: Band;
  /** Longest cell, m. */
  readonly cell: number;
};

/** What is kept of a speed. SI units as in `SpeedAnswer`. */
export type StudyPoint = Pick<
  SpeedAnswer,
  | 'rpm'
  | 'torque'
  | 'power'
  | 'volumetricEfficiency'
  | 'residual'
  | 'pmep'
  | 'exhaustTemperature'
  | 'settled'
  | 'cycles'
  | 'drift'
>;

/** `path`: the hash of the gas path that it was followed on; what was followed on another is none of its answers. */
export type SizeAnswers = { readonly path: string; readonly points: readonly (StudyPoint | SpeedFailure)[] };

/** By key of the size; by `asideKey` what was followed on a gas path that is not the study's own now. */
export type Answers = Readonly<Record<string, SizeAnswers>>;

export type StudyDocument = {
  readonly format: 'evenrun-study';
  readonly version: 1;
  readonly title: string;
  /** Hash of the engine, whatever speeds it is used at. */
  readonly engine: string;
  readonly band: Band;
  readonly speeds: readonly number[];
  /** m */
  readonly cell: number;
  readonly sizes: readonly StudySize[];
  readonly answers: Answers;
  /** The few that were followed again, on cells of this length. */
  readonly fine: { readonly cell: number; readonly answers: Answers };
};

const ASIDE = ', on gas path ';
/** Where answers stay whose gas path another edit of the design may bring back. @param path hash of it */
const asideKey = (key: string, path: string): string => `${key}${ASIDE}${path}`;

/** Sizes that there are answers of, by key, each once whichever gas paths it was followed on. */
export const sizesIn = (answers: Answers): readonly string[] => [
  ...new Set(Object.keys(answers).map((key) => key.split(ASIDE)[0]!)),
];

/** What is known by hash of the gas path: an outlet that is told and the same one as drawn are one answer. */
export function byPath(answers: Answers): ReadonlyMap<string, SizeAnswers['points']> {
  const known = new Map<string, SizeAnswers['points']>();
  for (const { path, points } of Object.values(answers)) known.set(path, [...(known.get(path) ?? []), ...points]);
  return known;
}

/** What a size is followed on. */
export type PathOf = (size: StudySize) => GasPath;

type Task = { readonly key: string; readonly job: SpeedJob };

export type Study = {
  readonly plan: StudyPlan;
  /** Of each size's gas path, by its key. */
  readonly hashes: ReadonlyMap<string, string>;
  /** Speeds of sizes that have an answer, and all there are. */
  readonly done: number;
  readonly all: number;
  /** Of these sizes, speeds that are answered on fine cells. */
  fineDone(keys: readonly string[]): number;
  document(): StudyDocument;
  /** Coarse, of sizes and speeds that have no answer yet. */
  follow(team: Team, tell?: () => void, stopped?: () => boolean): Promise<void>;
  /** These sizes again, on fine cells. */
  followFine(team: Team, keys: readonly string[], tell?: () => void, stopped?: () => boolean): Promise<void>;
};

/**
 * @param former answers of the same engine on the same cells. Those of other sizes, speeds and gas paths are kept beside; failures
 * are dropped.
 */
export function beginStudy(
  title: string,
  engine: Subject['engine'],
  pathOf: PathOf,
  plan: StudyPlan,
  former: Pick<StudyDocument, 'answers' | 'fine'> | null = null,
): Study {
  const paths = new Map(plan.sizes.map((size) => [keyOf(size), pathOf(size)]));
  const hashes = new Map([...paths].map(([key, path]) => [key, hashOf(path)]));
  type Kept = Map<string, Map<number, StudyPoint | SpeedFailure>>;
  const takeOver = (answers: Answers): Kept => {
    const all = byPath(answers);
    return new Map(
      [...hashes].map(([key, path]) => {
        const known = all.get(path) ?? [];
        // What failed is tried again: by a newer kernel, or on fewer threads, it may be done.
        return [key, new Map(known.flatMap((point) => ('failed' in point ? [] : [[point.rpm, point]])))];
      }),
    );
  };
  const own = new Set([...hashes].map(([key, path]) => asideKey(key, path)));
  const others = (answers: Answers): Answers =>
    Object.fromEntries(
      Object.entries(answers)
        .map(([key, one]) => {
          const isOther = hashes.has(key) && one.path !== hashes.get(key);
          return [isOther ? asideKey(key, one.path) : key, one] as const;
        })
        .filter(([key]) => !hashes.has(key) && !own.has(key)),
    );
  const coarse = takeOver(former?.answers ?? {});
  const again = former?.fine.cell === fineCell(plan) ? former.fine.answers : {};
  const fine = takeOver(again);

  const tasks = (kept: Kept, keys: readonly string[], cell: number): Task[] =>
    keys.flatMap((key) => {
      const speeds = plan.speeds.filter((rpm) => !kept.get(key)!.has(rpm));
      return jobsOf({ engine, path: paths.get(key)! }, speeds, { cell }).map((job) => ({ key, job }));
    });
  const follow = async (kept: Kept, todo: readonly Task[], team: Team, tell?: () => void, stopped?: () => boolean) =>
    team.follow(
      todo.map(({ job }) => job),
      (index, answer) => {
        kept.get(todo[index]!.key)!.set(answer.rpm, 'failed' in answer ? answer : pointOf(answer));
        tell?.();
      },
      stopped,
    );
  const written = (kept: Kept, rest: Answers): Answers => ({
    ...Object.fromEntries(
      [...kept]
        .filter(([, points]) => points.size > 0)
        .map(([key, points]) => [
          key,
          { path: hashes.get(key)!, points: [...points.values()].toSorted((a, b) => a.rpm - b.rpm) },
        ]),
    ),
    ...others(rest),
  });

  const doneOf = (kept: Kept, keys: readonly string[]): number =>
    keys.reduce((sum, key) => sum + plan.speeds.filter((rpm) => kept.get(key)?.has(rpm)).length, 0);

  return {
    ...{ plan, hashes },
    get done() {
      return doneOf(coarse, [...paths.keys()]);
    },
    all: paths.size * plan.speeds.length,
    fineDone: (keys) => doneOf(fine, keys),
    document: () => ({
      ...{ format: 'evenrun-study', version: 1, title, engine: engineHash(engine) },
      ...{ band: plan.band, speeds: plan.speeds, cell: plan.cell, sizes: plan.sizes },
      answers: written(coarse, former?.answers ?? {}),
      fine: { cell: fineCell(plan), answers: written(fine, again) },
    }),
    follow: (team, tell, stopped) => follow(coarse, tasks(coarse, [...paths.keys()], plan.cell), team, tell, stopped),
    followFine: (team, keys, tell, stopped) => follow(fine, tasks(fine, keys, fineCell(plan)), team, tell, stopped),
  };
}

function pointOf(answer: SpeedAnswer): StudyPoint {
  const { rpm, torque, power, volumetricEfficiency, residual, pmep, exhaustTemperature, settled, cycles, drift } =
    answer;
  return { rpm, torque, power, volumetricEfficiency, residual, pmep, exhaustTemperature, settled, cycles, drift };
}

/** The curve of one size as far as it is known: speeds of the study alone, those without an answer left out. */
export const curveOf = (
  { speeds }: Pick<StudyDocument, 'speeds'>,
  answers: Answers,
  key: string,
): readonly (StudyPoint | SpeedFailure)[] => answers[key]?.points.filter(({ rpm }) => speeds.includes(rpm)) ?? [];

/** A size with every speed of the study answered is whole. */
export const isWhole = (
  { speeds }: Pick<StudyDocument, 'speeds'>,
  points: readonly (StudyPoint | SpeedFailure)[],
): boolean => points.length === speeds.length && points.every((point) => !('failed' in point));
