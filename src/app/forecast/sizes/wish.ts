/** What the study of a design follows: its engine on sketches of so many sizes. @throws DesignError where there is no engine to follow */
import { insist } from '../../../../shared/design/refusal';
import type { Design } from '../../../../shared/design/types';
import { STUDY_SPEEDS } from '../../../pulse/forecast/speeds';
import { MOST_SIZES, type StudySize, sketchOf, studySizes } from '../../../pulse/forecast/studySizes';
import { engineOf } from '../../../pulse/forecast/subject';
import { sketched } from '../ground';
import { type Choice, choiceNow } from './choice';
import { spreadOut } from './spreadOut';
import type { StudyWish } from './study';

export type AskedWish = StudyWish & { readonly speeds: number; readonly choice: Choice };

export function wishOf(id: string, design: Design, choice: Choice = choiceNow(id)): AskedWish {
  const { engine } = engineOf(design);
  const all = studySizes(design, engine, choice);
  insist(
    all.length > MOST_SIZES
      ? [{ path: 'study/lengths', found: `${all.length} sizes`, allowed: `at most ${MOST_SIZES}: leave some out` }]
      : [],
  );
  const sizes = spreadOut(all);
  const pathOf = (size: StudySize) => sketched(design, sketchOf(design, engine, size)).path;
  // What a sketch of some arrangement lacks is told now, not once it is begun.
  for (const size of new Map(sizes.map((one) => [one.arrangement, one])).values()) pathOf(size);
  return { id, design, engine, sizes, pathOf, choice, speeds: choice.speeds ?? STUDY_SPEEDS };
}
