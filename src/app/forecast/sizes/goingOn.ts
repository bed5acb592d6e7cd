/** A study goes on while other faces are looked at, until the page closes or the study is no more of this design; and how long it will still take. */
import { useEffect } from 'react';
import { DesignError } from '../../../../shared/design/refusal';
import type { Design } from '../../../../shared/design/types';
import type { Team } from '../../../pulse/forecast/job';
import { keyOf } from '../../../pulse/forecast/studySizes';
import { secondsLeft, spanText } from '../../../pulse/rig/outlook';
import { useDocument } from '../../document';
import { learnPace } from './outlook';
import { type Keeping, runStudy, type StudyWish, stopStudy, useStudy } from './study';
import { wishOf } from './wish';

/** The same for wishes that come to the same answers: a size that is taken as the sketch changes none of them. */
const markOf = (wish: StudyWish): string =>
  JSON.stringify([wish.id, wish.speeds, wish.engine, wish.sizes.map((size) => [keyOf(size), wish.pathOf(size)])]);

type Begun = { readonly mark: string; readonly at: number; readonly done: number | null; readonly cylinders: number };
let begun: Begun | null = null;

/** @param now ms */
export function goOn(wish: StudyWish, team: Team, keeping: Keeping, now = performance.now()): Promise<void> {
  begun = { mark: markOf(wish), at: now, done: null, cylinders: wish.engine.cylinders.length };
  return runStudy(wish, team, keeping);
}

/** Ends it where its engine or its pipes are others by now. */
export function endIfOther(id: string, design: Design | null): void {
  if (!useStudy.getState().running || !begun) return;
  try {
    if (design && markOf(wishOf(id, design)) === begun.mark) return;
  } catch (error) {
    if (!(error instanceof DesignError)) throw error;
  }
  stopStudy();
}

/** "about 12 min"; null: too early to tell, or not under way. What was known at the start took no time. @param now ms */
export function timeLeft(done: number, all: number, now = performance.now()): string | null {
  if (!begun) return null;
  if (begun.done === null) begun = { ...begun, done };
  const seconds = (now - begun.at) / 1000;
  learnPace({ seconds, runs: done - begun.done!, cylinders: begun.cylinders });
  const left = secondsLeft(seconds, done - begun.done!, all - begun.done!);
  return left === null ? null : spanText(left);
}

export function useStudyGoingOn(): void {
  const design = useDocument((s) => s.settled);
  const id = useDocument((s) => s.id);
  useEffect(() => endIfOther(id, design), [id, design]);
  useEffect(() => stopStudy, []);
}
