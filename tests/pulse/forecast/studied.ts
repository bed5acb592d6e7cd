/** A study of six sizes of the four-cylinder example at four speeds, for tests; whoever follows it is the test's own. */

import type { Team } from '../../../src/pulse/forecast/job';
import { beginStudy, STUDY_CELL, type StudyDocument, type StudyPlan } from '../../../src/pulse/forecast/study';
import { checkedKeys, ranked } from '../../../src/pulse/forecast/studyRank';
import { type StudySize, sketchOf, studySizes } from '../../../src/pulse/forecast/studySizes';
import { subjectOf } from '../../../src/pulse/forecast/subject';
import { sketchPath } from '../../../src/pulse/path/sketch';
import { designIn, FOUR } from './fakes';

export const design = designIn(FOUR);
export const { engine } = subjectOf(design, 'header');
export const pathOf = (size: StudySize) => sketchPath(sketchOf(design, engine, size), design).path;
export const CHOICE = { lengths: [500, 700, 900], bores: [36, 40], arrangements: ['all-into-one'] as const };
export const plan: StudyPlan = {
  sizes: studySizes(design, engine, CHOICE),
  ...{ speeds: [3000, 4000, 5000, 6000], band: [3000, 6000], cell: STUDY_CELL },
};
export const begin = (former: StudyDocument | null = null) => beginStudy('four', engine, pathOf, plan, former);

/** All sizes, and those that are checked on fine cells too. */
export async function whole(team: Team): Promise<StudyDocument> {
  const study = begin();
  await study.follow(team);
  await study.followFine(team, checkedKeys(ranked(study.document())));
  return study.document();
}
