/** The ducts of a rig's pipes, each as much longer at its open ends as their corrections say. m. */
import { endCorrection } from '../ends/endCorrection';
import type { Duct } from '../scheme/grid';
import { ductOf } from './bore';
import type { PipeSide, Rig, RigPipe } from './types';

export function ductsOf({ pipes, ends }: Rig): Duct[] {
  const added = (pipe: RigPipe, side: PipeSide): number => {
    const open = ends.find((end) => end.kind === 'open' && end.at[0] === pipe.id && end.at[1] === side);
    if (open?.kind !== 'open' || open.endCorrection === undefined) return 0;
    const diameter = side === 'start' ? pipe.diameter[0]![1] : pipe.diameter.at(-1)![1];
    return endCorrection(open.endCorrection, 0.5 * diameter);
  };
  return pipes.map((pipe) =>
    ductOf(pipe.diameter, pipe.length, pipe.cells, added(pipe, 'start'), added(pipe, 'finish')),
  );
}
