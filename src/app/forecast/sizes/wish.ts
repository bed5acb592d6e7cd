/** What the study of a design follows: its engine on sketches of so many sizes. @throws DesignError where there is no engine to follow */
import type { Design } from '../../../../shared/design/types';
import { sketchOf, studySizes } from '../../../pulse/forecast/studySizes';
import { engineOf } from '../../../pulse/forecast/subject';
import { sketched } from '../ground';
import { spreadOut } from './spreadOut';
import { planOf, type StudyWish } from './study';

export function wishOf(id: string, design: Design): StudyWish & { readonly speeds: number } {
  const { engine } = engineOf(design);
  const sizes = spreadOut(studySizes(design, engine));
  const pathOf = (size: StudyWish['sizes'][number]) => sketched(design, sketchOf(design, engine, size)).path;
  const wish = { id, design, engine, sizes, pathOf };
  return { ...wish, speeds: planOf(wish).speeds.length };
}
