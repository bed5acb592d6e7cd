/** What every way of asking `pulse DESIGN` begins with: the design, what of it is followed, where, and how. */
import { resolve } from 'node:path';
import type { Design } from '../../../shared/design/types';
import { isAnswer, type Subject } from '../../pulse/forecast/curve';
import { type SubjectKind, subjectOf } from '../../pulse/forecast/subject';
import type { TorqueCurve } from '../../pulse/forecast/types';
import { FAILS, HOLDS, type Io } from '../io';
import { designAt, naming } from '../readDesign';
import { kindArgument, type PulseArguments } from './options';
import type { Start } from './serve';

export type Context = {
  readonly design: Design;
  /** As the user gave it, and its whole path. */
  readonly name: string;
  readonly file: string;
  readonly given: PulseArguments;
  readonly io: Io;
  readonly start: Start;
};

export function contextOf(name: string, given: PulseArguments, io: Io, start: Start): Context {
  const file = resolve(io.cwd, name);
  return { design: designAt(file), name, file, given, io, start };
}

/** What `--on` asks to follow. */
export const subjectAsked = ({ file, design, given }: Context): Subject =>
  subjectIn(file, design, kindArgument(given.on));

/** Refusals name the file. */
export const subjectIn = (file: string, design: Design, which: SubjectKind): Subject =>
  naming(file, () => subjectOf(design, which));

/** Everything answered, and settled. */
export const isClean = (curve: TorqueCurve): boolean => curve.every((point) => isAnswer(point) && point.settled);

export const codeOf = (isGood: boolean): number => (isGood ? HOLDS : FAILS);

/** Traces and waves are of no use to who reads JSON for numbers: traces have a table of their own. */
export const plainCurve = (curve: TorqueCurve) =>
  curve.map((point) => {
    if (!isAnswer(point)) return point;
    const { traces: _, waves: __, ...numbers } = point;
    return numbers;
  });

export const plainSubject = ({ title, engine, path, assumed, notes }: Subject) => ({
  title,
  notes,
  assumed,
  engine,
  path,
});

export const asJson = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
