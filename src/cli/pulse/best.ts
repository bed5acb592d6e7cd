/** The best size of a study as a design: what cannot be chosen is found out before hours of work, and takes nothing else with it. */
import { DesignError } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import type { EngineSetup } from '../../pulse/engine/types';
import { chooseSize } from '../../pulse/forecast/chooseSize';
import type { StudySize } from '../../pulse/forecast/studySizes';
import { UnusableInput } from '../io';

/** @returns why not, where it cannot be; sizes of one arrangement are refused alike */
export function chosenOr(design: Design, engine: EngineSetup, size: StudySize): Design | string {
  try {
    return chooseSize(design, engine, size);
  } catch (error) {
    if (error instanceof DesignError) return error.message;
    throw error;
  }
}

/**
 * @returns sentences on sizes that could not be written should one of them come out best
 * @throws UnusableInput where none of all could be
 */
export function bestNotes(file: string, design: Design, engine: EngineSetup, sizes: readonly StudySize[]): string[] {
  const firsts = [...new Map(sizes.toReversed().map((size) => [size.arrangement, size])).values()].reverse();
  const refused = firsts.flatMap((size) => {
    const chosen = chosenOr(design, engine, size);
    return typeof chosen === 'string' ? [{ arrangement: size.arrangement, why: chosen }] : [];
  });
  const fitting = firsts.map(({ arrangement }) => arrangement).filter((a) => !refused.some((r) => r.arrangement === a));
  if (fitting.length === 0) throw new UnusableInput(`${file}: --best: ${refused[0]!.why}; or leave --best out`);
  return refused.map(
    ({ arrangement, why }) =>
      `--best: a size of ${arrangement} cannot be written, should it come out best: ${why}; or study --arrangements ${fitting.join(',')} alone`,
  );
}
