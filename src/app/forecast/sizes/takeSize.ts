/** A size from the map into the design, in one step: what its primaries are to be laid out to, its outlet, and the sketch, so that its curve is there at once. mm */
import { type Edited, setSketch } from '../../../../shared/design/edit';
import { DesignError } from '../../../../shared/design/refusal';
import type { Design } from '../../../../shared/design/types';
import { sizingFromDesign } from '../../../../shared/engine/sizing/fromDesign';
import type { EngineSetup } from '../../../pulse/engine/types';
import { chooseSize } from '../../../pulse/forecast/chooseSize';
import { type StudySize, sketchOf } from '../../../pulse/forecast/studySizes';
import { ARRANGEMENT_NAMES } from '../../arrangementNames';
import { refusalWords } from '../../inspect/applyEdit';

/** @returns the edit, and what became of the size where it is made */
export function takeSize(design: Design, engine: EngineSetup, size: StudySize): { edited: Edited; said: string } {
  const sketch = sketchOf(design, engine, size);
  if (!design.runners.some(({ from }) => 'port' in from))
    return { edited: setSketch(design, sketch), said: 'Taken as the sketch.' };
  const drawn = sizingFromDesign(design).input.arrangement ?? 'all-into-one';
  if (drawn !== size.arrangement)
    return {
      edited: setSketch(design, sketch),
      said: `Taken as the sketch alone: what is drawn joins “${ARRANGEMENT_NAMES[drawn]}”, this size “${ARRANGEMENT_NAMES[size.arrangement]}”. New… draws a header that joins so.`,
    };
  try {
    return {
      edited: setSketch(chooseSize(design, engine, size), sketch),
      said: `Taken: the primaries’ tube and the length they are to have, ${size.outlet === null ? '' : 'the collector’s outlet, '}and the sketch. What is laid out is balanced to them where that can be; else it keeps its shape, and the problems say what it lacks.`,
    };
  } catch (error) {
    if (!(error instanceof DesignError)) throw error;
    const why = error.problems.map((problem) => refusalWords(problem)).join(' ');
    return { edited: setSketch(design, sketch), said: `Taken as the sketch alone. ${why}` };
  }
}
