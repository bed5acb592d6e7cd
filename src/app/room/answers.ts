/**
 * What was last found out about the room round the header, each answer with the design that it is of. Follows from the design:
 * never saved, never undone.
 */
import { create } from 'zustand';
import type { Design } from '../../../shared/design/types';
import { whenOpened } from '../document';
import type { Question, RoomAnswers } from './messages';

export type Known<T> = {
  /** The last answer; null until the first. */
  readonly value: T | null;
  readonly of: Design | null;
  /** True while a newer design is being looked at: what is shown may be outdated. */
  readonly working: boolean;
  /** Why the last look failed, where it did. */
  readonly error: string | null;
};

type AnswersState = { readonly [Q in Question]: Known<RoomAnswers[Q]> };

const NOTHING = { value: null, of: null, working: false, error: null };

export const useAnswers = create<AnswersState>()(() => ({
  gaps: NOTHING,
  access: NOTHING,
  sensors: NOTHING,
  removal: NOTHING,
}));

const put = <Q extends Question>(question: Q, change: Partial<Known<RoomAnswers[Q]>>): void =>
  useAnswers.setState((s) => ({ [question]: { ...s[question], ...change } }) as Partial<AnswersState>);

export const working = (question: Question): void => {
  if (!useAnswers.getState()[question].working) put(question, { working: true });
};

/** @param more a newer design is being looked at already */
export const answered = <Q extends Question>(question: Q, of: Design, value: RoomAnswers[Q], more: boolean): void =>
  put(question, { value, of, working: more, error: null });

export const failed = (question: Question, error: string, more: boolean): void =>
  put(question, { error, working: more });

/** Nobody looks any more. */
export const idle = (questions: readonly Question[]): void => {
  for (const question of questions) put(question, { working: false });
};

/** Another design: nothing is known about it. */
whenOpened(() => useAnswers.setState({ gaps: NOTHING, access: NOTHING, sensors: NOTHING, removal: NOTHING }));
