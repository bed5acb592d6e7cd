/** What the study of a design follows: its engine on sketches of so many sizes. @throws DesignError where there is no engine to follow */
import type { Design } from '../../../../shared/design/types';
import { sketchOf, studySizes } from '../../../pulse/forecast/studySizes';
import { coveredEngine } from '../../../pulse/forecast/subject';
import { coveredCylinders } from '../../../pulse/path/reading';
import { engineFor, sketched } from '../ground';
import { planOf, type StudyWish } from './study';

export function wishOf(id: string, design: Design): StudyWish & { readonly speeds: number } {
  const { setup } = engineFor(design);
  const sizes = studySizes(design, setup);
  const pathOf = (size: StudyWish['sizes'][number]) => sketched(design, sketchOf(design, setup, size)).path;
  const { engine } = coveredEngine(setup, coveredCylinders(pathOf(sizes[0]!)));
  const wish = { id, design, engine, sizes, pathOf };
  return { ...wish, speeds: planOf(wish).speeds.length };
}
