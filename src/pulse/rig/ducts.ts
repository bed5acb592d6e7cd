/** The ducts of a rig's pipes, each as much longer at its open ends as their corrections say. m. */
import { endCorrection } from '../ends/endCorrection';
import type { Duct } from '../scheme/grid';
import { ductOf, endDiameter } from './bore';
import type { OpenEnd, PipeSide, RigEnd, RigPipe } from './types';

/** What of a rig its ducts follow from. */
type Piping = {
  readonly pipes: readonly Pick<RigPipe, 'id' | 'length' | 'cells' | 'diameter'>[];
  readonly ends: readonly Pick<RigEnd, 'kind' | 'at'>[];
};

/** Cells in all, those of end corrections with them. */
export const cellsOf = (rig: Piping): number => ductsOf(rig).reduce((sum, { cells }) => sum + cells, 0);

export function ductsOf({ pipes, ends }: Piping): Duct[] {
  const added = (pipe: Piping['pipes'][number], side: PipeSide): number => {
    const open = ends.find((end) => end.kind === 'open' && end.at[0] === pipe.id && end.at[1] === side);
    return endCorrection((open as OpenEnd | undefined)?.endCorrection, 0.5 * endDiameter(pipe.diameter, side));
  };
  return pipes.map((pipe) =>
    ductOf(pipe.diameter, pipe.length, pipe.cells, added(pipe, 'start'), added(pipe, 'finish')),
  );
}
